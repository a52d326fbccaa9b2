"""What a host asks while everybody waits: when to chill, the clock, what to pour; a dinner that is late."""

from __future__ import annotations

import pytest

from assistant.session import Session

TOLD = (
    "14 people, dinner at 6 saturday",
    "the table: turkey, stuffing, pecan pie, chips and salsa",
    "the wines are cava, pinot noir and chardonnay",
)


@pytest.fixture
def table(conversation: Session) -> Session:
    for line in TOLD:
        conversation.ask(line)
    return conversation


@pytest.mark.parametrize(
    "typed",
    ["what should I chill and when", "which wines go in the fridge and when", "when do I chill the wines"],
)
def test_all_wines_are_told_by_when_they_go_into_the_fridge(table: Session, typed: str) -> None:
    answer = table.ask(typed)
    assert answer.say == "Into the fridge, so that each is cold when it is poured:"
    rows = [line.split()[:2] for line in answer.text.splitlines()[1:4]]
    assert [wine.rstrip(":") for _, wine in rows] == ["Cava", "Chardonnay", "Pinot"]
    assert [at for at, _ in rows] == sorted(at for at, _ in rows)


def test_without_a_start_the_minutes_are_told(conversation: Session) -> None:
    conversation.ask("the wines are cava, pinot noir and chardonnay")
    text = conversation.ask("what should I chill").text
    assert "Cava: 178 min in the fridge" in text
    assert "No sparkling bottle goes into the freezer" in text


def test_the_clock_is_given_where_the_start_is_told_beside_it(table: Session) -> None:
    answer = table.ask("give me the clock, dinner is at 7 saturday")
    assert answer.text.startswith("Clock")
    assert "19:00  welcome" in answer.text


def test_a_sheet_for_the_guests(table: Session) -> None:
    assert "--handout" in table.ask("print me something for the guests").text


@pytest.mark.parametrize(
    "typed",
    [
        "what do I pour while they wait",
        "something to drink before dinner",
        "what do we open until it's ready",
    ],
)
def test_while_they_wait_the_opener_is_poured_with_a_nibble(table: Session, typed: str) -> None:
    assert table.ask(typed).say == "Open the Cava, with chips and salsa."
    assert table.ask("and something to nibble with it?").say == "With Cava, chips and salsa."


@pytest.mark.parametrize(
    "typed",
    [
        "the oven is running forty minutes late",
        "the turkey won't be ready for another 40 minutes",
        "dinner will be 40 minutes late",
    ],
)
def test_a_late_dinner_leaves_no_wine_out(table: Session, typed: str) -> None:
    answer = table.ask(typed)
    assert answer.say == "Leave nothing out: the food is late, so there are 40 min more to pour."
    assert "Cava first, with chips and salsa." in answer.text
    assert "comes late" not in answer.text


@pytest.mark.parametrize("typed", ["the oven's running late, what do I do", "the turkey isn't done yet"])
def test_where_nobody_says_how_late_no_minutes_are_told(table: Session, typed: str) -> None:
    assert table.ask(typed).say == "Leave nothing out: the food is late, so there is more time to pour."


def test_a_tasting_that_runs_late_is_still_cut(table: Session) -> None:
    assert "Leave out" in table.ask("we're running forty minutes late").say
