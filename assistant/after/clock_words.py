"""Times of day in words as in digits: `half past six` -> `6:30`, `ten to nine` -> `8:50`."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from assistant.after.phrases import phrases
from assistant.language.quantities import quantity_words

HOUR, NOON = 60, 12
TEN, TWENTY, HUNDRED = 10, 20, 100


def clock_in_digits(text: str) -> str:
    """The text in lower case with number words in digits and times told by minutes past or to the hour."""
    text = numbers_in_digits(text.lower())
    text = _past_or_to().sub(_told, text)
    return _half_of_hour().sub(lambda m: f"{m['lead']}{m['hour']}:30", text)


def numbers_in_digits(text: str) -> str:
    """The text with number words in digits, `twenty-five` as one; `pair` is none."""
    numbers = {w: n for w, n in quantity_words().numbers.items() if w not in phrases().clock["unnumbered"]}
    tens = _one_of(word for word, n in numbers.items() if TWENTY <= n < HUNDRED)
    ones = _one_of(word for word, n in numbers.items() if n < TEN)
    text = re.sub(rf"\b({tens})[- ]({ones})\b", lambda m: f"{numbers[m[1]] + numbers[m[2]]:g}", text)
    return re.sub(r"\b\w+\b", lambda m: f"{numbers[m[0]]:g}" if m[0] in numbers else m[0], text)


def _told(found: re.Match[str]) -> str:
    """The time in digits; `from 7 to 9` and numbers that are no minutes or hours stay as they are."""
    said, hour = found["minutes"], int(found["hour"])
    minutes = phrases().clock_minutes.get(said) or (float(said) if said.isdigit() else 0.0)
    to = found["way"] in phrases().clock["to"]
    spans = to and said.isdigit() and (bool(found["span"]) or said not in phrases().clock["before"])
    if spans or not 0 < minutes < HOUR or not 0 < hour <= NOON:
        return found[0]
    hour = ((hour - 2) % NOON + 1) if to else hour
    return f"{found['span'] or ''}{hour}:{HOUR - minutes if to else minutes:02.0f}"


@lru_cache(maxsize=1)
def _past_or_to() -> re.Pattern[str]:
    clock = phrases().clock
    minutes = rf"(?P<minutes>{_one_of(phrases().clock_minutes)}|\d{{1,2}})(?: {_one_of(clock['minutes'])})?"
    way = rf"(?P<way>{_one_of((*clock['past'], *clock['to']))})"
    return re.compile(
        rf"\b(?P<span>{_one_of(clock['spans'])} )?{minutes} {way} (?P<hour>\d{{1,2}})\b(?![:.]\d)"
    )


@lru_cache(maxsize=1)
def _half_of_hour() -> re.Pattern[str]:
    """`since half six`, as it is said for half past."""
    lead = _one_of((*phrases().clock["from"], *phrases().clock["now"]))
    return re.compile(
        rf"\b(?P<lead>{lead} ){_one_of(phrases().clock['half-past'])} (?P<hour>\d{{1,2}})\b(?![:.]\d)"
    )


def _one_of(words: Iterable[str]) -> str:
    return f"(?:{'|'.join(map(re.escape, sorted(words, key=len, reverse=True)))})"
