"""What every answer after an evening shares: lines put together, times and days in words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import ceil

from assistant.after.phrases import said
from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer

HOUR, WEEK = 60, 7


def told(context: Context, lines: Sequence[str], understood: bool = True) -> Answer:
    """An answer whose first line is said aloud."""
    answer = replace(compose(context.all_used(), lines[0], lines), dish=None, understood=understood)
    return answer if understood else replace(answer, clarify=lines[0])


def time_in_words(minutes: float) -> str:
    """`3 hours`, `an hour`, `40 minutes`, `2 h 15 min`."""
    whole, rest = divmod(round(minutes), HOUR)
    if rest and whole:
        return said("time", "hours-minutes", hours=whole, minutes=rest)
    if not whole:
        return said("time", "minutes", count=rest)
    return said("time", "hour") if whole == 1 else said("time", "hours", count=whole)


def days_in_words(days: float) -> str:
    """`a day`, `3 days`, `2 weeks`."""
    count = max(1, ceil(days - 0.5))
    if count == 1:
        return said("open", "day")
    if count % WEEK == 0 and count > WEEK:
        return said("open", "weeks", count=count // WEEK)
    return said("open", "days", count=count)
