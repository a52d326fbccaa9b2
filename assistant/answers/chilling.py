"""How long a bottle lies in the fridge, or stands in ice and water, until it is as cold as it is served."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.answers.context import Context
from assistant.answers.wording import span
from assistant.evening.cooling import CoolingPlace, minutes_to, places
from assistant.evening.facts import fact, rows, tables
from assistant.evening.temperatures import FRIDGE, ICE, band
from assistant.knowledge.concepts import Wine

STEP = 5  # minutes are told to the nearest five: nothing here is known closer


@dataclass(frozen=True, slots=True)
class Chilled:
    """Minutes for a wine, fastest, usual and slowest; all 0 where the room is cool enough."""

    low: int
    typical: int
    high: int


def usual_kinds() -> tuple[str, ...]:
    """The kinds told of where no wine is named. Raises KnowledgeError for a broken file."""
    return tuple(tables("cooling")["usual"]["kinds"])


def usual_room() -> float:
    """The degrees Celsius of a room where nobody says otherwise."""
    return fact("cooling", "limits", "room_celsius").typical


def chilled(wine: Wine, place: str, room: float) -> Chilled | None:
    """The minutes in this place, from so many degrees; None where it never gets so cold."""
    _, aim, high = band(wine)
    where = places((), room)[place]
    if room <= high:
        return Chilled(0, 0, 0)
    found = [minutes_to(room, aim, where.celsius, k) for k in _constants(where)]
    minutes = [_told(one) for one in found if one is not None]
    return Chilled(*minutes) if len(minutes) == len(found) else None


def chill_lines(
    context: Context, called: str, wines: Sequence[Wine], degrees: float | None = None
) -> list[str]:
    """How long these wines, called so together, take in the fridge and in ice, and what that rests on.

    `degrees`: how warm they are now, in Celsius; as warm as a usual room where that is not known.
    """
    now = usual_room() if degrees is None else degrees
    cold = [[one for wine in wines if (one := chilled(wine, place, now))] for place in (FRIDGE, ICE)]
    room = f"{now:.3g}"
    if not all(cold):
        return []
    if not any(one.typical for one in cold[0]):
        return [context.wording("line", "chill-none", wine=called, room=room)]
    fridge, ice = (_between([one.typical for one in found]) for found in cold)
    slow = span(min(one.low for one in cold[0]), max(one.high for one in cold[0]))
    row = next(row for row in rows("cooling", "place") if row["id"] == FRIDGE)["k"]
    return [
        context.wording("line", "chill", wine=called, fridge=fridge, ice=ice, room=room),
        context.wording("line", "chill-range", minutes=slow),
        context.wording("line", "chill-basis", basis=row["basis"], source=row["source"]),
    ]


def _constants(place: CoolingPlace) -> tuple[float, float, float]:
    return place.fast, place.k, place.slow


def _told(minutes: float) -> int:
    return max(STEP, STEP * round(minutes / STEP))


def _between(minutes: Sequence[int]) -> str:
    return span(min(minutes), max(minutes))
