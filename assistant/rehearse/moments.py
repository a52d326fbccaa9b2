"""`since Friday`, `before the party`, `since 3 November`: the moment from which on something is meant."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime, timedelta

from assistant.language.guests import guest_words
from assistant.language.starting import WEEK
from assistant.notebook import Statement
from assistant.rehearse.words import rehearse_words
from assistant.taught.words import number_of


def moment(
    stems: Sequence[str], now: datetime, starts: datetime | None, told: Sequence[Statement]
) -> datetime | None:
    """The local beginning of what is named; None where nothing is, or where it is not known when it was.

    `starts`: when the evening on the table begins; the evening is otherwise that of which was last told.
    """
    when = rehearse_words().when
    day = _day(stems, now.date())
    if day is not None:
        return datetime(day.year, day.month, day.day).astimezone()
    return _evening(now, starts, told) if _has(stems, when["evening"]) else None


def names_moment(stems: Sequence[str], today: date) -> bool:
    """Whether a day or an evening is named, whatever is known of it."""
    return _day(stems, today) is not None or _has(stems, rehearse_words().when["evening"])


def _has(stems: Sequence[str], phrases: Sequence[tuple[str, ...]]) -> bool:
    return any(tuple(stems[i : i + len(p)]) == p for p in phrases for i in range(len(stems)))


def _day(stems: Sequence[str], today: date) -> date | None:
    when, days = rehearse_words().when, guest_words().days
    found = next((_dated(stems, at, today) for at in range(len(stems)) if _month(stems[at])), None)
    if found:
        return found
    weekday = next((days[stem] for stem in stems if stem in days), None)
    if weekday is not None:
        return today - timedelta(days=(today.weekday() - weekday) % WEEK)
    for name, back in (("today", 0), ("yesterday", 1), ("week", WEEK)):
        if _has(stems, when[name]):
            return today - timedelta(days=back)
    return None


def _month(stem: str) -> int:
    months = [one[0] for one in rehearse_words().when["months"]]
    return next((n for n, name in enumerate(months, 1) if stem == name or stem == name[:3]), 0)


def _dated(stems: Sequence[str], at: int, today: date) -> date | None:
    """The latest such day that is not to come: `3 november`, `november 3`."""
    near = [number_of(stem) for stem in (*stems[max(0, at - 1) : at], *stems[at + 1 : at + 2])]
    number = next((n for n in near if n), None)
    for year in (today.year, today.year - 1):
        try:
            found = date(year, _month(stems[at]), number or 1)
        except ValueError:
            return None
        if found <= today:
            return found
    return None


def _evening(now: datetime, starts: datetime | None, told: Sequence[Statement]) -> datetime | None:
    """When the evening on the table began, if it has; else when the first word of the last one was told."""
    if starts is not None and starts.astimezone() <= now:
        return starts.astimezone()
    titles = [one.evening for one in told if one.evening]
    return min((one.when for one in told if one.evening == titles[-1]), default=None) if titles else None
