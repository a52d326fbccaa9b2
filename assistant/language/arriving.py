"""`Lucy comes late, around nine`: when one guest arrives, no need and not the start of the evening."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.retold import either


@dataclass(frozen=True, slots=True)
class Arrival:
    """Who arrives alone, as typed, and at what time (empty: late); `start`: where in the text it is told."""

    guest: str
    time: str
    start: int


@dataclass(frozen=True, slots=True)
class ArrivalWords:
    """The table `arriving` of corpus/language/guests.toml: the whole turn, and words that name nobody."""

    turn: re.Pattern[str]
    nobody: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> ArrivalWords:
        """The turns of the file. Raises KeyError for a key that is missing."""
        table = tables["arriving"]
        link, small, verbs, late, at, hour, part, end, all_, she, goes_on = (
            either(table[key])
            for key in (
                "link",
                "small",
                "verbs",
                "late",
                "at",
                "hour",
                "part",
                "end",
                "all",
                "she",
                "goes_on",
            )
        )
        clock = rf"(?:{part}\s)?(?:\d{{1,2}}(?:[:.]\d\d)?|{hour}\b)(?:\s?{end})?"
        turn = re.compile(
            rf"(?:[,;]?\s?\b(?:{link}\s)*)(?:(?<!\w)(?!{all_}\b)(?P<guest>[^\W\d]\w*)(?:\s{small})*"
            rf"(?:\s|(?=['’]))|(?<=,)\s)"
            rf"{verbs}\b(?P<late>\s{late}\b)?(?:,?\s(?:{small}\s)?{at}\s(?P<time>{clock}))?"
            rf"(?P<on>,?\s(?:{link}\s)?(?:{she}\b)?(?:\s|['’])?(?={goes_on}\b))?",
            re.IGNORECASE,
        )
        return cls(turn, frozenset((*table["she"], *table["link"])))


@lru_cache(maxsize=1)
def _words() -> ArrivalWords:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", ArrivalWords.of)


def arrivals(typed: str) -> tuple[Arrival, ...]:
    """Each guest who is said to arrive alone; `she` is told with an empty name."""
    found = (one for one in _words().turn.finditer(typed) if one["late"] or one["time"])
    return tuple(Arrival(_named(one), one["time"] or "", one.start()) for one in found)


def without_arrivals(typed: str) -> str:
    """A text without what it tells of when one guest arrives; the name stays where more is told of it."""
    return _words().turn.sub(_left, typed).strip()


def _left(found: re.Match[str]) -> str:
    if not (found["late"] or found["time"]):
        return found[0]
    if not (found["on"] and _named(found)):
        return found["on"] or ""
    return f"{found[0][: found.start('guest') - found.start()]}{found['guest']} "


def _named(found: re.Match[str]) -> str:
    guest = found["guest"] or ""
    return "" if guest.lower() in _words().nobody else guest
