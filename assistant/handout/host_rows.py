"""Rows of the host's tables: the clock day by day, what to buy, how warm each wine is served."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from assistant.handout.words import fahrenheit, moment, money, say, together

Parts = Mapping[str, Any]
Row = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Day:
    """A day of the clock; `rows` are the time and all that is done then."""

    day: str
    rows: tuple[tuple[str, tuple[str, ...]], ...]


def clock(tasks: Sequence[Parts]) -> tuple[Day, ...]:
    """The tasks by day and minute."""
    by_day = groupby(tasks, key=lambda row: row["at"][:10])
    return tuple(Day(moment(day, "day"), _minutes(list(rows))) for day, rows in by_day)


def _minutes(tasks: Sequence[Parts]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    by_minute = groupby(tasks, key=lambda row: row["at"][11:])
    return tuple((at, tuple(row["task"] for row in rows)) for at, rows in by_minute)


def purchases(plan: Parts) -> tuple[Row, ...]:
    """Item, amount, price."""
    return tuple(_purchase(row, plan["cost"]["currency"]) for row in plan["shopping"])


def _purchase(row: Parts, currency: str | None) -> Row:
    unit = say()("unit", row["unit"] if row["amount"] == 1 else f"{row['unit']}-many")
    price = money(row["cost"], currency) or say()("host", "unpriced")
    return row["item"], f"{row['amount']:g} {unit}", price


def warmths(rows: Sequence[Parts]) -> tuple[Row, ...]:
    """Wine, degrees, minutes in the fridge, in ice and water, in the glass, what to take care of."""
    return tuple(tuple(_warmth(row)) for row in rows)


def _warmth(row: Parts) -> Iterator[str]:
    degrees = (together(*row["celsius"]), together(*map(fahrenheit, row["celsius"])))
    both = dict(zip(("celsius", "fahrenheit"), degrees, strict=True))
    yield row["wine"]
    yield say()("host", "degrees", **both)
    for name in ("minutes_fridge", "minutes_ice", "minutes_in_glass"):
        minutes = row[name]
        yield say()("host", "minutes", minutes=minutes) if minutes else say()("host", "unneeded")
    yield row["note"]
