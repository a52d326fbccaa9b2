"""Foods and wines that come off the table, one by one, by kind or all of them, and come back."""

from __future__ import annotations

import pytest

from assistant.session import Session
from tests.tables import mains

BOARD = ["food/brie", "food/comte", "food/stilton", "food/walnut", "food/sourdough-bread"]


@pytest.fixture
def board(conversation: Session) -> Session:
    """Three cheeses, nuts and bread, and two wines."""
    conversation.ask("the board is brie, comte, stilton, walnuts and sourdough")
    conversation.ask("the wines are gavi and malbec")
    return conversation


def test_the_board_is_there(board: Session) -> None:
    assert mains(board) == BOARD


@pytest.mark.parametrize(
    ("typed", "left"),
    [
        ("remove the brie, the walnuts and the sourdough", BOARD[1:3]),
        ("remove brie, comte, stilton, feta and the caprese", BOARD[3:]),
        ("take the cheeses off", BOARD[3:]),
        ("remove cheese from the table", BOARD[3:]),
        ("put the walnuts away", [*BOARD[:3], BOARD[4]]),
        ("get rid of the nuts", [*BOARD[:3], BOARD[4]]),
        ("no, i never said stilton", [*BOARD[:2], *BOARD[3:]]),
        ("drop the brie and the stilton, I only have comte", [BOARD[1], *BOARD[3:]]),
        ("clear the food", []),
        ("no no, I never said stilton. clear the food", []),
        ("remove all the dishes please", []),
    ],
)
def test_all_that_is_named_goes_and_nothing_else(board: Session, typed: str, left: list[str]) -> None:
    answer = board.ask(typed)
    assert answer.intent == "set-table"
    assert mains(board) == left
    assert len(board.tonight.wines) == 2
    assert answer.say.startswith("Off the table: ")


def test_what_goes_with_its_kind_is_named(board: Session) -> None:
    assert board.ask("remove cheese from the table").say == "Off the table: Brie, Comté and Stilton."


@pytest.mark.parametrize("typed", ["the olives are gone now", "put the olives away"])
def test_what_is_not_there_is_not_put_there(board: Session, typed: str) -> None:
    assert "nothing to take off" in board.ask(typed).say
    assert mains(board) == BOARD


def test_nothing_is_laid_by_taking_off(conversation: Session) -> None:
    conversation.ask("remove the olives from the table")
    assert not conversation.tonight.dishes


@pytest.mark.parametrize("typed", ["clear the wines", "remove all the bottles"])
def test_the_wines_go_and_the_food_stays(board: Session, typed: str) -> None:
    board.ask(typed)
    assert board.tonight.wines == ()
    assert mains(board) == BOARD


def test_the_whole_table_is_cleared_and_taken_back(board: Session) -> None:
    assert "Nothing is on the table" in board.ask("clear the table").text
    assert board.tonight.dishes == board.tonight.wines == ()
    board.ask("undo")
    assert mains(board) == BOARD


@pytest.mark.parametrize(
    ("typed", "comes"),
    [
        ("put the cheeses back: brie, comte, stilton", BOARD[:3]),
        ("put brie, comte and stilton back", BOARD[:3]),
        ("add brie, manchego and olives to the board", ["food/brie", "food/manchego", "food/mixed-olives"]),
    ],
)
def test_all_that_is_put_back_or_added_is_there(board: Session, typed: str, comes: list[str]) -> None:
    board.ask("remove cheese from the table")
    board.ask("and what about the walnuts?")
    board.ask(typed)
    assert mains(board) == [*BOARD[3:], *comes]


@pytest.mark.parametrize("typed", ["add olives", "add some olives and honey", "put olives out too"])
def test_what_is_added_while_the_table_stands_comes_to_it(board: Session, typed: str) -> None:
    board.ask(typed)
    assert mains(board)[: len(BOARD) + 1] == [*BOARD, "food/mixed-olives"]


def test_what_is_added_to_a_dish_changes_only_what_is_asked(board: Session) -> None:
    board.ask("what goes with the brie")
    assert board.ask("add honey").intent in ("what-if", "wines-for-food")  # either tells of the Brie with it
    assert board.talk is not None
    (asked,) = board.talk.frame.dishes
    assert [part.food for part in asked.parts] == ["food/brie", "food/honey"]
    assert mains(board) == BOARD


LIST = "cheeses: brie, comte, gouda. plus fig chutney, walnuts and sourdough"


@pytest.mark.parametrize(
    "typed",
    ["the chutney isnt with the gouda its on its own", "the gouda is with fig chutney? no, seperately"],
)
@pytest.mark.parametrize(
    "board", [LIST, "on the board: brie, gouda with fig chutney, olives", "board: brie, gouda and chutney"]
)
def test_a_chutney_lies_apart_where_that_is_said(conversation: Session, board: str, typed: str) -> None:
    conversation.ask(board)
    conversation.ask(typed)
    assert all(len(dish.parts) == 1 for dish in conversation.tonight.dishes)
    assert mains(conversation).count("food/fruit-chutney") == 1
    assert mains(conversation).count("food/gouda") == 1


def test_a_part_that_comes_off_is_named(conversation: Session) -> None:
    conversation.ask("on the board tonight: gouda with honey, brie")
    assert conversation.ask("remove the honey").say == "Off the table: honey."
    assert mains(conversation) == ["food/gouda", "food/brie"]
    assert len(conversation.tonight.dishes[0].parts) == 1


@pytest.mark.parametrize(
    ("typed", "left"),
    [
        ("drop the chardonnay", ("wine/gavi", "wine/malbec")),
        ("the chardonnay isn't on the table", ("wine/gavi", "wine/malbec")),
        ("not the chardonnay, we don't have that", ("wine/gavi", "wine/malbec")),
        ("get rid of the malbec and the chardonnay", ("wine/gavi",)),
    ],
)
def test_wines_come_off_by_the_name_they_are_called(
    board: Session, typed: str, left: tuple[str, ...]
) -> None:
    board.ask("the wines are gavi, unoaked chardonnay and malbec")
    board.ask(typed)
    assert (board.tonight.wines, mains(board)) == (left, BOARD)


def test_a_wine_that_is_not_there_takes_nothing_off(board: Session) -> None:
    board.ask("drop the champagne")
    assert board.tonight.wines == ("wine/gavi", "wine/malbec")


SALSA = "food/chips-and-salsa"


@pytest.mark.parametrize(
    ("typed", "left"),
    [
        ("nobody brought walnuts, just chips and salsa", [*BOARD[:3], BOARD[4], SALSA]),
        ("nobody brought the walnuts or the sourdough, only figs", [*BOARD[:3], "food/fig"]),
        ("jen didn't bring the walnuts", [*BOARD[:3], BOARD[4]]),
        ("the walnuts never showed up", [*BOARD[:3], BOARD[4]]),
        ("we don't have any brie", BOARD[1:]),
    ],
)
def test_what_nobody_brought_is_not_there(board: Session, typed: str, left: list[str]) -> None:
    assert board.ask(typed).intent == "set-table"
    assert mains(board) == left
    assert not board.tonight.needs


def test_what_may_come_yet_stays(board: Session) -> None:
    board.ask("nobody brought the walnuts yet")
    assert mains(board) == BOARD


def test_a_wine_that_is_dumped_goes_and_nothing_comes_for_it(board: Session) -> None:
    board.ask("dump the malbec it turned out to be grape juice")
    assert board.tonight.wines == ("wine/gavi",)


def test_a_wine_that_is_another_drink_stands_there_as_that(board: Session) -> None:
    board.ask("the malbec turned out to be grape juice")
    assert board.tonight.wines == ("wine/gavi", "drink/white-grape-juice")


@pytest.mark.parametrize("typed", ["take the walnuts off", "no walnuts, take the walnuts off"])
def test_an_order_of_the_host_is_no_question_of_health(board: Session, typed: str) -> None:
    answer = board.ask(typed)
    assert answer.say == "Off the table: walnut."
    assert "shared knife" not in answer.text
    assert mains(board) == [*BOARD[:3], BOARD[4]]


def test_what_lay_beside_is_told_where_somebody_has_an_allergy(board: Session) -> None:
    board.ask("ben is allergic to nuts")
    assert "shared knife" in board.ask("take the walnuts off").text
    assert mains(board) == [*BOARD[:3], BOARD[4]]


def test_what_is_asked_of_a_plate_stays_a_question_of_health(board: Session) -> None:
    assert board.ask("can I just take the walnuts off for ben").intent == "safety"
    assert mains(board) == BOARD
