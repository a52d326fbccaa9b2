"""Diets: what is known to be in a food rules it out, what may be in it leaves it unknown."""

from __future__ import annotations

import pytest

from assistant.knowledge.diets import Fit, contents, fit
from assistant.knowledge.store import Knowledge, shipped


@pytest.fixture(scope="module")
def knowledge() -> Knowledge:
    """The shipped knowledge."""
    return shipped()


@pytest.mark.parametrize(
    ("food", "diet", "expected"),
    [
        ("food/hummus", "vegan", Fit.YES),
        ("food/brie", "vegan", Fit.NO),
        ("food/brie", "vegetarian", Fit.UNKNOWN),  # rennet depends on the maker
        ("food/parmesan", "vegetarian", Fit.NO),  # its rules ask for animal rennet
        ("food/spaghetti-carbonara", "no-pork", Fit.NO),
        ("food/spaghetti-carbonara", "no-gluten", Fit.NO),
        ("food/tiramisu", "no-alcohol", Fit.NO),
        ("food/salmon", "vegetarian", Fit.NO),
        ("food/almond", "no-nuts", Fit.NO),
        ("wine/malbec", "vegan", Fit.UNKNOWN),  # fining depends on the maker
        ("wine/malbec", "no-alcohol", Fit.NO),
        ("food/milk-chocolate", "no-milk", Fit.NO),
    ],
)
def test_fit(food: str, diet: str, expected: Fit, knowledge: Knowledge) -> None:
    assert fit(food, f"diet/{diet}", knowledge) is expected


def test_parts_count(knowledge: Knowledge) -> None:
    assert "food/pecorino-romano" in contents("food/spaghetti-carbonara", knowledge)


def test_no_meat_or_fish_is_vegetarian(knowledge: Knowledge) -> None:
    """Nothing of a kind of meat or seafood may pass, whatever its care marks say."""
    for kind in ("kind/meat", "kind/seafood"):
        passed = [f for f in knowledge.members(kind) if fit(f, "diet/vegetarian", knowledge) is not Fit.NO]
        assert not passed


def test_every_allergen_of_the_law_is_declared(knowledge: Knowledge) -> None:
    """Fourteen in the EU and the UK: Regulation (EU) 1169/2011, Annex II."""
    law = {
        "gluten", "crustaceans", "eggs", "fish", "peanuts", "soy", "milk", "nuts", "celery", "mustard",
        "sesame", "sulphites", "lupin", "molluscs",
    }  # fmt: skip
    assert {s.removeprefix("allergen/") for s in knowledge.digest if s.startswith("allergen/")} == law
