"""`the pecorino we buy is really salty`: amounts put on a food, from words that say what it is like."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from assistant.answers.context import Context
from assistant.answers.wording import listed
from assistant.language.fold import key
from assistant.language.frame import Reading, Text
from assistant.language.sorting import EDIBLE
from assistant.notebook import Stated
from assistant.taught.lesson import Lesson, told
from assistant.taught.overlay import SCHEMA
from assistant.taught.telling import Hearing, wine_ids, words
from assistant.taught.words import Amounts, taught_words

MILK = "milk"
NEAR = 2
POURED = ("wine", "preference", "grape")


def has_amounts(text: Text) -> bool:
    """Whether words in the text say what a food is like."""
    return bool(amounts_in(text)[0])


def amounts_in(text: Text, skipped: Collection[int] = ()) -> tuple[dict[str, float], set[int]]:
    """Amounts per 100 g by quantity, and the positions of the words that gave them."""
    named = {i for r in text.readings if _is_name(r) for i in range(r.start, r.end)}
    milk = {i for i, stem in enumerate(text.stems) if stem in taught_words().milk and _of_milk(text, i)}
    found: dict[str, float] = {}
    used = set()
    for at, word in enumerate(text.stems):
        amounts = taught_words().milk[word] if at in milk else taught_words().amounts.get(word)
        if amounts and at not in skipped and (at in milk or at not in named):
            used.add(at)
            by = _degree(text.stems, at)
            for name, amount in amounts.items():  # what is said twice counts once, as it was said strongest
                found[name] = max(found.get(name, 0.0), amount * by, key=abs)
    return {name: amount for name, amount in found.items() if amount}, used


def _is_name(reading: Reading) -> bool:
    """Whether it names a food or wine; `garlicky` and `spicy` only say what something is like."""
    taste = len(key(reading.text)) == 1 and key(reading.text)[0] in taught_words().amounts
    return reading.kind in (*EDIBLE, *POURED) and not taste


def _of_milk(text: Text, at: int) -> bool:
    return MILK in text.stems[at + 1 : at + 1 + NEAR]


def _degree(stems: tuple[str, ...], at: int) -> float:
    """How much of it: more, less, or the other way where the words before say so."""
    said, before = taught_words(), stems[max(0, at - NEAR) : at]
    by = next((said.degrees[word] for word in reversed(before) if word in said.degrees), 1.0)
    return -by if said.sets["deny"].intersection(before) else by


def how(amounts: Amounts) -> str:
    """`milder and saltier`."""
    directions = taught_words().directions
    known = ((directions[name], amount) for name, amount in amounts.items() if name in directions)
    return listed([more if amount > 0 else less for (more, less), amount in known])


def statements(heard: Hearing, about: str, amounts: Mapping[str, float]) -> tuple[Stated, ...]:
    """A statement for each quantity."""
    return tuple(
        told(heard, "profile", (about,), {"dimension": f"{SCHEMA}{name}", "amount": float(amount)})
        for name, amount in amounts.items()
    )


def profile(heard: Hearing) -> Lesson | None:
    """What a food of the host's is like, or None where no food or no word for it is named."""
    amounts, used = amounts_in(heard.context.frame.text)
    food = _subject(heard)
    if food is None or not amounts or taught_words().sets["no_taste"].intersection(heard.stems):
        return None
    name = _own_name(heard.context.frame.text, food)
    if name:
        return as_new(heard, name, food, amounts, used)
    known = food in heard.context.knowledge.digest
    label = heard.context.knowledge.label(food) if known else food
    say = words(heard.context, "profile", food=label, how=how(amounts))
    line = words(heard.context, "profile-line", food=label)
    return Lesson(statements(heard, food, amounts), say, (line, *unused(heard.context, used)))


def _subject(heard: Hearing) -> str | None:
    """The food that is spoken of: the first one named, or for `that one` the one that stands."""
    frame = heard.context.frame
    if wine_ids(heard.context):
        return None
    if not any(r.kind in EDIBLE for r in frame.text.readings):
        points = taught_words().sets["it"].intersection(frame.text.stems)
        return heard.dishes[0].main.food if points and heard.dishes else None
    own = heard.keeper.own_food(frame.dishes[0]) if frame.dishes else ""
    food = frame.dishes[0].main.food if frame.dishes else None
    if own:
        return own
    return food if food in {r.id for r in frame.text.readings} else None


def _own_name(text: Text, food: str) -> str:
    """`quandong chutney`: the name of a food with the unread words right before it; empty without any."""
    reading = next((r for r in text.readings if r.id == food), None)
    start = reading.start if reading else 0
    while start and text.words[start - 1] in text.left_out:
        start -= 1
    return " ".join(text.words[start : reading.end]) if reading and start < reading.start else ""


def as_new(heard: Hearing, name: str, like: str, amounts: Amounts, used: Collection[int]) -> Lesson:
    """The lesson of a food of the host's own: what it is like, and how it differs."""
    context = heard.context
    fields = {"name": f"“{name}”", "like": context.knowledge.label(like), "how": how(amounts)}
    say = words(context, "new-food-but" if fields["how"] else "new-food", **fields)
    made = (told(heard, "new-food", (name,), {"like": like}), *statements(heard, name, amounts))
    line = words(context, "new-food-line", name=name)
    return Lesson(made, say, (line, *unused(context, used, name)))


def unused(context: Context, used: Collection[int], named: str = "") -> tuple[str, ...]:
    """The words that were not used, told."""
    text = context.frame.text
    done = {text.words[i].lower() for i in used} | set(named.lower().split())
    stems = {text.stems[i] for i in used}
    left = [w for w in text.left_out if w.lower() not in done and w.lower().rstrip("s") not in stems]
    return (words(context, "unused", words=listed([f"“{w}”" for w in left])),) if left else ()
