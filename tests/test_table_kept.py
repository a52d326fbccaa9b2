"""What is only asked leaves the table as it was laid."""

from __future__ import annotations

import pytest

from assistant.session import Session
from tests.tables import mains

WINES = ("wine/gavi", "wine/barbera-d-asti", "wine/chianti-classico")
FOODS = ["food/olives", "food/lamb", "food/gorgonzola", "food/tiramisu"]


@pytest.fixture
def table(conversation: Session) -> Session:
    """Three wines and four foods."""
    conversation.ask("the wines are gavi, barbera d'asti and chianti classico")
    conversation.ask("the food is olives, roast lamb, gorgonzola and tiramisu")
    return conversation


@pytest.mark.parametrize(
    "asked",
    [
        "what have i got",
        "whats on the table",
        "what are we pouring",
        "have i got everything",
        "a handout for the table?",
        "where did my other wines go",
        "hang on wheres my gavi gone",
        "is the gorgonzola too salty on this board",
    ],
)
@pytest.mark.parametrize("before", ["and the barbera with the lamb?", "one wine for everything?"])
def test_who_looks_at_the_table_changes_nothing(table: Session, before: str, asked: str) -> None:
    laid = table.tonight
    assert laid.wines[0] == WINES[0]
    table.ask(before)
    table.ask(asked)
    assert table.tonight.wines == laid.wines
    assert table.tonight.dishes == laid.dishes


def test_wines_that_are_missed_are_told(table: Session) -> None:
    table.ask("what goes with gorgonzola")
    for asked in ("where did my other wines go", "hang on wheres my gavi gone"):
        assert "Gavi" in table.ask(asked).say
        assert "Chianti Classico" in table.ask(asked).say


def test_what_stands_comes_to_the_table_where_that_is_said(conversation: Session) -> None:
    conversation.ask("does malbec go with brie")
    conversation.ask("put those on the table")
    assert conversation.tonight.wines == ("wine/malbec",)
    assert mains(conversation) == ["food/brie"]
