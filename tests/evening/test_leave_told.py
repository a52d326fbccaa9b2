"""A pharmacist's or doctor's word is noted as told and gives no leave; a drop of a wine is a measure."""

from __future__ import annotations

import pytest

from assistant.session import Session

TABLE = "wines: Soave, Chianti, off-dry Riesling. foods: Brie, salami"
MARK = "(as told, the pharmacist or doctor said yes)"


@pytest.fixture
def table(conversation: Session) -> Session:
    """A table with a guest who takes medicine."""
    conversation.ask(TABLE)
    conversation.ask("Sue is on blood pressure tablets")
    return conversation


@pytest.mark.parametrize(
    "typed",
    [
        "sue will have a drop of the riesling now, the chemist said its fine",
        "Sue's doctor says one small glass is ok",
        "Sue's pharmacist said she can have a little",
        "the doctor gave Sue the all clear for a glass",
        "Sue is having a drop of Riesling, her GP okayed it",
    ],
)
def test_the_word_is_noted_as_told(table: Session, typed: str) -> None:
    wines = table.tonight.wines
    answer = table.ask(typed)
    assert [one.need for one in table.tonight.needs] == [f"on blood pressure tablets {MARK}"]
    assert "Noted as told" in answer.text
    assert table.tonight.wines == wines
    assert "Sue may have" not in answer.text


def test_what_was_noted_gives_no_leave(table: Session) -> None:
    table.ask("the doctor gave Sue the all clear for a glass")
    assert "Not for Sue: off-dry Riesling." in table.ask("can Sue have the Riesling").text


@pytest.mark.parametrize(
    "typed",
    ["Sue's pharmacist said no wine", "did Sue's doctor say it is fine", "Sue has seen a doctor"],
)
def test_a_no_or_a_question_is_no_leave(table: Session, typed: str) -> None:
    table.ask(typed)
    assert not any(MARK in one.need for one in table.tonight.needs)


@pytest.mark.parametrize(
    "typed", ["Carol will have a drop of the Soave", "another drop of the Chianti for Tom", "just a wee drop"]
)
def test_a_drop_takes_nothing_off(table: Session, typed: str) -> None:
    wines = table.tonight.wines
    table.ask(typed)
    assert table.tonight.wines == wines


def test_what_is_dropped_comes_off(table: Session) -> None:
    table.ask("drop the Soave")
    assert "wine/soave" not in table.tonight.wines
