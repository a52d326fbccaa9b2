"""What a dish of the table holds besides is told and kept, and each guest with a need hears of it at once."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from assistant.session import Session
from tests.tables import mains, poured

FOODS = ["food/coronation-chicken", "food/fruit-tart", "food/quiche", "food/salmon"]


@pytest.fixture
def table(session: Session) -> Iterator[Session]:
    """A cold buffet, and a guest who may have no nuts."""
    with poured(session, "wine/cava"):
        session.ask("on the table: coronation chicken, fruit tart, quiche, poached salmon; Cava")
        session.ask("Priya is allergic to nuts")
        yield session


@pytest.mark.parametrize(
    ("told", "dish"),
    [
        ("theres flaked almonds on the coronation chicken", "coronation chicken with almond"),
        ("there are walnuts in the quiche", "quiche with walnut"),
        ("the quiche has walnuts in it", "quiche with walnut"),
        ("the fruit tart is made with ground almonds", "fruit tart with almond"),
        ("the quiche comes with pesto", "quiche with pesto"),
    ],
)
def test_it_is_put_on_the_dish_and_told_to_whom_it_hurts(table: Session, told: str, dish: str) -> None:
    answer = table.ask(told)
    assert answer.text.startswith(f"Not for Priya: {dish}.")
    assert mains(table) == FOODS
    assert table.tonight.wines == ("wine/cava",)
    assert f"Not for Priya: {dish}" in table.ask("what can Priya eat").text


def test_the_same_on_a_second_dish_is_told_again(table: Session) -> None:
    table.ask("there are almonds in the quiche")
    assert table.ask("the salmon has almonds on it").text.startswith(
        "Not for Priya: poached salmon with almond."
    )


@pytest.mark.parametrize(
    "asked", ["are there walnuts in the quiche?", "what goes with quiche with bacon in it"]
)
def test_what_is_asked_puts_nothing_on(table: Session, asked: str) -> None:
    before = table.tonight.dishes
    table.ask(asked)
    assert table.tonight.dishes == before


def test_a_dish_called_short_is_looked_at_as_it_is(table: Session) -> None:
    table.ask("theres flaked almonds on the coronation chicken")
    assert table.ask("can Priya have the chicken").say == "Not for Priya: coronation chicken with almond."


def test_bakery_and_what_is_often_strewn_with_nuts_is_asked_about(table: Session) -> None:
    text = table.ask("what can Priya eat").text
    assert "Ask or read the label first for Priya: coronation chicken and fruit tart." in text
