"""Newton's law of cooling for bottles: minutes in a place, and degrees after so many minutes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import exp, log

from assistant.evening.facts import Row, amount, file_of, rows
from assistant.evening.records import Measured
from assistant.language.data import telling


@dataclass(frozen=True, slots=True)
class CoolingPlace:
    """A place with its degrees Celsius and its constant per minute: slowest, usual and fastest."""

    id: str
    label: str
    celsius: float
    slow: float
    k: float
    fast: float


def places(measured: Sequence[Measured] = (), room: float | None = None) -> dict[str, CoolingPlace]:
    """Every place by id; a measured one has the host's own constant, a glass stands in this room."""
    with telling(file_of("cooling")):
        found = {row["id"]: _place(row) for row in rows("cooling", "place")}
    for one in measured:
        own = constant(one.start, one.end, found[one.place].celsius, one.minutes)
        found[one.place] = replace(found[one.place], slow=own, k=own, fast=own)
    if room is not None:
        found["glass"] = replace(found["glass"], celsius=room)
    return found


def _place(row: Row) -> CoolingPlace:
    k = amount(row["k"])
    return CoolingPlace(row["id"], row["label"], amount(row["celsius"]).typical, k.low, k.typical, k.high)


def constant(start: float, end: float, around: float, minutes: float) -> float:
    """The constant per minute that took a bottle from `start` to `end`, `around` being all about it.

    Raises ValueError where it cannot have done so.
    """
    if minutes <= 0 or start == around or not 0 < (end - around) / (start - around) < 1:
        raise ValueError("no bottle goes that way")
    return log((start - around) / (end - around)) / minutes


def reachable(one: Measured) -> bool:
    """Whether a bottle can have gone where it was measured."""
    around = places()[one.place].celsius
    return one.start != around and 0 < (one.end - around) / (one.start - around) < 1


def minutes_to(start: float, end: float, around: float, k: float) -> float | None:
    """Minutes from `start` to `end`; 0 where it is there or beyond, None where it never gets there."""
    if start == end or (start > end) == (start < around):
        return 0.0
    if (end - around) * (start - around) <= 0:
        return None
    return max(0.0, log((start - around) / (end - around)) / k)


def degrees_after(start: float, minutes: float, around: float, k: float) -> float:
    """Degrees Celsius after so many minutes."""
    return around + (start - around) * exp(-k * minutes)
