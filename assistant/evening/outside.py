"""Foods that spoil: when they come out of the fridge, and when they must go."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta
from itertools import groupby

from assistant.answers.wording import listed
from assistant.evening.facts import amount, fact, rows, tables
from assistant.evening.records import Evening, FoodLine
from assistant.knowledge.diets import lineage
from assistant.knowledge.store import Knowledge

Told = tuple[datetime, str, dict[str, str]]


def foods_outside(evening: Evening, start: datetime, end: datetime, knowledge: Knowledge) -> Iterator[Told]:
    """When foods that spoil come out and must be gone: moment, template, its fields.

    They come out as late as need be for the limit to reach to the `end`, at the latest at the start.
    """
    limit = limit_minutes(evening.room_celsius)
    moments = [(line, rest_minutes(line, knowledge)) for line in evening.foods]
    out = [(out_at(start, end, rest, limit), line.label) for line, rest in moments if rest is not None]
    for at, together in groupby(sorted(out), key=lambda pair: pair[0]):
        foods = listed([food for _, food in together])
        yield at, "foods-out", {"foods": foods}
        yield at + timedelta(minutes=limit), "foods-away", {"foods": foods, "minutes": f"{limit:g}"}


def out_at(start: datetime, end: datetime, rest: float, limit: float) -> datetime:
    """When a food with this rest in minutes comes out."""
    latest = min(start, end - timedelta(minutes=limit))
    return late(max(start - timedelta(minutes=rest), latest))


def late(at: datetime) -> datetime:
    """The moment rounded up to the step of the clock."""
    step = int(fact("clock", "pace", "round_to").typical)
    return at + timedelta(minutes=-at.minute % step)


def limit_minutes(room: float) -> float:
    """How long food that spoils may be out, shorter in a hot room."""
    hot = room > fact("clock", "pace", "hot_room").typical
    return fact("clock", "pace", "out_limit_hot" if hot else "out_limit").typical


def rest_minutes(line: FoodLine, knowledge: Knowledge) -> float | None:
    """Minutes out of the fridge before the start, the longest of its parts; None for what keeps outside."""
    found = (_rest(part.food, knowledge) for dish in line.dishes for part in dish.parts)
    return max((minutes for minutes in found if minutes is not None), default=None)


def _rest(food: str, knowledge: Knowledge) -> float | None:
    """The first row whose kinds the food or a part of it is of; of no row, it spoils unless it is ambient."""
    kinds = {k.removeprefix("kind/") for k in lineage(food, knowledge)}
    row = next((row for row in rows("clock", "out") if kinds & set(row["kinds"])), None)
    if row:
        return amount(row["minutes"]).typical
    return None if _ambient(food, knowledge) else fact("clock", "ambient", "other").typical


def _ambient(food: str, knowledge: Knowledge) -> bool:
    """Whether a food keeps outside the fridge for an evening."""
    known = tables("clock")["ambient"]
    name = food.removeprefix("food/")
    kinds = {kind.removeprefix("kind/") for kind in knowledge.broader(food)}
    return name not in known["except"] and (name in known["foods"] or not kinds.isdisjoint(known["kinds"]))
