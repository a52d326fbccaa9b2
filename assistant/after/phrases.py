"""How what follows an evening is asked for, from corpus/planning/after/phrases.toml."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.answers.wording import Wording
from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Lines
from assistant.language.data import read_data
from assistant.language.fold import fold, stem

FOLDER = "after"


@dataclass(frozen=True, slots=True)
class Act:
    """One thing that is asked for after an evening; the fields are told in the file."""

    name: str
    lines: Lines
    unless: Lines
    intent: str | None
    from_: frozenset[str] | None
    names: frozenset[str]
    nameless: str
    topics: frozenset[str]
    wine_said: bool
    amount_said: bool
    guest_named: bool
    proposed: bool
    fresh: bool
    voted: bool
    hands: bool
    safe: bool
    poured: bool
    written: bool
    heat: str
    just_out: str
    ailing: bool
    expected: bool


@dataclass(frozen=True, slots=True)
class Phrases:
    """The acts in order, sets of folded stems by use, turns for fill, minutes of units,
    days ago, minutes of `overnight` and the like, hours of
    the day, grams of weights, shares of a bottle, of the unit that follows, words around a bare number
    of degrees, lines that tell of heat without one."""

    acts: tuple[Act, ...]
    sets: Mapping[str, frozenset[str]]
    fill: Mapping[str, Lines]
    ago: Mapping[Lines, float]
    units: Mapping[str, float]
    part: Mapping[str, float]
    hours: Mapping[str, float]
    weights: Mapping[str, float]
    shares: Mapping[str, float]
    of_unit: Mapping[str, float]
    heat: Mapping[str, tuple[str, ...]]
    hot: Lines


@lru_cache(maxsize=1)
def phrases() -> Phrases:
    """The shipped phrases. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "planning" / FOLDER / "phrases.toml", _phrases)


@lru_cache(maxsize=1)
def after_wording() -> Wording:
    """The sentences said after an evening."""
    return Wording(corpus_dir() / "planning" / FOLDER / "wording.toml")


def said(section: str, template: str, /, **fields: object) -> str:
    """A sentence of this name. Raises KnowledgeError where the file lacks it."""
    return after_wording()(section, template, **fields)


def one_of(stems: Iterable[str], name: str) -> bool:
    """Whether a word of this set stands in a text."""
    return not phrases().sets[name].isdisjoint(stems)


def _phrases(tables: Mapping[str, Any]) -> Phrases:
    return Phrases(
        tuple(map(_act, tables["act"])),
        {name: frozenset(stem(fold(word)) for word in words) for name, words in tables["words"].items()},
        {name: Lines(lines) for name, lines in tables["fill"].items()},
        {Lines([words]): float(days) for words, days in tables["ago"].items()},
        {fold(word): float(minutes) for word, minutes in tables["units"].items()},
        {word: float(minutes) for word, minutes in tables["part"].items()},
        {word: float(hour) for word, hour in tables["hours"].items()},
        {stem(fold(word)): float(grams) for word, grams in tables["weights"].items()},
        {stem(fold(word)): float(part) for word, part in tables["shares"].items()},
        {words: float(part) for words, part in tables["of_unit"].items()},
        {name: tuple(words) for name, words in tables["heat"].items() if name != "lines"},
        Lines(tables["heat"]["lines"]),
    )


def _act(row: Mapping[str, Any]) -> Act:
    return Act(
        row["name"],
        Lines(row["lines"]),
        Lines(row.get("unless", ())),
        row.get("intent"),
        frozenset(row["from"]) if "from" in row else None,
        frozenset(row.get("names", ())),
        str(row.get("nameless", "")),
        frozenset(row.get("topics", ())),
        bool(row.get("wine_said")),
        bool(row.get("amount_said")),
        bool(row.get("guest_named")),
        bool(row.get("proposed")),
        bool(row.get("fresh")),
        bool(row.get("voted")),
        bool(row.get("hands")),
        bool(row.get("safe")),
        bool(row.get("poured")),
        bool(row.get("written")),
        str(row.get("heat", "")),
        str(row.get("just_out", "")),
        bool(row.get("ailing")),
        bool(row.get("expected")),
    )
