"""What a host asks of the whole table while the guests wait."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from assistant.evening.table import set_table
from assistant.knowledge.files import corpus_dir
from assistant.session import Session
from assistant.table.tonight import Tonight


@pytest.fixture
def table(session: Session) -> Iterator[Session]:
    """The demo evening on the table."""
    set_table(session, corpus_dir() / "evenings" / "quay-house.toml")
    session.new_conversation()
    yield session
    session.lay(Tonight())
    session.new_conversation()


@pytest.mark.parametrize(
    "asked", ["ok whats going with what", "does anything clash", "how do they all go together"]
)
def test_every_food_gets_its_wine(table: Session, asked: str) -> None:
    answer = table.ask(asked)
    assert answer.intent == "check-board"
    lines = answer.text.split("\n")
    assert len(lines) == 1 + len(table.tonight.dishes) > 1
    assert lines[1].startswith("Garlic cheddar: Malbec")


def test_a_clash_is_said_first(table: Session) -> None:
    table.ask("also on the board: oysters, dark chocolate")
    answer = table.ask("does anything clash")
    assert answer.say.startswith("Keep apart: ")
    assert answer.avoid
    assert {item.verdict for item in answer.avoid} <= {"poor", "clash"}


def test_without_a_table_it_is_not_understood(session: Session) -> None:
    session.new_conversation()
    assert not session.ask("does anything clash").understood


def test_one_for_a_food_asks_for_a_wine(table: Session) -> None:
    answer = table.ask("which one for the brie")
    assert answer.intent == "wines-for-food"
    assert answer.picks[0].id in table.tonight.wines


def test_the_garlic_one_is_the_food_on_the_table(table: Session) -> None:
    assert table.ask("what about the garlic one?").picks[0].label == "Malbec"


def test_more_guests_are_counted_and_only_supposed_ones_are_not(table: Session) -> None:
    assert table.ask("what if three more come").figures["pours"]["value"] == (15 - 2) * 4
    assert table.tonight.guests == 12
    assert table.ask("two more people are coming").figures["bottles"]["value"] == 2 * 4
    assert table.tonight.guests == 14


def test_a_ban_goes_on_and_a_kind_that_will_do_is_wanted(session: Session) -> None:
    session.new_conversation()
    for said in ("what goes with brie", "my sister hates red", "and white"):
        answer = session.ask(said)
    assert not {item.wine["colour"] for item in answer.picks if item.wine} & {"red", "white"}
    answer = session.ask("she's fine with pink")
    assert {item.wine["colour"] for item in answer.picks if item.wine} == {"rosé"}


@pytest.mark.parametrize(
    ("asked", "heading"),
    [("what do i pack", "To pack"), ("shopping list", "To buy"), ("when do i start what", "Clock")],
)
def test_a_part_of_the_plan_is_told_by_itself(table: Session, asked: str, heading: str) -> None:
    answer = table.ask(asked)
    assert answer.intent == "plan"
    assert answer.understood
    assert answer.text.split("\n")[0] == heading


def test_prices_that_are_not_known_are_not_added_up(session: Session) -> None:
    session.new_conversation()
    session.ask("got a Syrah and a Riesling, brie and salami, 8 people")
    answer = session.ask("what did it cost per head")
    assert not answer.understood
    assert "I know no prices yet" in answer.say


def test_a_part_of_no_plan_asks_for_what_is_missing(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("what do i pack")
    assert not answer.understood
    assert answer.clarify


@pytest.mark.parametrize("asked", ["too much salt?", "is my board ok"])
def test_the_board_on_the_table_is_looked_at(table: Session, asked: str) -> None:
    assert table.ask(asked).intent == "check-board"


def test_the_foods_of_the_table_are_put_in_order(table: Session) -> None:
    assert table.ask("ok and food order?").say.startswith("Eat ")
    assert table.ask("what order do i pour").say.startswith("Pour ")
