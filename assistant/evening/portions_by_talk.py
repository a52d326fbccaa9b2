"""How much of a food of the table is needed, asked by itself: the same grams as in the plan."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.answers.context import Context
from assistant.answers.wording import listed
from assistant.evening.by_talk import evening_of
from assistant.evening.portions import Portion, portions
from assistant.pairing.dish import Dish


@dataclass(frozen=True, slots=True)
class Planned:
    """Among how many foods a class is shared on the table, and the sentence that tells the plan's grams."""

    sharing: int
    name: str
    fields: dict[str, str]


def planned(context: Context) -> dict[str, Planned]:
    """What the plan has of each dish named that is on the table, or of all of the kind named; by food."""
    rows = portions(evening_of(context), context.knowledge)
    found = {dish.main.food: _planned(dish, rows, context) for dish in context.frame.dishes}
    return {food: one for food, one in found.items() if one}


def _planned(dish: Dish, rows: list[Portion], context: Context) -> Planned | None:
    food, laid = dish.main.food, context.tonight.dishes
    same = [one for one in laid if one.main.food == food]
    kind = [one for one in laid if food in context.knowledge.broader(one.main.food)]
    labels = {context.one_dish(one) for one in same or kind}
    meant = [row for row in rows if row.food in labels]
    if not meant:
        return None
    beside = [row.food for row in rows if _alike(row, meant[0]) and (row not in meant or not same)]
    grams = sum(row.to_buy or row.needed for row in meant)
    name = ("plan-shared" if same else "plan-kind") if beside else "plan"
    return Planned(
        len(beside) + 1 if same else 1, f"food-{name}", {"grams": f"{grams:g}", "others": listed(beside)}
    )


def _alike(row: Portion, other: Portion) -> bool:
    """Whether two foods share what a guest eats of their class."""
    return row.share == other.share and row.per_guest == other.per_guest
