"""`jen loved 2, hated 4`: a note is kept as said, with the votes it plainly holds; nothing else is told."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from assistant.answers.record import Answer
from assistant.notebook import Stated, stated
from assistant.pairing.flight import pour_order
from assistant.taught.keeper import AUTHOR
from assistant.taught.telling import Hearing, no_notebook, not_kept, plain, wine_ids, words
from assistant.taught.words import number_of, taught_words

MOST_ABOUT = 20
MOST_VOTES = 10000


@dataclass(frozen=True, slots=True)
class Vote:
    """What was voted on, the band, and by how many."""

    about: tuple[str, ...]
    verdict: str
    votes: int = 1


def noted(heard: Hearing) -> Answer:
    """Keeps the words, whether they are a note or a question put aside."""
    if not heard.keeper.keeps:
        return no_notebook(heard.context)
    kind = "parked" if taught_words().lines["parks"].stand_in(heard.stems) else "note"
    problems = heard.keeper.keep(as_note(heard, kind), *_cast(heard))
    if problems:
        return not_kept(heard.context, problems)
    return plain(heard.context, words(heard.context, "noted"))


def as_note(heard: Hearing, kind: str = "note") -> Stated:
    """The words as they are, about what is named in them and what is on the table."""
    frame, tonight = heard.context.frame, heard.context.tonight
    foods = [part.food for dish in (*frame.dishes, *tonight.dishes) for part in dish.parts]
    about = tuple(dict.fromkeys((*wine_ids(heard.context), *foods, *tonight.wines)))[:MOST_ABOUT]
    return stated(kind, heard.said, AUTHOR, about=about, evening=heard.evening)


def _cast(heard: Hearing) -> list[Stated]:
    return [
        stated(
            "vote", heard.said, AUTHOR, about=vote.about,
            value={"verdict": vote.verdict, "votes": vote.votes}, evening=heard.evening,
        )
        for vote in votes(heard)
    ]  # fmt: skip


def votes(heard: Hearing) -> list[Vote]:
    """The votes that the words plainly give: a word of liking or not, and what stands right behind it."""
    stems, said = heard.stems, taught_words()
    things = {**_places(heard), **_named(heard)}
    found = []
    for at, word in enumerate(stems):
        wants = word in said.sets["wants"]
        verdict = said.verdicts.get(word) or ("band/good" if wants else None)
        about = tuple(_behind(stems, at + 1, things)) if verdict and at else ()
        if verdict and about:
            found.append(Vote(about, _turned(stems, at, verdict), _count(stems, at)))
    return found


def _named(heard: Hearing) -> Mapping[int, tuple[str, int]]:
    """Wines by the position at which they are named, with the position behind them."""
    readings = heard.context.frame.text.readings
    styles = heard.context.knowledge.styles_of
    return {r.start: (r.id, r.end) for r in readings if styles(r.id)}


def _places(heard: Hearing) -> Mapping[int, tuple[str, int]]:
    """The same for numbers that are places in tonight's pouring order."""
    context = heard.context
    glasses = [context.engine.glasses[wine] for wine in context.tonight.wines]
    poured = pour_order(glasses, context.knowledge.constants) if glasses else []
    numbers = ((at, number_of(stem)) for at, stem in enumerate(heard.stems))
    return {at: (poured[n - 1].wine, at + 1) for at, n in numbers if n and 0 < n <= len(poured)}


def _behind(stems: tuple[str, ...], at: int, things: Mapping[int, tuple[str, int]]) -> Iterator[str]:
    """The things that stand at this place, one after another, with nothing but small words between."""
    between = taught_words().sets["between"]
    while at < len(stems) and (at in things or stems[at] in between):
        thing, at = things.get(at, ("", at + 1))
        if thing:
            yield thing


def _turned(stems: tuple[str, ...], at: int, verdict: str) -> str:
    """The verdict, or the other one where the word before turns it."""
    denied = at > 0 and stems[at - 1] in taught_words().sets["deny"]
    return verdict if not denied else other(verdict)


def other(verdict: str) -> str:
    """The opposite of a verdict."""
    return "band/poor" if verdict == "band/good" else "band/good"


def _count(stems: tuple[str, ...], at: int) -> int:
    """`3 want the white` are three votes; a number further back is none of them."""
    people = stems[at - 1] in ("people", "guest") and at > 1
    number = number_of(stems[at - 2 if people else at - 1])
    first = (at - 2 if people else at - 1) == 0
    return number if number and first and number <= MOST_VOTES else 1
