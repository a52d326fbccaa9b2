"""The backwards clock: everything that has a time, from two weeks before to a week after."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta
from itertools import groupby

from assistant.answers.wording import listed
from assistant.evening.facts import Row, fact, rows, wording
from assistant.evening.hot import Hot, ends, hot_dishes, hot_moments
from assistant.evening.outside import foods_outside
from assistant.evening.records import Evening
from assistant.evening.temperatures import FRIDGE, Temperature, air_minutes
from assistant.knowledge.store import Knowledge

STEP, CHILL, OUT, AIR, POUR, FOODS = "step", "chill", "out", "air", "pour", "foods"
DAY_TASKS = "10:30"


@dataclass(frozen=True, slots=True)
class Task:
    """What is done at a moment (local time); `kind` tells fixed steps from what follows from the wines."""

    at: datetime
    task: str
    kind: str = STEP


@dataclass(frozen=True, slots=True)
class Pour:
    """When a wine is poured, when it must be cold, and when its bottle goes into the fridge (None: never)."""

    wine: str
    at: datetime
    ready: datetime
    chilled: datetime | None
    air: int


def clock(
    evening: Evening, temperature: Sequence[Temperature], measures: Mapping[str, float], knowledge: Knowledge
) -> list[Task]:
    """The tasks in time order; none where the file has no usable start."""
    if evening.start is None:
        return []
    flight = pours(evening, temperature, knowledge)
    hot = hot_dishes(evening, [pour.at for pour in flight], knowledge)
    last = ends(hot, flight[-1].at if flight else evening.start)
    end = last + _minutes(pace(evening))
    outside = [
        *foods_outside(_cold(evening, hot), evening.start, end, knowledge),
        *hot_moments(hot, evening.room_celsius),
    ]
    tasks = [
        *_steps(evening.start, flight, last, measures),
        *_stood_up(evening, evening.start, knowledge),
        *_chilling(flight, temperature),
        *_decanting(flight),
        *_pouring(flight, temperature),
        *(Task(at, wording()("clock", name, **told), FOODS) for at, name, told in outside),
    ]
    return sorted(tasks, key=lambda task: task.at)


def _cold(evening: Evening, hot: Sequence[Hot]) -> Evening:
    """The evening without the dishes that are eaten hot."""
    labels = {one.label for one in hot}
    return replace(evening, foods=tuple(line for line in evening.foods if line.label not in labels))


def pours(evening: Evening, temperature: Sequence[Temperature], knowledge: Knowledge) -> list[Pour]:
    """When every wine is poured, in the evening's order. Raises ValueError where there is no start."""
    if evening.start is None:
        raise ValueError("an evening without a start has no clock")
    first = evening.start + _minutes(fact("clock", "pace", "first_pour").typical)
    found = []
    for i, (line, cold) in enumerate(zip(evening.wines, temperature, strict=True)):
        at = first + _minutes(i * pace(evening))
        found.append(_pour(cold, at, air_minutes(line, knowledge)))
    return found


def _pour(cold: Temperature, at: datetime, air: int) -> Pour:
    """A wine that wants air is cold before it is decanted."""
    ready = at - _minutes(max(air, fact("clock", "pace", "ready_before").typical))
    minutes = cold.minutes_fridge
    chilled = early(ready - _minutes(minutes)) if minutes else None
    return Pour(cold.wine, at, early(ready), chilled, air)


def pace(evening: Evening) -> float:
    """Minutes from one wine to the next at such a meal."""
    return fact("clock", "pace", evening.meal).typical


def _steps(
    start: datetime, flight: Sequence[Pour], last: datetime, measures: Mapping[str, float]
) -> Iterator[Task]:
    """The fixed steps whose measure is not nought; a pause only in a long flight."""
    long = len(flight) >= fact("clock", "pace", "pause_from").typical
    for row in rows("clock", "step"):
        if measures.get(row.get("per", ""), 1.0) and (long or "after_middle" not in row):
            yield Task(_moment(row, start, flight, last), row["task"])


def _moment(row: Row, start: datetime, flight: Sequence[Pour], last: datetime) -> datetime:
    if "days" in row:
        day = start + timedelta(days=row["days"])
        return datetime.combine(day.date(), time.fromisoformat(row["at"]))
    if "after_middle" in row:
        return flight[len(flight) // 2].at + _minutes(row["after_middle"])
    return last + _minutes(row["after_last"]) if "after_last" in row else start + _minutes(row["minutes"])


def _stood_up(evening: Evening, start: datetime, knowledge: Knowledge) -> Iterator[Task]:
    old = fact("clock", "pace", "stand_up_maturity").typical
    lines = [w for w in evening.wines if "maturity" in knowledge.wines[w.wine].amounts]
    mature = [w.label for w in lines if knowledge.wines[w.wine].amounts["maturity"].typical >= old]
    if mature:
        day = (start - timedelta(days=1)).date()
        at = datetime.combine(day, time.fromisoformat(DAY_TASKS))
        yield Task(at, wording()("clock", "stand", wines=listed(mature)))


def _chilling(flight: Sequence[Pour], temperature: Sequence[Temperature]) -> Iterator[Task]:
    """Into the fridge, and out again where the wine is not iced until it is poured."""
    iced = {t.wine for t in temperature if t.iced}
    into = [(p.chilled, p.wine) for p in flight if p.chilled]
    out = [(p.ready, p.wine) for p in flight if p.chilled and p.wine not in iced]
    for kind, moments in ((CHILL, into), (OUT, out)):
        for at, together in groupby(sorted(moments), key=lambda pair: pair[0]):
            wines = listed([wine for _, wine in together])
            name = "in" if kind == CHILL else "out"
            yield Task(at, wording()("clock", name, wines=wines, place=FRIDGE), kind)


def _decanting(flight: Sequence[Pour]) -> Iterator[Task]:
    for pour in flight:
        if pour.air:
            yield Task(
                early(pour.at - _minutes(pour.air)), wording()("clock", "decant", wines=pour.wine), AIR
            )


def _pouring(flight: Sequence[Pour], temperature: Sequence[Temperature]) -> Iterator[Task]:
    for number, (pour, cold) in enumerate(zip(flight, temperature, strict=True), 1):
        name = "sparkling" if cold.sparkling else "pour"
        yield Task(pour.at, wording()("clock", name, number=number, wine=pour.wine), POUR)


def early(at: datetime) -> datetime:
    """The moment rounded down to the step of the clock."""
    step = int(fact("clock", "pace", "round_to").typical)
    return at.replace(minute=at.minute - at.minute % step, second=0, microsecond=0)


def _minutes(minutes: float) -> timedelta:
    return timedelta(minutes=minutes)
