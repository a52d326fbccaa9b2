"""Grams of every food: a pure function of guests, meal and what is already bought."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from math import ceil

from assistant.evening.facts import HAIR, Row, amount, fact, rows
from assistant.evening.hot import is_main
from assistant.evening.records import Evening, FoodLine
from assistant.knowledge.store import Knowledge

SUPPER = "supper"


@dataclass(frozen=True, slots=True)
class Portion:
    """One food in grams: for each guest, in all with the reserve, and to be bought in the step shops sell."""

    food: str
    share: str
    per_guest: float
    needed: float
    to_buy: float


def portions(evening: Evening, knowledge: Knowledge) -> list[Portion]:
    """The grams of every food; foods of a class share what a guest eats of the class."""
    classes = [_class_eaten(line, evening, knowledge) for line in evening.foods]
    sharing = Counter((row["id"], meal) for row, meal in classes)
    return [
        _portion(line, row, meal, sharing[row["id"], meal], evening)
        for line, (row, meal) in zip(evening.foods, classes, strict=True)
    ]


def _class_eaten(line: FoodLine, evening: Evening, knowledge: Knowledge) -> tuple[Row, str]:
    """The class of a food and the meal it is eaten at: a lasagne or a roast is a supper at any tasting."""
    if is_main(line, knowledge):
        return rows("amounts", "class")[-1], SUPPER
    return class_of(line.food, knowledge), evening.meal


def class_of(food: str, knowledge: Knowledge) -> Row:
    """The class of amounts.toml a food belongs to; the last one takes what no other does."""
    kinds = {k.removeprefix("kind/") for k in (food, *knowledge.broader(food))}
    found = rows("amounts", "class")
    return next((row for row in found if kinds.intersection(row["kinds"])), found[-1])


def staple(name: str, evening: Evening) -> float:
    """Grams, in shop steps, of a class that is not on the table but ought to be, as bread."""
    row = next(row for row in rows("amounts", "class") if row["id"] == name)
    return _stepped(amount(row[evening.meal]).typical * evening.guests * _reserve(), row["step"])


def staple_food(name: str) -> str:
    """The food that is bought where none of the class is on the table."""
    return str(next(row["staple"] for row in rows("amounts", "class") if row["id"] == name))


def _portion(line: FoodLine, row: Row, meal: str, sharing: int, evening: Evening) -> Portion:
    each = amount(row[meal]).typical / sharing
    total = each * evening.guests * _reserve()
    left = 0.0 if line.brought else max(0.0, total - (line.grams or 0.0))
    return Portion(line.label, row["label"], round(each, 1), round(total), _stepped(left, row["step"]))


def _reserve() -> float:
    return fact("amounts", "food", "reserve").typical


def _stepped(grams: float, step: float) -> float:
    return ceil(grams / step - HAIR) * step
