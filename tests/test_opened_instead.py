"""A bottle opened in the place of another stands there on the table."""

from __future__ import annotations

import pytest

from assistant.session import Session

POURED = ("wine/champagne", "wine/pinot-noir", "wine/tawny-port")


@pytest.fixture
def table(conversation: Session) -> Session:
    """Three wines and two foods."""
    conversation.ask("wines: champagne, pinot noir, tawny port")
    conversation.ask("board: brie, dark chocolate")
    return conversation


@pytest.mark.parametrize(
    ("typed", "wines"),
    [
        ("they don't have tawny, we opened a ruby by mistake", (*POURED[:2], "wine/ruby-port")),
        ("we opened a merlot instead of the pinot", (POURED[0], "wine/merlot", POURED[2])),
        ("no pinot, so I got a malbec", (POURED[0], "wine/malbec", POURED[2])),
        ("he accidentally opened the cava", (*POURED, "wine/cava")),
    ],
)
def test_it_is_poured_from_then_on(table: Session, typed: str, wines: tuple[str, ...]) -> None:
    assert table.ask(typed).intent == "set-table"
    assert table.tonight.wines == wines
    assert [dish.main.food for dish in table.tonight.dishes] == ["food/brie", "food/dark-chocolate-70"]


def test_the_chocolate_goes_with_the_bottle_that_is_there(table: Session) -> None:
    table.ask("they don't have tawny, we opened a ruby by mistake")
    assert table.ask("what goes with the chocolate now").picks[0].id == "wine/ruby-port"


@pytest.mark.parametrize("typed", ["what if we opened a merlot instead of the pinot?", "we don't have time"])
def test_nothing_is_opened_by_a_question_or_another_want(table: Session, typed: str) -> None:
    table.ask(typed)
    assert table.tonight.wines == POURED
