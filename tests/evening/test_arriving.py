"""When one guest arrives is no need and not the start of the evening: it is noted, and a plate kept."""

from __future__ import annotations

from datetime import time

import pytest

from assistant.language.arriving import without_arrivals
from assistant.language.guests import Asked, all_told
from assistant.session import Session

LAID = ("eight guests on saturday", "foods: olives, manchego, croquetas", "wines: fino, rioja, cava")


@pytest.fixture
def table(conversation: Session) -> Session:
    for line in LAID:
        conversation.ask(line)
    return conversation


@pytest.mark.parametrize(
    "typed",
    [
        "Lucy is vegetarian but she comes late, around nine",
        "Lucy is vegetarian and arrives at nine",
        "Lucy is vegetarian, she won't be here before half eight",
        "Lucy comes late and is vegetarian",
        "Lucy is vegetarian but will be late",
    ],
)
def test_the_need_is_told_alone(typed: str) -> None:
    told = all_told(typed)
    assert told.asked == (Asked("Lucy", "vegetarian"),)
    assert not told.unread


@pytest.mark.parametrize(
    "typed",
    ["raj is here now hes veggie", "raj is here, he's veggie", "raj's here now and he's veggie"],
)
def test_who_is_here_now_is_told_of_by_the_need_alone(typed: str) -> None:
    assert all_told(typed).asked == (Asked("Raj", "veggie"),)


@pytest.mark.parametrize("typed", ["everyone arrives at 7", "the guests arrive at 7", "we come at eight"])
def test_all_who_arrive_are_no_one_guest(typed: str) -> None:
    assert without_arrivals(typed) == typed


@pytest.mark.parametrize(
    "typed",
    [
        "lucy comes at nine, we start at half seven",
        "no lucy arrives at nine, the rest of us at half past seven",
        "we start at 7.30, Lucy arrives at 9",
    ],
)
def test_the_start_is_that_of_all(table: Session, typed: str) -> None:
    answer = table.ask(typed)
    assert table.tonight.start is not None
    assert table.tonight.start.time() == time(19, 30)
    assert table.tonight.late == (("Lucy", time(21)),)
    assert answer.text.startswith("Noted: Saturday")
    assert "Lucy comes at 21:00: keep back a plate" in answer.text


def test_one_who_comes_late_does_not_move_the_start(table: Session) -> None:
    table.ask("we start at seven")
    answer = table.ask("lucy gets here at nine")
    assert table.tonight.start is not None
    assert table.tonight.start.time() == time(19)
    assert answer.text == "Lucy comes at 21:00: keep back a plate and a glass of what is poured before."
    assert "Lucy comes at 21:00" in table.ask("plan it").text


def test_it_is_kept_beside_the_need(table: Session) -> None:
    answer = table.ask("Lucy is vegetarian but she comes late, around nine")
    assert answer.text.startswith("Noted for Lucy: vegetarian.")
    assert "Lucy comes at 21:00" in answer.text
    assert table.tonight.start is None
