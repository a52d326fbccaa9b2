"""When time is short: what can still be done from this moment on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from math import ceil

from assistant.evening.clock import STEP, Pour, Task
from assistant.evening.cooling import CoolingPlace, degrees_after, places
from assistant.evening.facts import fact, wording
from assistant.evening.records import Evening
from assistant.evening.temperatures import FREEZER, FRIDGE, Temperature, chill

LADDER = (FRIDGE, "ice", "salted-ice", FREEZER)
FASTEST = "salted-ice"
ON_THE_DAY = timedelta(hours=24)


def rescue(
    evening: Evening,
    temperature: Sequence[Temperature],
    flight: Sequence[Pour],
    tasks: Sequence[Task],
    now: datetime,
) -> list[Task]:
    """What to do at `now` (local time) about what the clock has overtaken; nothing while there is time.

    Every bottle is taken to stand at room temperature still.
    """
    if evening.start is None or not flight:
        return []
    if now > flight[-1].at:
        late = now - evening.start < ON_THE_DAY
        return [Task(now, wording()("rescue", "done"))] if late else []
    where = places(evening.measured, evening.room_celsius)
    cold = [
        _cold(pour, t, evening.room_celsius, where, now) for pour, t in zip(flight, temperature, strict=True)
    ]
    air = [_air(pour, now) for pour in flight]
    told = [*_late(tasks, evening.start, now), *(x for x in (*cold, *air) if x)]
    return [Task(now, sentence) for sentence in told]


def _late(tasks: Sequence[Task], start: datetime, now: datetime) -> list[str]:
    """Fixed steps of the day that should be done by now."""
    late = [t for t in tasks if t.kind == STEP and start - ON_THE_DAY < t.at < now <= start]
    return [wording()("rescue", "late", task=task.task) for task in late]


def _cold(
    pour: Pour, t: Temperature, room: float, where: Mapping[str, CoolingPlace], now: datetime
) -> str | None:
    """The gentlest place that still does it; nothing where the fridge is not due or the wine is poured."""
    if pour.chilled is None or now <= pour.chilled or now > pour.at:
        return None
    left = (pour.at - now).total_seconds() / 60
    for place in LADDER:
        minutes = _within(t, room, where[place], left)
        if minutes is not None:
            at = _clock(now + timedelta(minutes=minutes))
            return wording()("rescue", place, wine=t.wine, minutes=minutes, at=at)
    reached = degrees_after(room, left, where[FASTEST].celsius, where[FASTEST].k)
    told = {"place": where[FASTEST].label, "at": _clock(pour.at), "celsius": f"{max(reached, t.aim):.0f}"}
    return wording()("rescue", "warm", wine=t.wine, **told)


def _within(t: Temperature, room: float, place: CoolingPlace, left: float) -> int | None:
    """Whole minutes in this place, or None where they are too many or the bottle must not go there."""
    minutes = chill(room, t.aim, t.high, place)
    alarm = fact("cooling", "limits", "freezer_alarm").typical
    if minutes is None or minutes > left or (place.id == FREEZER and (t.sparkling or minutes > alarm)):
        return None
    return ceil(minutes)


def _air(pour: Pour, now: datetime) -> str | None:
    """A wine that should be in the decanter by now, and is not poured yet."""
    late = pour.air and pour.at - timedelta(minutes=pour.air) < now <= pour.at
    return wording()("rescue", "decant", wine=pour.wine) if late else None


def _clock(at: datetime) -> str:
    return at.strftime("%H:%M")
