"""Times of day in words as in digits: `half past six` -> `6:30`, `ten to nine` -> `8:50`.

The words stand in corpus/language/clock.toml.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.quantities import quantity_words

HOUR, NOON = 60, 12
TEN, TWENTY, HUNDRED = 10, 20, 100


@dataclass(frozen=True, slots=True)
class ClockWords:
    """Words around a time of day by use, and the minutes of `half` past and the like."""

    words: Mapping[str, tuple[str, ...]]
    minutes: Mapping[str, float]

    def one_of(self, *names: str) -> str:
        """A pattern of the words of these names, the longest first."""
        return _one_of(word for name in names for word in self.words[name])

    def counted(self) -> str:
        """A pattern of what is counted by a number that is no time of day."""
        return f"(?:{'|'.join(map(_whole, self.words['counts']))})"


@lru_cache(maxsize=1)
def clock_words() -> ClockWords:
    """The shipped words. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "clock.toml", _read)


def _read(tables: Mapping[str, Any]) -> ClockWords:
    words = {name: tuple(listed) for name, listed in tables["words"].items()}
    return ClockWords(words, {said: float(minutes) for said, minutes in tables["minutes"].items()})


def clock_in_digits(text: str) -> str:
    """The text in lower case with number words in digits and times told by minutes past or to the hour."""
    text = numbers_in_digits(text.lower())
    text = _past_or_to().sub(_told, text)
    text = _exact().sub(lambda m: f"{m['lead']}{m['hour']}:{m['minutes']}", text)
    return _half_of_hour().sub(lambda m: f"{m['lead']}{m['hour']}:30", text)


def numbers_in_digits(text: str) -> str:
    """The text with number words in digits, `twenty-five` as one; `pair` is none."""
    numbers = {
        w: n for w, n in quantity_words().numbers.items() if w not in clock_words().words["unnumbered"]
    }
    tens = _one_of(word for word, n in numbers.items() if TWENTY <= n < HUNDRED)
    ones = _one_of(word for word, n in numbers.items() if n < TEN)
    text = re.sub(rf"\b({tens})[- ]({ones})\b", lambda m: f"{numbers[m[1]] + numbers[m[2]]:g}", text)
    return re.sub(r"\b\w+\b", lambda m: f"{numbers[m[0]]:g}" if m[0] in numbers else m[0], text)


def _told(found: re.Match[str]) -> str:
    """The time in digits; `from 7 to 9` and numbers that are no minutes or hours stay as they are."""
    said, hour = found["minutes"], int(found["hour"])
    minutes = clock_words().minutes.get(said) or (float(said) if said.isdigit() else 0.0)
    to = found["way"] in clock_words().words["to"]
    spans = to and said.isdigit() and (bool(found["span"]) or said not in clock_words().words["before"])
    if spans or not 0 < minutes < HOUR or not 0 < hour <= NOON:
        return found[0]
    hour = ((hour - 2) % NOON + 1) if to else hour
    return f"{found['span'] or ''}{hour}:{HOUR - minutes if to else minutes:02.0f}"


@lru_cache(maxsize=1)
def _past_or_to() -> re.Pattern[str]:
    known = clock_words()
    minutes = rf"(?P<minutes>{_one_of(known.minutes)}|\d{{1,2}})(?: {known.one_of('minutes')})?"
    way = rf"(?P<way>{known.one_of('past', 'to')})"
    return re.compile(
        rf"\b(?P<span>{known.one_of('spans')} )?{minutes} {way} +(?P<hour>\d{{1,2}})\b(?![:.]\d)"
    )


@lru_cache(maxsize=1)
def _exact() -> re.Pattern[str]:
    """`at seven thirty`."""
    known = clock_words()
    hour = r"(?P<hour>[1-9]|1[0-2]) (?P<minutes>[1-5]\d)\b(?![:.]\d)"
    return re.compile(rf"\b(?P<lead>{known.one_of('exact')} ){hour}(?!\s*{known.counted()})")


@lru_cache(maxsize=1)
def _half_of_hour() -> re.Pattern[str]:
    """`since half six`, as it is said for half past."""
    known = clock_words()
    lead = known.one_of("from", "now", "half-lead")
    return re.compile(rf"\b(?P<lead>{lead} ){known.one_of('half-past')} (?P<hour>\d{{1,2}})\b(?![:.]\d)")


def _one_of(words: Iterable[str]) -> str:
    return f"(?:{'|'.join(map(re.escape, sorted(words, key=len, reverse=True)))})"


def _whole(word: str) -> str:
    """A pattern of a word; of one letter, only where nothing of a longer word follows."""
    return re.escape(word) + (r"\b" if len(word) == 1 and word.isalpha() else "")
