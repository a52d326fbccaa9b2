"""Another thing was meant: the question before is asked of that, whatever it was."""

from __future__ import annotations

import pytest

from assistant.session import Session

BLUE, BRISKET = "kind/blue-cheese", "food/barbecue-brisket"
WINES = "wines: champagne, sauvignon blanc, provence rosé, pinot noir, zinfandel, tawny port"
BOARD = "board: brie, aged cheddar, blue cheese, pickles, smoked brisket, spiced nuts, dark chocolate"


@pytest.fixture
def table(conversation: Session) -> Session:
    """Six wines and seven foods."""
    conversation.ask(WINES)
    conversation.ask(BOARD)
    return conversation


def _stands(session: Session) -> tuple[list[str], list[str]]:
    frame = session.talk.frame if session.talk else None
    return ([dish.main.food for dish in frame.dishes], list(frame.wines)) if frame else ([], [])


@pytest.mark.parametrize(
    ("typed", "food"),
    [
        ("not the cheddar, the blue one", BLUE),
        ("the blue, not the cheddar", BLUE),
        ("no the brisket", BRISKET),
        ("oh sorry, I meant with the brisket", BRISKET),
        ("I didn't say cheddar, I said brisket", BRISKET),
        ("brisket i meant", BRISKET),
    ],
)
def test_another_food_was_meant(table: Session, typed: str, food: str) -> None:
    table.ask("which red with the aged cheddar")
    assert table.ask(typed).intent == "wines-for-food"
    assert _stands(table) == ([food], [])


@pytest.mark.parametrize("typed", ["no I said the sauvignon", "nah, the sauvignon", "sauvignon I said"])
def test_another_wine_was_meant(table: Session, typed: str) -> None:
    table.ask("the rosé with the brisket?")
    assert table.ask(typed).intent == "judge-pair"
    assert _stands(table) == ([BRISKET], ["wine/sauvignon-blanc"])


@pytest.mark.parametrize(
    ("first", "typed", "said"),
    [
        ("how cold for the port", "sorry I meant the champagne", "Champagne: 8 to 10 °C"),
        ("how much brie for 8", "no the cheddar", "cheddar: about 600 g"),
        ("it smells of eggs", "no more like vinegar", "if it stings, open another"),
        ("it smells of eggs", "not eggs, wet dog", "Corked"),
    ],
)
def test_what_was_asked_is_asked_of_what_was_meant(table: Session, first: str, typed: str, said: str) -> None:
    table.ask(first)
    assert said in table.ask(typed).say


def test_what_was_put_on_the_table_goes_for_what_was_meant(table: Session) -> None:
    table.ask("we also have a merlot on the table")
    table.ask("no, a malbec")
    assert "wine/malbec" in table.tonight.wines
    assert "wine/merlot" not in table.tonight.wines


@pytest.mark.parametrize("typed", ["no red", "no thanks", "no brisket", "no the brisket is gone"])
def test_who_refuses_something_else_puts_nothing_right(table: Session, typed: str) -> None:
    table.ask("which wine with the brie")
    table.ask(typed)
    assert _stands(table)[0] != [BRISKET]
