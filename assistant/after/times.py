"""How long something was out or open, and how warm it was, from the words of a text."""

from __future__ import annotations

import re
from datetime import date, datetime
from functools import lru_cache

from assistant.after.phrases import phrases
from assistant.language.clock import clock_in_digits, clock_words, numbers_in_digits
from assistant.language.guests import guest_words

HOUR, HALF_DAY, DAY = 60, 720, 1440
WEEK = 7
_NUMBER = r"(?P<number>\d{1,4}(?:\.\d{1,2})?)"
_CLOCK = r"(?P<hour>\d{1,2})(?!\d)(?:[:.h](?P<minute>[0-5]\d))?(?:\s*(?P<half>[ap])\.?m\b\.?)?"
_HEAT = re.compile(
    r"(?P<number>\d{2,3}(?:\.\d)?)\s*"
    r"(?:(?:°|degrees?|deg)\s*(?P<unit>c|f|celsius|fahrenheit)?|(?P<bare>[cf])\b)",
    re.IGNORECASE,
)
_HOURS_MINUTES = re.compile(r"\b(\d{1,2})h(\d{2})\b")
F_FROM = 50.0


def minutes_out(typed: str, now: datetime) -> float | None:
    """Minutes that something stood out: as said, or from a time to another or to `now`; None: not said."""
    typed = clock_in_digits(typed)
    said = minutes_said(typed)
    if said is not None:
        return said
    start = _time_behind("from").search(typed)
    if start is None:
        words = re.findall(r"\w+", typed.lower())
        named = next((phrases().hours[word] for word in words if word in phrases().hours), None)
        return None if named is None else _between(named * HOUR, now.hour * HOUR + now.minute, DAY)
    ends = _time_behind("now")
    end = ends.search(typed, start.end()) or ends.search(typed[: start.start()])
    if end is None:
        span = DAY if start["half"] or int(start["hour"]) > 12 else HALF_DAY
        return _between(_of_day(start), now.hour * HOUR + now.minute, span)
    sure = all(found["half"] or int(found["hour"]) > 12 for found in (start, end))
    return _between(_of_day(start), _of_day(end), DAY if sure else HALF_DAY)


def minutes_said(typed: str) -> float | None:
    """The time that is said as a length: `two and a half hours`, `1h30`, `90 min`, `overnight`."""
    text = _in_digits(typed.lower())
    together = _HOURS_MINUTES.search(text)
    if together:
        return int(together[1]) * HOUR + float(together[2])
    found = [float(m["number"]) * phrases().units[m["unit"]] for m in _lengths().finditer(text)]
    if found:
        return sum(found)
    return next((minutes for words, minutes in phrases().part.items() if words in text), None)


def days_open(typed: str, today: date) -> float | None:
    """Days since a bottle was opened, or None where that is not said."""
    minutes = minutes_said(typed)
    if minutes is not None and minutes >= HOUR:
        return minutes / DAY
    words = re.findall(r"\w+", typed.lower())
    named = [guest_words().days[word] for word in words if word in guest_words().days]
    if named:
        return float((today.weekday() - named[0]) % WEEK or WEEK)
    return next((days for lines, days in phrases().ago.items() if lines.stand_in(words)), None)


def degrees_said(typed: str) -> tuple[float, str] | None:
    """How warm it is, in °C, and the unit it was said in; a number too high for °C is in °F."""
    found = _HEAT.search(typed)
    if found is None:
        return None
    value = float(found["number"])
    unit = (found["unit"] or found["bare"] or "").lower()[:1] or ("f" if value > F_FROM else "c")
    return ((value - 32) * 5 / 9 if unit == "f" else value, unit)


def celsius_said(typed: str) -> float | None:
    """How warm it is, in °C."""
    found = degrees_said(typed)
    return found[0] if found else None


def _of_day(found: re.Match[str]) -> float:
    """Minutes into the day, as said."""
    hour = int(found["hour"])
    half = (found["half"] or "").lower()
    hour = hour % 12 + (12 if half == "p" else 0) if half else hour
    return hour * HOUR + float(found["minute"] or 0)


def _between(start: float, end: float, span: int) -> float | None:
    return (end - start) % span or None


def _in_digits(text: str) -> str:
    """Number words and halves as digits: `an hour and a half` -> `1.5 hour`."""
    text = re.sub(rf"\b{clock_words().one_of('couple')}\b", "2", text)
    text = numbers_in_digits(text)
    more = clock_words().one_of("and_half")
    text = re.sub(rf"\b(?:an?|1) ({_units()}) {more}\b", r"1.5 \1", text)
    text = re.sub(rf"\b(\d+) {more}\b", r"\1.5", text)
    for part, share in sorted(phrases().of_unit.items(), key=lambda one: -len(one[0])):
        text = re.sub(rf"\b{re.escape(part)} (?={_units()}\b)", f"{share:g} ", text)
    return re.sub(rf"\ban? (?={_units()}\b)", "1 ", text)


@lru_cache(maxsize=2)
def _time_behind(name: str) -> re.Pattern[str]:
    """A time of day behind one of the words of this name, that is no length of time and no temperature."""
    about = rf"\s+(?:{clock_words().one_of('about')}\s+)?"
    return re.compile(
        rf"\b{clock_words().one_of(name)}{about}{_CLOCK}(?!\s*{clock_words().counted()})", re.IGNORECASE
    )


@lru_cache(maxsize=1)
def _units() -> str:
    return f"(?:{'|'.join(sorted(phrases().units, key=len, reverse=True))})"


@lru_cache(maxsize=1)
def _lengths() -> re.Pattern[str]:
    return re.compile(rf"{_NUMBER}\s*-?\s*(?P<unit>{_units()})\b")
