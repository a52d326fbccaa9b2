"""What each food holds that guests may not take, and how long what is left of it keeps."""

from __future__ import annotations

from typing import Any

from assistant.answers.wording import span
from assistant.evening.facts import Row, amount, rows, wording
from assistant.evening.records import Evening, FoodLine
from assistant.evening.tasting import rests
from assistant.knowledge.concepts import Amount
from assistant.knowledge.diets import allergens, lineage
from assistant.knowledge.store import Knowledge
from assistant.pairing.engine import Engine


def food_facts(evening: Evening, engine: Engine) -> list[dict[str, Any]]:
    """Per food, in the file's order: `allergens_present`, `allergens_unknown` (labels), `storage`.

    `keeps_days`: from and to; `rests`: whether it is eaten between the others.
    """
    return [_facts(line, engine) for line in evening.foods]


def _facts(line: FoodLine, engine: Engine) -> dict[str, Any]:
    known = engine.knowledge
    days = keeps(line, known)
    found = {"storage": storage(line, known), "keeps_days": [days.low, days.high] if days else None}
    return {"food": line.label, **allergens_of(_foods(line), known), **found, "rests": rests(line, engine)}


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
    row = _least(line, knowledge)
    if row is None:
        return None
    days = amount(row["days"])
    return wording()("text", "storage", how=row["how"], days=span(days.low, days.high))


def keeps(line: FoodLine, knowledge: Knowledge) -> Amount | None:
    """Days it keeps, by its part that keeps least."""
    row = _least(line, knowledge)
    return amount(row["days"]) if row else None


def _least(line: FoodLine, knowledge: Knowledge) -> Row | None:
    found = [row for food in _foods(line) for row in [_row(food, knowledge)] if row]
    return min(found, key=lambda row: amount(row["days"]).typical, default=None)


def _row(food: str, knowledge: Knowledge) -> Row | None:
    kinds = {kind.removeprefix("kind/") for kind in lineage(food, knowledge)}
    return next((row for row in rows("storage", "keeps") if kinds & set(row["kinds"])), None)


def _foods(line: FoodLine) -> list[str]:
    return [part.food for dish in line.dishes for part in dish.parts]
