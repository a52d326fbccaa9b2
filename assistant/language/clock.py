"""A time of day in words, written in digits: `at eight`, `half past seven`, `at seven thirty`."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from assistant.language.guests import guest_words
from assistant.language.quantities import quantity_words

NOON, HOUR = 12, 60


def in_digits(typed: str) -> str:
    """The text with hours in words, where a word for a time or minutes stand before them, as `7:30`."""
    return _clock().sub(_written, typed)


@lru_cache(maxsize=1)
def _clock() -> re.Pattern[str]:
    words = quantity_words()
    hours = _any(word for word, n in words.spelt.items() if n <= NOON)
    minutes = _any(word for word, n in words.spelt.items() if NOON < n < HOUR)
    leads = _any(word for word in guest_words().at if word.isalpha())
    return re.compile(
        rf"\b(?P<at>{leads}\s+)?(?P<part>(?:{_any(words.clock)})\s+)?"
        rf"(?P<hour>{hours}|\d{{1,2}})\b(?:\s+(?P<minutes>{minutes})\b)?",
        re.IGNORECASE,
    )


def _any(words: Iterable[str]) -> str:
    return "(?:" + "|".join(sorted(map(re.escape, words), key=len, reverse=True)) + ")"


def _written(found: re.Match[str]) -> str:
    at, part, said = found["at"] or "", (found["part"] or "").strip().lower(), found["hour"].lower()
    if not (part or (at and said.isalpha())):
        return found[0]
    words = quantity_words()
    hour = int(said) if said.isdecimal() else words.spelt[said]
    behind = words.spelt.get((found["minutes"] or "").lower(), 0)
    minutes = words.clock[" ".join(part.split())] if part else behind
    if not minutes:
        return f"{at}{hour}"
    hours, minutes = divmod(hour % NOON * HOUR + minutes, HOUR)
    return f"{at}{hours % NOON or NOON}:{minutes:02d}"
