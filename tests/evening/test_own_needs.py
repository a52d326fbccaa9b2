"""Whoever speaks of an own need is a guest too: the table is looked at, and later questions heed it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from assistant.session import Session
from tests.tables import poured

BOARD = "Brie, salami, walnuts and pesto crostini on the board; Gavi and port"


@pytest.fixture
def table(session: Session) -> Iterator[Session]:
    """A board with nuts, one of them in a sauce."""
    with poured(session):
        session.ask(BOARD)
        yield session


@pytest.mark.parametrize(
    ("told", "need", "away"),
    [
        ("I'm allergic to nuts", "allergic to nuts", "walnut and crostini with pesto"),
        ("I’m allergic to nuts.", "allergic to nuts", "walnut and crostini with pesto"),
        ("sorry I'm vegetarian", "vegetarian", "salami"),
        ("I can't eat pork", "can't eat pork", "salami"),
        ("I've got a nut allergy", "a nut allergy", "walnut and crostini with pesto"),
        ("I have a really bad nut allergy", "a really bad nut allergy", "walnut and crostini with pesto"),
    ],
)
def test_an_own_need_is_noted_and_held_against_the_table(
    table: Session, told: str, need: str, away: str
) -> None:
    text = table.ask(told).text
    assert text.startswith(f"Noted for you: {need}.\nKeep away: ")
    assert away in text.splitlines()[1]


@pytest.mark.parametrize(
    "told",
    [
        "I'm not vegan",
        "I'm starving",
        "I don't eat much",
        "I hate sweet wine",
        "I have a vegan cheese too",
        "I've got gluten free crackers",
        "I have a nut roast for the vegans",
    ],
)
def test_what_is_no_need_is_not_noted(table: Session, told: str) -> None:
    table.ask(told)
    assert not table.tonight.needs


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        ("what can I have?", "Not for you: walnut and crostini with pesto."),
        ("can I have the crostini?", "Not for you: crostini with pesto."),
        ("is the brie ok for me?", "You may have: Brie."),
    ],
)
def test_later_questions_heed_it(table: Session, asked: str, says: str) -> None:
    table.ask("I'm allergic to nuts")
    assert table.ask(asked).say.startswith(says)


@pytest.mark.parametrize(
    "asked", ["what can you do", "what have I taught you", "what do you say to the brie"]
)
def test_you_is_whoever_answers(table: Session, asked: str) -> None:
    table.ask("I'm allergic to nuts")
    assert "Not for you" not in table.ask(asked).text


def test_nobody_is_meant_by_me_before_a_need_is_told(table: Session) -> None:
    assert table.ask("can I have the crostini?").intent != "set-table"
    assert "you" not in {need.guest for need in table.tonight.needs}


def test_a_dish_called_short_is_the_dish_of_the_table(table: Session) -> None:
    table.ask("Ann is allergic to nuts")
    assert table.ask("can Ann have the crostini?").say == "Not for Ann: crostini with pesto."


def test_without_a_table_the_caution_is_told(conversation: Session) -> None:
    assert conversation.ask("I'm pregnant").intent == "safety"
    assert not conversation.tonight.needs
