"""Numbers of a question and what they count: guests, bottles, millilitres, wines."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Lines
from assistant.language.data import read_data
from assistant.language.fold import fold, stem
from assistant.language.frame import Text
from assistant.language.small_words import small_words

REACH, REACH_ON = 3, 5  # how near to a number what it counts begins, and ends
_DIGITS = re.compile(r"[0-9]{1,6}(?:\.[0-9]{1,3})?")
DOZENS, TENS = (12.0, 100.0), 20.0


@dataclass(frozen=True, slots=True)
class QuantityWords:
    """The lists of corpus/language/quantities.toml, folded."""

    most_bare: int
    numbers: Mapping[str, float]
    counts: Mapping[str, Lines]
    for_people: Lines
    not_people: frozenset[str]
    not_people_last: frozenset[str]
    for_each: Lines
    for_all: Lines
    for_all_behind: frozenset[str]
    not_bottles: Lines
    half: Lines
    sizes: Mapping[str, float]
    glass: Mapping[str, Lines]
    asked: Mapping[str, Lines]
    how_many: Lines
    party: Mapping[str, Lines]


@lru_cache(maxsize=1)
def quantity_words() -> QuantityWords:
    """The shipped words. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "quantities.toml", _words)


def _words(tables: Mapping[str, Any]) -> QuantityWords:
    return QuantityWords(
        int(tables["most-bare"]),
        {stem(fold(word)): float(n) for word, n in tables["numbers"].items()},
        {name: Lines(words) for name, words in tables["counts"].items()},
        Lines(tables["for_people"]["words"]),
        frozenset(stem(fold(word)) for word in tables["not_people"]["words"]),
        frozenset(stem(fold(word)) for word in tables["not_people"]["last"]),
        Lines(tables["for_each"]["lines"]),
        Lines(tables["for_all"]["lines"]),
        frozenset(stem(fold(word)) for word in tables["for_all"]["behind"]),
        Lines(tables["not_bottles"]["lines"]),
        Lines(tables["half"]["lines"]),
        {name: float(size) for name, size in tables["sizes"].items()},
        {name: Lines(lines) for name, lines in tables["glass"].items()},
        {name: Lines(words) for name, words in tables["asked"].items()},
        Lines(tables["how_many"]["lines"]),
        {name: Lines(words) for name, words in tables["party"].items()},
    )


@dataclass(frozen=True, slots=True)
class Counted:
    """A number in a text: what it counts, its place (end exclusive) and its value."""

    name: str
    start: int
    end: int
    number: float


@dataclass(frozen=True, slots=True)
class Quantities:
    """What a question counts; `ml` of one pour, `bottle_ml` of one bottle, None where not said.

    `glass`: the size of a glass that is spoken of, by its name in ontology/evening/amounts.toml.
    """

    people: float | None = None
    non_drinkers: float = 0.0
    bottles: float | None = None
    wines: float | None = None
    pours: float | None = None
    percent: float | None = None
    ml: float | None = None
    bottle_ml: float | None = None
    glass: str | None = None


def quantities(text: Text) -> Quantities:
    """The numbers of a text by what they count; the first of each counts."""
    found: dict[str, float] = {}
    for counted in counts(text.stems):
        found.setdefault(counted.name, counted.number)
    words = quantity_words()
    sizes = words.sizes
    small = [found["ml"]] if "ml" in found else [found[n] * sizes[n] for n in ("cl", "oz") if n in found]
    big = found["litres"] * sizes["litres"] if "litres" in found else None
    if "magnums" in found or words.counts["magnums"].stand_in(text.stems):
        big = sizes["magnums"]
    return Quantities(
        found.get("people"),
        found.get("non_drinkers", found.get("people", 0.0) / 2 if words.half.stand_in(text.stems) else 0.0),
        found.get("bottles", found.get("magnums")),
        found.get("wines"),
        found.get("pours"),
        found.get("percent"),
        small[0] if small else None,
        big,
        next((name for name, said in words.glass.items() if said.stand_in(text.stems)), None),
    )


def counts(stems: Sequence[str]) -> list[Counted]:
    """The numbers that count something, in order."""
    named = ((_counted(stems, start, end), start, end, number) for start, end, number in numbers(stems))
    return [Counted(name, start, end, number) for name, start, end, number in named if name]


def asked_for(text: Text) -> str | None:
    """What is asked for (`ice`, `water`, `bottles` ...), or None where no word says it.

    What stands right behind `how many` comes first: `how many bottles, two glasses each`.
    """
    words, stems = quantity_words(), text.stems
    found = [name for name, lines in words.asked.items() if lines.stand_in(stems)]
    behind = [places[-1] + 1 for places in words.how_many.find(stems) if places[-1] + 1 < len(stems)]
    counted = (name for at in behind for name in found if any(words.asked[name].at(stems, at)))
    return next(counted, next(iter(found), None))


def numbers(stems: Sequence[str]) -> list[tuple[int, int, float]]:
    """Start, end (exclusive) and value of every number, `twenty five` and `two dozen` taken together."""
    found: list[tuple[int, int, float]] = []
    for at, word in enumerate(stems):
        value = _value(word)
        if value is None:
            continue
        together = _together(stems, at, found, value)
        found = [*found[:-1], together] if together else [*found, (at, at + 1, value)]
    return found


def _together(
    stems: Sequence[str], at: int, found: list[tuple[int, int, float]], value: float
) -> tuple[int, int, float] | None:
    """A number word joined to the one before it: `twenty five`, `two dozen`; not `four 75 ml`."""
    if not found or found[-1][1] != at or stems[at][:1].isdigit():
        return None
    start, _, before = found[-1]
    if value in DOZENS and before < min(DOZENS):
        return start, at + 1, before * value
    return (start, at + 1, before + value) if before >= TENS > value else None


def _value(word: str) -> float | None:
    """The value of a number in digits, up to what a table can hold, or in words; `inf` is none."""
    return float(word) if _DIGITS.fullmatch(word) else quantity_words().numbers.get(word)


def _counted(stems: Sequence[str], start: int, end: int) -> str | None:
    """What the number at this place counts."""
    words, money = quantity_words(), small_words()["money"]
    near = _near(stems, end)
    if is_each(stems, end) or not money.isdisjoint((*near[:1], *stems[max(0, start - 1) : start])):
        return None  # `60 quid a head` counts no heads
    for at in range(min(REACH, len(near))):  # what stands nearest is counted
        for name, lines in words.counts.items():
            if any(lines.at(near, at)):
                return name
    before = list(stems[max(0, start - 2) : start])
    leads = any(places[-1] == len(before) - 1 for places in words.for_people.find(before))
    last = len(near) == 1 and words.not_people_last.issuperset(near)  # `we are two in`, not `two in Leeds`
    other = last or words.not_people.intersection(near[:1]) or is_for_all(stems, start, end)
    return "people" if leads and not other else None


def is_each(stems: Sequence[str], end: int) -> bool:
    """Whether a number that ends here is money for each guest: `85 a head`, `25 euros for each guest`."""
    words, money = quantity_words(), small_words()["money"]
    near = stems[end : end + REACH_ON]
    starts = range(1 + bool(money.intersection(near[:1]))) if near else ()
    return any(any(words.for_each.at(near, at)) for at in starts if at < len(near))


def is_for_all(stems: Sequence[str], start: int, end: int) -> bool:
    """Whether the number at this place is money for everything: `it's 150 for everything`."""
    words, near = quantity_words(), stems[end : end + REACH_ON]
    return words.for_all_behind.issuperset(stems[:start]) and bool(near) and any(words.for_all.at(near, 0))


def _near(stems: Sequence[str], end: int) -> list[str]:
    """The next few words, up to the next number or stop."""
    near: list[str] = []
    for word in stems[end : end + REACH_ON]:
        if word in small_words()["ends"] or _value(word) is not None:
            break
        near.append(word)
    return near
