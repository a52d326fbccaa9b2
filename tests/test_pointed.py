"""What is pointed back at: the other cheese, the two whites, the second best, the third of a list."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture
def table(conversation: Session) -> Session:
    """Three wines and five foods; a wine was just asked for with the brisket."""
    conversation.ask("wines: provence rosé, zinfandel, sauvignon blanc, champagne")
    conversation.ask("board: brisket, pickles, manchego, gouda, brie")
    conversation.ask("which wine with the brisket")
    return conversation


def _foods(session: Session) -> list[str]:
    return [dish.main.food for dish in session.talk.frame.dishes] if session.talk else []


def test_the_other_cheese_is_one_not_asked_about_yet(table: Session) -> None:
    table.ask("manchego?")
    table.ask("and the other cheese")
    assert _foods(table) == ["food/gouda"]
    table.ask("and the other cheese?")
    assert _foods(table) == ["food/brie"]


def test_that_red_is_the_one_just_told(table: Session) -> None:
    table.ask("that red with the manchego")
    frame = table.talk.frame if table.talk else None
    assert frame is not None
    assert frame.wines == ("wine/zinfandel",)


@pytest.mark.parametrize(("typed", "at"), [("and the second best?", 1), ("no the third one", 2)])
def test_a_place_in_the_list_just_told(table: Session, typed: str, at: int) -> None:
    listed = [item.id for item in table.ask("which wine with the brisket").picks]
    assert table.ask(typed).intent == "judge-pair"
    assert table.talk is not None
    assert table.talk.frame.wines == (listed[at],)


def test_the_two_whites_are_those_of_the_table(table: Session) -> None:
    answer = table.ask("what's the difference between the two whites")
    assert answer.intent == "compare"
    assert "Champagne" in answer.say
    assert "Sauvignon Blanc" in answer.text


def test_which_of_two_cheeses_is_compared(conversation: Session) -> None:
    conversation.ask("wines: zinfandel, champagne")
    conversation.ask("board: brie, aged cheddar, pickles")
    answer = conversation.ask("which of the two cheeses for the zin")
    assert answer.say == "Aged cheddar, the better of the two here."
