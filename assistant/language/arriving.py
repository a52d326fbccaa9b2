"""`Lucy comes late, around nine`: when one guest arrives, no need and not the start of the evening."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold
from assistant.language.retold import either
from assistant.language.spelling import is_english


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
    here: re.Pattern[str]
    missed: re.Pattern[str]
    nobody: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> ArrivalWords:
        """The turns of the file. Raises KeyError for a key that is missing."""
        table = tables["arriving"]
        names = "link small verbs late at hour part end all she goes_on length unit says here missed misses"
        link, small, verbs, late, at, hour, part, end, all_, she, goes_on, length, unit, says, here, *miss = (
            either(table[key]) for key in names.split()
        )
        guest = rf"(?<!\w)(?!{all_}\b)(?P<guest>[^\W\d]\w*?)"
        long = rf"(?:{length}|\d{{1,3}}\s?{unit})"
        clock = rf"(?:{part}\s)?(?:\d{{1,2}}(?:[:.]\d\d)?|{hour}\b)(?:\s?{end})?"
        turn = re.compile(
            rf"(?:[,;]?\s?\b(?:{link}\s)*)(?:(?<!\w)(?!{all_}\b)(?P<guest>[^\W\d]\w*)(?:\s{small})*"
            rf"(?:\s{says}\s{she})?(?:\s|(?=['’]))|(?<=,)\s)"
            rf"{verbs}\b(?P<late>\s(?:{long}\s)?{late}\b)?(?:,?\s(?:{small}\s)?{at}\s(?P<time>{clock}))?"
            rf"(?P<on>,?\s(?:{link}\s)?(?:{she}\b)?(?:\s|['’])?(?={goes_on}\b))?",
            re.IGNORECASE,
        )
        there = re.compile(rf"{guest}(?:\s|(?=['’])){here}\b", re.IGNORECASE)
        missed = re.compile(rf"\b{miss[0]}\s{guest}\s{miss[1]}\b", re.IGNORECASE)
        return cls(turn, there, missed, frozenset((*table["she"], *table["link"])))


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


def who_came(typed: str) -> str:
    """Who is told to be there now, or of whom it is asked what was missed; empty where nobody is named."""
    words = _words()
    found = (one for pattern in (words.here, words.missed) for one in pattern.finditer(typed))
    return next((name[0].upper() + name[1:] for one in found if (name := _called(one))), "")


def _called(found: re.Match[str]) -> str:
    """A name; a word of English only with a capital letter (`Sue`)."""
    name = _named(found)
    return name if name[:1].isupper() or not is_english(fold(name)) else ""
