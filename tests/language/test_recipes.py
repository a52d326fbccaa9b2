"""A short name that stands for one sort of a dish, said of another sort."""

from __future__ import annotations

import pytest

from assistant.session import Session
from tests.language.conftest import Parse

SORTS = [
    ("spinach risotto", "food/spinach", "food/wild-mushrooms"),
    ("octopus taco", "food/octopus", "food/beef"),
    ("mutton rendang", "food/mutton", "food/beef"),
    ("trout bisque", "food/trout", "food/lobster"),
    ("what wine for turkey fajita", "food/turkey", "food/beef"),
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
    answer = session.ask("which wine with spinach risotto")
    assert "spinach, risotto" in answer.text
    assert "mushroom" not in answer.text


@pytest.mark.parametrize("named", ["parsnip", "chestnut", "crab", "beef"])
def test_a_soup_is_of_what_is_named_and_of_no_tomato(parse: Parse, named: str) -> None:
    (dish,) = parse(f"wine for {named} soup").dishes
    foods = {part.food for part in dish.parts}
    assert f"food/{named}" in foods
    assert not foods & {"food/tomato-sauce", "food/mixed-vegetables"}
