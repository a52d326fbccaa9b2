"""What somebody does not eat: diets, and foods named only to be left off the table."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Line, match, read_line
from assistant.language.data import read_data
from assistant.language.frame import Reading


@dataclass(frozen=True, slots=True)
class Eating:
    """The lines of corpus/language/eating.toml: by diet, and those beside a food that is not eaten."""

    diets: Mapping[str, Sequence[Line]]
    never: Sequence[Line]
    free: Sequence[Line]
    off: Sequence[Line]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> Eating:
        """The lines read from the file's tables. Raises KeyError for a table that is missing."""
        diets = {diet: _lines(lines) for diet, lines in tables["diets"].items()}
        return cls(diets, *(_lines(tables[name]["lines"]) for name in ("never", "free", "off")))


@lru_cache(maxsize=1)
def eating_words() -> Eating:
    """The shipped lines. Raises LanguageError where the file is broken."""
    return read_data(corpus_dir() / "language" / "eating.toml", Eating.of)


def diets_in(stems: Sequence[str]) -> dict[str, frozenset[int]]:
    """The diets spoken of, each with the positions of its words."""
    found: dict[str, set[int]] = {}
    for diet, lines in eating_words().diets.items():
        for at in range(len(stems)):
            for line in lines:
                found.setdefault(diet, set()).update(match(line, stems, at) or ())
    return {diet: frozenset(places) for diet, places in found.items() if places}


def not_eaten(stems: Sequence[str], readings: Iterable[Reading]) -> list[Reading]:
    """Of these foods, those that somebody does not eat."""
    words = eating_words()
    return [
        r for r in readings if _ends_at(words.never, stems, r.start) or _starts_at(words.free, stems, r.end)
    ]


def left_off(stems: Sequence[str], readings: Iterable[Reading]) -> list[Reading]:
    """Of these foods, those that are to be left off."""
    return [r for r in readings if _ends_at(eating_words().off, stems, r.start)]


def _ends_at(lines: Sequence[Line], stems: Sequence[str], end: int) -> bool:
    starts = range(max(0, end - max(map(len, lines))), end)
    found = (match(line, stems[:end], at) for at in starts for line in lines)
    return any(places and places[-1] == end - 1 for places in found)


def _starts_at(lines: Sequence[Line], stems: Sequence[str], start: int) -> bool:
    return any(match(line, stems, start) for line in lines)


def _lines(texts: Iterable[str]) -> tuple[Line, ...]:
    return tuple(map(read_line, texts))
