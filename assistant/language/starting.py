"""When an evening starts, as it is said of it: `Saturday at 7`, `tomorrow, 19:30`."""

from __future__ import annotations

import re
from datetime import date, datetime, time, timedelta
from difflib import get_close_matches

from assistant.language.guests import WORD, GuestWords, guest_words

WEEK = 7
FEWEST_OF_A_DAY, LIKE_A_DAY = 6, 0.86
_TIME = re.compile(r"(?P<hour>\d{1,2})(?:[:.](?P<minute>\d{2}))?\s*(?P<half>[ap]\.?m\b\.?)?", re.IGNORECASE)


def starts_at(typed: str, now: datetime, day: date | None = None) -> datetime | None:
    """The local start that is said, the next that comes; None where no day and no time stands.

    `day`: the day that was said before, which a time alone is of.
    """
    clock, said = time_of(typed), day_of(typed, now.date()) or day
    return None if clock is None or said is None else datetime.combine(said, clock)


def day_of(typed: str, today: date) -> date | None:
    """The day that is said, the next that comes; None where none is."""
    known, words = guest_words(), [word.lower() for word in WORD.findall(typed)]
    named = [_next(today, known.days[day]) for day in map(_day, words) if day in known.days]
    soon = [today + timedelta(days=known.soon[word]) for word in words if word in known.soon]
    return next(iter([*named, *soon]), None)


def _day(word: str) -> str:
    """A word, or the day of the week that it is a slip for (`thurday`)."""
    whole = [day for day in guest_words().days if len(day) >= FEWEST_OF_A_DAY and day[0] == word[0]]
    return next(iter(get_close_matches(word, whole, 1, LIKE_A_DAY)), word)


def next_day_at(typed: str, now: datetime) -> date | None:
    """The day on which the time of day that is said comes next: today, or tomorrow where it is over."""
    clock = time_of(typed)
    return None if clock is None else now.date() + timedelta(days=clock <= now.time())


def clock_said(typed: str) -> bool:
    """Whether a time of day is said."""
    return time_of(typed) is not None


def _next(today: date, weekday: int) -> date:
    """The next day of the week; today's name means a week from now."""
    return today + timedelta(days=(weekday - today.weekday() - 1) % WEEK + 1)


def time_of(typed: str) -> time | None:
    """The first time of day: `at 7`, `7pm`, `19:30`; a bare number is none."""
    known = guest_words()
    for found in _TIME.finditer(typed):
        before = WORD.findall(typed[: found.start()])[-1:]
        counts = known.no_clock.intersection(word.lower() for word in WORD.findall(typed[found.end() :])[:1])
        at = before and before[0].lower() in known.at and not counts
        meant = found["minute"] or found["half"] or at
        if meant and (said := _time(found, known)):
            return said
    return None


def _time(found: re.Match[str], known: GuestWords) -> time | None:
    hour, minute, half = int(found["hour"]), int(found["minute"] or 0), (found["half"] or "").lower()[:1]
    if half and not 1 <= hour <= 12:
        return None
    late = half == "p" or (not half and 1 <= hour <= known.evening_until)
    hour = hour % 12 + (12 if late else 0) if half or late else hour
    return time(hour, minute) if hour < 24 and minute < 60 else None
