"""`i always do gouda with syrah and people love it`: the host's own verdict, held beside the book's."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.judge import judged
from assistant.answers.wording import listed
from assistant.pairing.dish import single
from assistant.taught.lesson import Lesson, told
from assistant.taught.profile import unused
from assistant.taught.telling import Hearing, wine_ids, words
from assistant.taught.votes import other
from assistant.taught.words import taught_words

NEAR = 2
GOOD = "band/good"


def pairing(heard: Hearing) -> Lesson | None:
    """What the host thinks of a pair, or None where no one pair or no one verdict is named."""
    context, wines = _with_dish(heard), wine_ids(heard.context)
    verdict = verdict_in(heard.stems)
    if len(context.frame.dishes) != 1 or not wines or not verdict or _compares(heard, wines):
        return None
    dish = context.frame.dishes[0]
    own = heard.keeper.own_food(dish)
    foods = (own,) if own else tuple(part.food for part in dish.parts)
    made = told(heard, "pairing", (*wines, *foods), {"verdict": verdict})
    fields = {"dish": context.dish_name(), "wines": listed([context.knowledge.label(w) for w in wines])}
    say = words(context, "pairing", verdict=context.knowledge.label(verdict), **fields)
    lines = [_beside_book(context, wine, verdict) for wine in wines]
    return Lesson((made,), say, (*lines, *unused(context, ())))


def _with_dish(heard: Hearing) -> Context:
    """The context with the one food named as a dish, where words such as `doesn't like` took it off.

    Where no food is named, the dish that stands is meant.
    """
    context = heard.context
    foods = {r.id for r in context.frame.text.readings if r.type == "Food"}
    if context.frame.dishes or len(foods) > 1:
        return context
    dishes = (single(foods.pop()),) if foods else heard.dishes
    return replace(context, frame=replace(context.frame, dishes=dishes))


def _compares(heard: Hearing, wines: tuple[str, ...]) -> bool:
    compares = taught_words().sets["compares"].intersection(heard.stems)
    return len(wines) > 1 and bool(compares)


def verdict_in(stems: tuple[str, ...]) -> str | None:
    """The band of the first word that says how it went; a word of denial before it turns it."""
    said = taught_words()
    none = said.sets["before_none"]
    at = next((i for i, s in enumerate(stems) if s in said.verdicts and not none & {*stems[i - 1 : i]}), None)
    if at is None:
        return GOOD if said.sets["weak"].intersection(stems) else None
    denied = said.sets["deny"].intersection(stems[max(0, at - NEAR) : at])
    return other(said.verdicts[stems[at]]) if denied else said.verdicts[stems[at]]


def _beside_book(context: Context, wine: str, verdict: str) -> str:
    """What the book says of the pair, and how far apart the two are."""
    label = context.knowledge.label
    book = f"band/{judged(context, wine).verdict}"
    bands = [f"band/{band.verdict}" for band in context.knowledge.bands]
    fields = {"book": label(book), "wine": label(wine), "yours": label(verdict)}
    apart = bands.index(book) - bands.index(verdict)
    if not apart:
        return words(context, "agree", **fields)
    steps = context.wording("taught-steps", str(abs(apart)))
    return words(context, "higher" if apart > 0 else "lower", steps=steps, **fields)
