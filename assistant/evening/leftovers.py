"""What each food holds that guests may not take, and how long what is left of it keeps."""

from __future__ import annotations

from typing import Any

from assistant.answers.wording import span
from assistant.evening.facts import Row, amount, rows, wording
from assistant.evening.records import Evening, FoodLine
from assistant.knowledge.diets import allergens, lineage
from assistant.knowledge.store import Knowledge


def food_facts(evening: Evening, knowledge: Knowledge) -> list[dict[str, Any]]:
    """Per food, in the file's order: `allergens_present`, `allergens_unknown` (labels) and `storage`."""
    return [
        {"food": line.label, **allergens_of(_foods(line), knowledge), "storage": storage(line, knowledge)}
        for line in evening.foods
    ]


def allergens_of(foods: list[str], knowledge: Knowledge) -> dict[str, list[str]]:
    """The labels of what foods eaten together contain and may contain."""
    found = [_of_food(food, knowledge) for food in foods]
    present = sorted({name for has, _ in found for name in has})
    unknown = sorted({name for _, may in found for name in may}.difference(present))
    return {"allergens_present": present, "allergens_unknown": unknown}


def _of_food(food: str, knowledge: Knowledge) -> tuple[set[str], set[str]]:
    """Of a kind, what all of its members contain is in it, and what some contain may be."""
    members = knowledge.members(food) if food.startswith("kind/") else []
    found = [allergens(member, knowledge) for member in members or [food]]
    always = set.intersection(*(set(has) for has, _ in found))
    return always, {name for has, may in found for name in (*has, *may)} - always


def storage(line: FoodLine, knowledge: Knowledge) -> str | None:
    """How and how long it keeps, by its part that keeps least; None where nothing is known."""
    found = [row for food in _foods(line) for row in [_row(food, knowledge)] if row]
    if not found:
        return None
    row = min(found, key=lambda row: amount(row["days"]).typical)
    days = amount(row["days"])
    return wording()("text", "storage", how=row["how"], days=span(days.low, days.high))


def _row(food: str, knowledge: Knowledge) -> Row | None:
    kinds = {kind.removeprefix("kind/") for kind in lineage(food, knowledge)}
    return next((row for row in rows("storage", "keeps") if kinds & set(row["kinds"])), None)


def _foods(line: FoodLine) -> list[str]:
    return [part.food for dish in line.dishes for part in dish.parts]
