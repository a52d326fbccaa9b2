"""The words by which a host teaches, from corpus/language/taught.toml."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Lines
from assistant.language.data import read_data
from assistant.language.fold import key
from assistant.language.profile import profile_words
from assistant.language.quantities import numbers

Amounts = Mapping[str, float]
_PARTS = {"name": r"(?P<name>[^,;:]{1,60}?)", "thing": r"(?P<thing>[^,;]{1,80}?)", "rest": r"(?P<rest>.+)"}


@dataclass(frozen=True, slots=True)
class TaughtWords:
    """Verdicts and amounts by stem, bands by how many points there are and by points, sets of stems and
    lines by use, templates."""

    verdicts: Mapping[str, str]
    amounts: Mapping[str, Amounts]
    points: Mapping[int, Mapping[int, str]]
    milk: Mapping[str, Amounts]
    degrees: Mapping[str, float]
    directions: Mapping[str, tuple[str, str]]
    sets: Mapping[str, frozenset[str]]
    named: tuple[re.Pattern[str], ...]
    new: tuple[re.Pattern[str], ...]
    is_a: re.Pattern[str]
    tails: tuple[str, ...]
    sorts: tuple[str, ...]
    lines: Mapping[str, Lines]
    carries: Mapping[str, tuple[re.Pattern[str], ...]]


@lru_cache(maxsize=1)
def taught_words() -> TaughtWords:
    """The words, read once. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "taught.toml", _words)


def number_of(stem: str) -> int | None:
    """The whole number that a word stands for, in digits or letters, or None."""
    found = numbers((stem,))
    value = found[0][2] if found else 0.5
    return int(value) if value.is_integer() else None


def _words(tables: Mapping[str, Any]) -> TaughtWords:
    return TaughtWords(
        verdicts={s: band for band, words in tables["verdicts"].items() for s in _stems(words)},
        amounts=_amounts(tables["alike"]),
        points={int(of): {int(n): band for n, band in row.items()} for of, row in tables["points"].items()},
        milk={_stem(word): dict(amounts) for word, amounts in tables["milk"].items()},
        degrees={_stem(word): float(by) for word, by in tables["degrees"].items()},
        directions={name: (more, less) for name, (more, less) in tables["directions"].items()},
        sets={name: _stems(words) for name, words in tables["words"].items()},
        named=tuple(map(_pattern, tables["names"]["templates"])),
        new=tuple(map(_pattern, tables["new"]["templates"])),
        is_a=_pattern(tables["new"]["is"]),
        tails=tuple(sorted(tables["names"]["tails"], key=len, reverse=True)),
        sorts=tuple(tables["new"]["sorts"]),
        lines={name: Lines(lines) for name, lines in tables["lines"].items()},
        carries={way: tuple(_carries(tables["carries"], way)) for way in ("send", "bring")},
    )


def _carries(table: Mapping[str, Any], way: str) -> Iterable[re.Pattern[str]]:
    """The patterns of a notebook carried out or in."""
    for template in table[way]:
        for part in ("file", "whose"):
            template = template.replace(f"{{{part}}}", table[part])
        yield re.compile(template, re.IGNORECASE)


def _amounts(alike: Mapping[str, str]) -> Mapping[str, Amounts]:
    known = profile_words()
    return {**known, **{_stem(word): known[_stem(as_)] for word, as_ in alike.items()}}


def _pattern(template: str) -> re.Pattern[str]:
    for name, part in _PARTS.items():
        template = template.replace(f"{{{name}}}", part)
    return re.compile(rf"\b{template}$" if template[0].isalnum() else f"{template}$", re.IGNORECASE)


def _stem(word: str) -> str:
    return " ".join(key(word)) or word


def _stems(words: Iterable[str]) -> frozenset[str]:
    return frozenset(map(_stem, words))
