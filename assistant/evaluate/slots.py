"""What a frame holds against what it should hold, slot by slot."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from assistant.evaluate.corpus import Question
from assistant.evaluate.naming import Meant, Namer, limit_read, words_of
from assistant.language.fold import key
from assistant.language.frame import Frame, Reading

SLOTS = ("foods", "methods", "wines", "limits", "terms")
EATEN = ("food", "sauce", "dressing", "garnish", "cuisine")
DEFINES = "define"
CHOOSING = ("wines-for-food", "one-bottle", "choose-wines", "substitute")


@dataclass(frozen=True, slots=True)
class Score:
    """How many things were read right, missed, and read without being meant."""

    right: int = 0
    missed: int = 0
    extra: int = 0

    def __add__(self, other: Score) -> Score:
        return Score(self.right + other.right, self.missed + other.missed, self.extra + other.extra)

    @property
    def exact(self) -> bool:
        """Whether nothing is missing and nothing too much."""
        return not self.missed and not self.extra

    @property
    def precision(self) -> float | None:
        """Share of what was read that was meant, or None where nothing was read."""
        return _share(self.right, self.right + self.extra)

    @property
    def recall(self) -> float | None:
        """Share of what was meant that was read, or None where nothing was meant."""
        return _share(self.right, self.right + self.missed)

    @property
    def f1(self) -> float | None:
        """The harmonic mean of precision and recall, or None where there was nothing at all."""
        return _share(2 * self.right, 2 * self.right + self.missed + self.extra)


def _share(part: int, whole: int) -> float | None:
    return part / whole if whole else None


def expected(question: Question, namer: Namer) -> dict[str, list[Meant]]:
    """What each slot should hold; the same thing said twice counts once."""
    named = {s: [namer.name(said) for said in getattr(question, s)] for s in SLOTS[:3]}
    named["terms"] = [namer.term(said) for said in question.terms]
    named["limits"] = [namer.limit(said) for said in question.limits]
    return {slot: _once(meant) for slot, meant in named.items()}


def found(frame: Frame, question: Question) -> dict[str, list[Meant]]:
    """What each slot holds. Part of a name that is not known may be read or left; it counts neither way."""
    partial = words_of((*question.unknown, *question.wishes))
    readings = [r for r in frame.text.readings if r.corrected_from or not partial.issuperset(key(r.text))]
    spared = {r.id for r in frame.text.readings} - {r.id for r in readings}
    limits = [limit_read(p) for p in frame.preferences if p.wanted not in spared]
    wines = [_one(wine) for wine in frame.wines if wine not in spared]
    grapes = [_meant(r) for r in readings if r.kind == "grape"]
    return {
        "foods": _once(_meant(r) for r in readings if r.kind in EATEN),
        "methods": _once(_meant(r) for r in readings if r.kind == "method"),
        "wines": _once([*wines, *grapes]),
        "limits": _once(limits),
        "terms": _once(map(_one, frame.terms)) if question.intent == DEFINES else [],
    }


def compare(
    wanted: dict[str, list[Meant]], read: dict[str, list[Meant]], intent: str, namer: Namer
) -> dict[str, Score]:
    """The score of each slot.

    A wine and a limit on the wine are the same reading, banned or not: `no Sancerre here, what else?`.
    A kind said beside its members (`cheeses: brie, Stilton`) counts neither way; nor do limits where
    no wine is chosen.
    """
    missed = {slot: list(things) for slot, things in wanted.items()}
    extra = {slot: list(things) for slot, things in read.items()}
    right = {slot: _pair(missed[slot], extra[slot], Meant.same) for slot in SLOTS}
    right["wines"] += _pair(missed["wines"], extra["limits"], Meant.alike)
    right["limits"] += _pair(missed["limits"], extra["wines"], Meant.alike)
    kinds = {kind for thing in wanted["foods"] for i in thing.ids for kind in namer.kinds(i)}
    extra["foods"] = [thing for thing in extra["foods"] if kinds.isdisjoint(thing.ids)]
    scores = {slot: Score(right[slot], len(missed[slot]), len(extra[slot])) for slot in SLOTS}
    return scores if intent in CHOOSING else scores | {"limits": Score()}


def _pair(wanted: list[Meant], read: list[Meant], same: Callable[[Meant, Meant], bool]) -> int:
    """How many things are in both; they are taken out of both."""
    count = 0
    for thing in list(wanted):
        match = next((other for other in read if same(thing, other)), None)
        if match is not None:
            wanted.remove(thing)
            read.remove(match)
            count += 1
    return count


def _one(subject: str) -> Meant:
    return Meant(frozenset((subject,)), subject)


def _meant(reading: Reading) -> Meant:
    return Meant(frozenset((reading.id, *reading.others)), reading.text)


def _once(things: Iterable[Meant]) -> list[Meant]:
    return list({(thing.ids, thing.banned): thing for thing in things}.values())
