"""A short name that stands for one sort of a dish, said of another sort."""

from __future__ import annotations

import pytest

from assistant.session import Session
from tests.language.conftest import Parse

SORTS = [
    ("asparagus risotto", "food/asparagus", "food/wild-mushrooms"),
    ("prawn taco", "food/shrimp", "food/beef"),
    ("lamb rendang", "food/lamb", "food/beef"),
    ("salmon bisque", "food/salmon", "food/lobster"),
    ("what wine for chicken fajita", "food/chicken", "food/beef"),
    ("tofu curry", "food/tofu", "food/chicken"),
]
AS_SHIPPED = ["mushroom risotto", "beef taco", "pizza", "lentil soup", "risotto", "taco", "clam chowder"]


@pytest.mark.parametrize(("typed", "comes", "goes"), SORTS)
def test_what_the_dish_is_named_for_gives_way(parse: Parse, typed: str, comes: str, goes: str) -> None:
    (dish,) = parse(typed).dishes
    foods = {part.food for part in dish.parts}
    assert comes in foods
    assert goes not in foods
    assert len(foods) > 2


@pytest.mark.parametrize("typed", AS_SHIPPED)
def test_a_dish_of_the_shipped_sort_stays_whole(parse: Parse, typed: str) -> None:
    (dish,) = parse(typed).dishes
    assert len(dish.parts) == 1
    assert dish.called == ""


def test_the_answer_calls_it_what_it_is(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("which wine with asparagus risotto")
    assert "asparagus, risotto" in answer.text
    assert "mushroom" not in answer.text
