"""Smells asked of a wine: `an earthy red`, `something nutty`; words: corpus/language/smells.toml."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.alone import PAUSES, opens_wish, seeks_wine, stands_alone
from assistant.language.data import read_data
from assistant.language.fold import key
from assistant.language.frame import Preference, Text
from assistant.language.turning import FOODS, negated

SMELL, SORT, NAMED = "smell", "sort", "named"
# What seeks no wine, so that a smell told is none to be kept to (`it smells of wet cardboard`).
UNSOUGHT = frozenset(
    {"trouble", "teach", "note", "myth", "define", "safety", "quantity", "set-table", "help"}
)


@dataclass(frozen=True, slots=True)
class SmellWords:
    """The words as keys with the limits that each asks for, and the little words around them."""

    asks: Mapping[tuple[str, ...], tuple[Preference, ...]]
    before: frozenset[str]
    between: frozenset[str]
    behind: frozenset[str]
    linking: frozenset[str]
    wine: frozenset[str]
    meaning: frozenset[str]
    alone: frozenset[tuple[str, ...]]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> SmellWords:
        """The words of the file. Raises KeyError for a key that is missing."""
        asks = {key(word): tuple(_limits(row)) for row in tables["smell"] for word in row["words"]}
        few = [tables[name]["words"] for name in ("before", "behind", "linking", "wine", "meaning")]
        words = (few[0], tables["before"]["between"], *few[1:])
        alone = frozenset(key(word) for word in tables["alone"]["words"])
        little = [frozenset(said for one in many for said in key(one) or (one,)) for many in words]
        before, between, behind, linking, wine, meaning = little
        return cls(asks, before, between, behind, linking, wine, meaning, alone)


def _limits(row: Mapping[str, Any]) -> Iterator[Preference]:
    for family in row["families"]:
        yield Preference(row["label"], SMELL, wanted=family)
    for name, points in row.get("most", {}).items():
        yield Preference(row["label"], name, high=points)


@lru_cache(maxsize=1)
def smell_labels() -> frozenset[str]:
    """What the limits are called, as wanted and as ruled out."""
    asked = {limit for limits in smell_words().asks.values() for limit in limits}
    return frozenset(label for one in asked for label in (one.label, *(p.label for p in _turned([one]))))


def without_smells(intent: str, limits: list[Preference]) -> list[Preference]:
    """The limits, without those of smells where no wine is sought."""
    kept = [limit for limit in limits if limit.property != SMELL and limit.label not in smell_labels()]
    return kept if intent in UNSOUGHT else limits


@lru_cache(maxsize=1)
def smell_words() -> SmellWords:
    """The shipped words. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "smells.toml", SmellWords.of)


@dataclass(frozen=True, slots=True)
class Smells:
    """The limits put on the wine, the positions of the words read, and those of words that limit nothing."""

    limits: tuple[Preference, ...]
    read: frozenset[int]
    idle: frozenset[int]


def find_smells(text: Text) -> Smells:
    """What words for a smell ask of the wine.

    Only beside a wine, or behind `something`: else a food is told of (`the earthy one with beetroot`). What
    a wine named is said to smell of is no limit (`a peppery Syrah`).
    """
    known, near = smell_words(), _Near(text)
    limits: list[Preference] = []
    used, idle = set[int](), set[int]()
    for at, end, asked in _said(text.stems, known) if not known.meaning.intersection(text.stems) else ():
        beside = near.wine_behind(end) or near.wine_before(at, end)
        wanted = near.wanted_before(at) or (not beside and _told_alone(text, at, end))
        if beside == SORT or wanted:
            limits += _turned(asked) if negated(text, at) else asked
            used.update(range(at, end))
        elif beside:
            idle.update(range(at, end))
    return Smells(tuple(limits), frozenset(used | idle), frozenset(idle))


def _told_alone(text: Text, at: int, end: int) -> bool:
    """Whether a word that no food is praised with is told by itself (`a red for lamb, fruity please`)."""
    known = smell_words()
    beside = known.linking - set(PAUSES)
    if text.stems[at:end] not in known.alone:
        return False
    alone = stands_alone(text, at, end, beside) and seeks_wine(text)
    return alone or opens_wish(text, at, end, beside)


def _said(stems: Sequence[str], known: SmellWords) -> Iterator[tuple[int, int, tuple[Preference, ...]]]:
    for at in range(len(stems)):
        for end in (at + 2, at + 1):
            if end <= len(stems) and (limits := known.asks.get(tuple(stems[at:end]))):
                yield at, end, limits
                break


class _Near:
    """What stands near a word: a wine named, a sort of wine, or neither."""

    def __init__(self, text: Text) -> None:
        self._stems, self._known = text.stems, smell_words()
        eaten = {r.start for r in text.readings if r.kind in FOODS}
        wines = [r for r in text.readings if r.kind == "wine" and r.end not in eaten]  # no `white soup`
        self._starts = {r.start: SORT if r.type == "Kind" else NAMED for r in wines}
        self._ends = {r.end: SORT for r in wines if r.type == "Kind"}
        named = [r for r in text.readings if r not in wines and r.kind != "region"]
        self._others = {i for r in named for i in range(r.start, r.end)}
        self._homes = {i for r in text.readings if r.kind == "region" for i in range(r.start, r.end)}

    def wine_behind(self, at: int) -> str:
        """The wine that follows, but for other describing words; empty for none."""
        while at < len(self._stems) and at not in self._starts:
            if self._stems[at] in self._known.wine:
                return SORT
            if not self._describes(at):
                return ""
            at += 1
        return self._starts.get(at, "")

    def wine_before(self, at: int, end: int) -> str:
        """The sort of wine in front, which is told to be like that; empty for none, or before a food."""
        last = at
        while at and at not in self._ends and self._tells(at - 1):
            at -= 1
        return self._ends.get(at, "") if at < last and end not in self._others else ""

    def wanted_before(self, at: int) -> bool:
        """Whether it is behind `something`, but for other describing words."""
        while at and (self._describes(at - 1) or self._stems[at - 1] in self._known.between):
            at -= 1
        return bool(at) and self._stems[at - 1] in self._known.before

    def _tells(self, at: int) -> bool:
        return self._stems[at] in self._known.behind | self._known.between or self._describes(at)

    def _describes(self, at: int) -> bool:
        smells = (self._stems[at],) in self._known.asks
        return (
            smells or at in self._homes or (self._stems[at] in self._known.linking and at not in self._others)
        )


def _turned(limits: Iterable[Preference]) -> list[Preference]:
    """What is not to be smelled (`nothing smoky`)."""
    return [
        Preference(f"not {one.label}", SMELL, wanted=one.wanted, banned=True) for one in limits if one.wanted
    ]
