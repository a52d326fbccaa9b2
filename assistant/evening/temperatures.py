"""How cold each wine is served and how long it takes to get there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import ceil, floor

from assistant.evening.cooling import CoolingPlace, minutes_to, places
from assistant.evening.facts import fact, wording
from assistant.evening.records import Evening, WineLine
from assistant.knowledge.concepts import Wine
from assistant.knowledge.store import Knowledge

FRIDGE, ICE, FREEZER, GLASS = "fridge", "ice", "freezer", "glass"


@dataclass(frozen=True, slots=True)
class Temperature:
    """A wine's serving band in degrees Celsius and the minutes it takes from room temperature to `aim`.

    0 minutes where the room is cool enough; None where a place never gets it there, and, for the freezer,
    where it must not go in. `range_fridge` and `range_ice`: the fastest and slowest it may be.
    `minutes_in_glass`: from the low to the high end of the band in the glass.
    """

    wine: str
    low: float
    aim: float
    high: float
    minutes_fridge: int | None
    range_fridge: tuple[int, int] | None
    minutes_ice: int | None
    range_ice: tuple[int, int] | None
    minutes_freezer: int | None
    minutes_in_glass: int | None
    note: str
    sparkling: bool
    iced: bool


def temperatures(evening: Evening, knowledge: Knowledge) -> list[Temperature]:
    """The temperature of every wine in the evening's order."""
    where = places(evening.measured, evening.room_celsius)
    return [_temperature(line, knowledge, evening.room_celsius, where) for line in evening.wines]


def is_sparkling(wine: Wine) -> bool:
    """Whether its bottle is under pressure."""
    pressure = wine.amounts.get("pressure")
    least = fact("cooling", "limits", "sparkling_bar").typical
    return pressure is not None and pressure.typical >= least


def chill(start: float, aim: float, high: float, place: CoolingPlace) -> float | None:
    """Minutes from `start` to the aim; 0 where it is within the band already."""
    return 0.0 if start <= high else minutes_to(start, aim, place.celsius, place.k)


def air_minutes(line: WineLine, knowledge: Knowledge) -> int:
    """Minutes in a decanter; 0 where they are too few to be worth one."""
    air = knowledge.wines[line.wine].air
    least = fact("clock", "pace", "decant_from").typical
    return int(air.typical) if air and air.typical >= least else 0


def _temperature(
    line: WineLine, knowledge: Knowledge, room: float, where: Mapping[str, CoolingPlace]
) -> Temperature:
    wine = knowledge.wines[line.wine]
    low, aim, high = band(wine)
    sparkling = is_sparkling(wine)
    freezer = None if sparkling else _freezer(chill(room, aim, high, where[FREEZER]))
    return Temperature(
        line.label, low, aim, high,
        _up(chill(room, aim, high, where[FRIDGE])), _range(room, aim, high, where[FRIDGE]),
        _up(chill(room, aim, high, where[ICE])), _range(room, aim, high, where[ICE]),
        freezer, _in_glass(low, high, where[GLASS]), _note(sparkling, room <= high), sparkling,
        room > high and aim <= fact("cooling", "limits", "iced_below").typical,
    )  # fmt: skip


def band(wine: Wine) -> tuple[float, float, float]:
    """The low end, middle and high end of a wine's serving temperature; of a wine without one, the room's."""
    room = fact("cooling", "limits", "room_celsius")
    serve = wine.serve or room
    return serve.low, serve.typical, serve.high


def _freezer(minutes: float | None) -> int | None:
    """The minutes, where they end before the alarm."""
    alarm = fact("cooling", "limits", "freezer_alarm").typical
    return _up(minutes) if minutes is not None and minutes <= alarm else None


def _range(room: float, aim: float, high: float, place: CoolingPlace) -> tuple[int, int] | None:
    """The fastest and the slowest it may take."""
    if room <= high:
        return 0, 0
    fast, slow = (minutes_to(room, aim, place.celsius, k) for k in (place.fast, place.slow))
    return None if fast is None or slow is None else (ceil(fast), ceil(slow))


def _in_glass(low: float, high: float, glass: CoolingPlace) -> int | None:
    minutes = minutes_to(low, high, glass.celsius, glass.k)
    return None if minutes is None else floor(minutes)


def _note(sparkling: bool, cool: bool) -> str:
    alarm = fact("cooling", "limits", "freezer_alarm").typical
    if sparkling:
        return wording()("note", "no-freezer")
    return wording()("note", "room") if cool else wording()("note", "freezer", minutes=f"{alarm:g}")


def _up(minutes: float | None) -> int | None:
    return None if minutes is None else ceil(minutes)
