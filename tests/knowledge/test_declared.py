"""A composed dish declares whatever its parts hold: the safety answer reads the dish's own list."""

from __future__ import annotations

import pytest

from assistant.knowledge.diets import DEPENDS, contents
from assistant.knowledge.store import Knowledge, shipped

KNOWLEDGE = shipped()
COMPOSED = [food for food in KNOWLEDGE.of_type("Food") if KNOWLEDGE.entry(food).get("part")]


def declared(food: str, knowledge: Knowledge) -> tuple[set[str], set[str]]:
    """What is in it, and what is or may be in it: allergens and care marks."""
    entry = knowledge.entry(food)
    care = set(entry.get("care", ()))
    has = set(entry.get("allergen", ())) | {mark for mark in care if not mark.endswith(DEPENDS)}
    may = set(entry.get("mayContain", ())) | {mark.removesuffix(DEPENDS) for mark in care}
    return has, has | may


def test_there_are_many_composed_dishes() -> None:
    assert len(COMPOSED) > 300


@pytest.mark.parametrize("dish", COMPOSED)
def test_a_dish_declares_the_allergens_of_its_parts(dish: str) -> None:
    has, may = declared(dish, KNOWLEDGE)
    for part in contents(dish, KNOWLEDGE)[1:]:
        part_has, part_may = declared(part, KNOWLEDGE)
        allergens = {mark for mark in part_may if mark.startswith("allergen/")}
        assert allergens <= may, f"{part} may hold {sorted(allergens - may)}"
        certain = allergens & part_has
        assert certain <= has, f"{part} holds {sorted(certain - has)}"
