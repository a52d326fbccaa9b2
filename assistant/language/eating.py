"""What somebody does not eat: diets, and foods named only to be left off the table."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Lines
from assistant.language.data import read_data
from assistant.language.frame import Frame, Reading, Text

WITHOUT_ALCOHOL = "kind/drink"
STOP = "."  # stands behind the last word, so that a line can end there


@dataclass(frozen=True, slots=True)
class Eating:
    """The lines of corpus/language/eating.toml: by diet, and those beside a food that is not eaten."""

    diets: Mapping[str, Lines]
    never: Lines
    free: Lines
    off: Lines
    abstains: Lines
    sober: Lines

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> Eating:
        """The lines read from the file's tables. Raises KeyError for a table that is missing."""
        diets = {diet: Lines(lines) for diet, lines in tables["diets"].items()}
        others = ("never", "free", "off", "abstains", "sober")
        return cls(diets, *(Lines(tables[name]["lines"]) for name in others))


@lru_cache(maxsize=1)
def eating_words() -> Eating:
    """The shipped lines. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "eating.toml", Eating.of)


def diets_in(stems: Sequence[str]) -> dict[str, frozenset[int]]:
    """The diets spoken of, each with the positions of its words."""
    diets = eating_words().diets.items()
    found = {diet: frozenset(i for places in lines.find(stems) for i in places) for diet, lines in diets}
    return {diet: places for diet, places in found.items() if places}


def diets_of(frame: Frame) -> tuple[str, ...]:
    """The diets of a frame, those too that its text speaks of where what stands was taken up."""
    return frame.diets or tuple(diets_in(frame.text.stems))


def abstains(stems: Sequence[str]) -> frozenset[int]:
    """The positions of the words by which somebody drinks no alcohol, or none of it is asked for."""
    return somebody_abstains(stems) | _found(eating_words().sober, stems)


def somebody_abstains(stems: Sequence[str]) -> frozenset[int]:
    """The positions of the words by which somebody drinks no alcohol; none where nobody says so."""
    return _found(eating_words().abstains, stems)


def _found(lines: Lines, stems: Sequence[str]) -> frozenset[int]:
    found = (i for places in lines.find((*stems, STOP)) for i in places)
    return frozenset(i for i in found if i < len(stems))


def unkept(text: Text) -> tuple[str, ...]:
    """What is left out of a text whose diets are kept to, and who of its people drink alcohol."""
    places = (*diets_in(text.stems).values(), abstains(text.stems))
    kept = {text.words[i] for place in places for i in place}
    return tuple(word for word in text.left_out if word not in kept)


def not_eaten(stems: Sequence[str], readings: Iterable[Reading]) -> list[Reading]:
    """Of these foods, those that somebody does not eat."""
    words = eating_words()
    return [
        r for r in readings if _ends_at(words.never, stems, r.start) or _starts_at(words.free, stems, r.end)
    ]


def left_off(stems: Sequence[str], readings: Iterable[Reading]) -> list[Reading]:
    """Of these foods, those that are to be left off."""
    return [r for r in readings if _ends_at(eating_words().off, stems, r.start)]


def _ends_at(lines: Lines, stems: Sequence[str], end: int) -> bool:
    starts = range(max(0, end - lines.longest), end)
    return any(places[-1] == end - 1 for at in starts for places in lines.at(stems[:end], at))


def _starts_at(lines: Lines, stems: Sequence[str], start: int) -> bool:
    return start < len(stems) and any(lines.at(stems, start))
