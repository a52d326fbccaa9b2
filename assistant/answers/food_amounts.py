"""How many grams of a food are needed: as the plan of the table has it, else a head and for so many."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from assistant.answers.context import Context
from assistant.evening.facts import Row, amount, rows
from assistant.evening.hot import hot_row
from assistant.evening.portions import class_of
from assistant.knowledge.concepts import Amount
from assistant.language.quantities import Quantities
from assistant.pairing.dish import Dish

if TYPE_CHECKING:
    from assistant.evening.portions_by_talk import Planned

# The spoken line, the figures with their units, and what is printed below.
Built = tuple[str, dict[str, tuple[float, str]], list[str]]


def food_amounts(context: Context, counted: Quantities) -> Built:
    """Grams of each food named: for a guest, and for all where their number is said.

    Foods of a class share what a guest eats of the class, as in a plan; what is on the table shares it with
    the others there, and the grams of its plan are told too.
    """
    figures: dict[str, tuple[float, str]] = {}
    lines = []
    classes = [_class(dish, context) for dish in context.frame.dishes]
    planned = _planned(context, counted)
    for dish, row in zip(context.frame.dishes, classes, strict=True):
        food, sharing = dish.main.food, sum(other["id"] == row["id"] for other in classes)
        plan = planned.get(food)
        sharing = plan.sharing if plan else sharing
        factor = context.corrections.get(row["id"], 1.0)
        tasting, supper = (scaled(amount(row[meal]), factor / sharing) for meal in ("tasting", "supper"))
        total = (supper if context.tonight.meal else tasting).typical * (counted.people or 1.0)
        figures[f"grams_{context.knowledge.label(food)}"] = (round(total), "g")
        lines.append(_food_line(context, food, tasting, supper, counted.people))
        lines += [told(context, plan.name, **plan.fields)] if plan else []
        book = round(amount(row["tasting"]).typical / sharing)
        lines += [told(context, "corrected", new=tasting.typical, old=book)] if factor != 1.0 else []
    return lines[0], figures, lines[1:]


def _class(dish: Dish, context: Context) -> Row:
    """The class of a dish: of a lasagne that of dishes, whatever it is made of."""
    row = hot_row(dish, context.knowledge)
    return (
        rows("amounts", "class")[-1] if row and "main" in row else class_of(dish.main.food, context.knowledge)
    )


def _planned(context: Context, counted: Quantities) -> Mapping[str, Planned]:
    """What the plan of the table has of each food that is named, for as many guests; by food."""
    from assistant.evening.portions_by_talk import planned  # loaded late: an evening needs so much

    guests = context.tonight.guests
    return planned(context) if guests and counted.people == guests else {}


def scaled(grams: Amount, factor: float) -> Amount:
    """An amount times a factor."""
    low, typical, high = (round(value * factor) for value in (grams.low, grams.typical, grams.high))
    return replace(grams, low=low, typical=typical, high=high) if factor != 1.0 else grams


def _food_line(context: Context, food: str, tasting: Amount, supper: Amount, people: float | None) -> str:
    heads = people or 1.0
    return told(
        context,
        ("food-all" if people else "food-each") + ("-supper" if context.tonight.meal else ""),
        food=context.knowledge.label(food),
        low=tasting.low,
        high=tasting.high,
        grams=tasting.typical * heads,
        supper=supper.typical * heads,
        people=heads,
    )


def told(context: Context, name: str, **fields: Any) -> str:
    """A sentence of this name, its numbers without needless places."""
    shown = {
        key: value if isinstance(value, str) else f"{round(value, 1):g}" for key, value in fields.items()
    }
    return context.wording("quantity", name, **shown)
