"""Choosing bottles and checking a board in conversation: short to say, true to the record."""

from __future__ import annotations

import json

import pytest

from assistant.answers.record import Answer
from assistant.session import Session
from tests.answer_schema import faults, sums_wrong

ASKED = [
    ("choose three wines for brie, salami, garlic cheddar and dark chocolate", "choose-wines"),
    ("which two of these do i open for tacos: malbec, sauv blanc, chardonnay, zin", "choose-wines"),
    ("which six wines would show off a charcuterie board", "choose-wines"),
    ("is my board balanced: brie, camembert, salami, dark chocolate", "check-board"),
    ("my board is cashew cheese, dates, olives, rye crisps, any gaps, vegan", "check-board"),
]


def asked(session: Session, question: str) -> Answer:
    """The answer to a first question."""
    session.new_conversation()
    session.top = 3
    return session.ask(question)


@pytest.mark.parametrize(("question", "intent"), ASKED)
def test_answers_are_sound(session: Session, question: str, intent: str) -> None:
    answer = asked(session, question)
    record = json.loads(json.dumps(answer.as_json()))
    assert answer.intent == intent
    assert answer.understood
    assert faults(record) == []
    assert sums_wrong(record) == []
    assert len(answer.say.split()) <= 12
    assert answer.text.startswith(answer.say)


def test_as_many_as_asked_are_poured_in_order(session: Session) -> None:
    answer = asked(session, "choose three wines for brie, salami, garlic cheddar and dark chocolate")
    labels = [pick.label for pick in answer.picks]
    assert len(set(labels)) == 3
    lines = answer.text.split("\n")[1:4]
    assert [line.split(". ", 1)[1].split(",")[0] for line in lines] == labels
    assert "dark chocolate" in lines[2]


def test_only_wines_named_are_chosen_from(session: Session) -> None:
    answer = asked(session, "which two of these do i open for tacos: malbec, sauv blanc, chardonnay, zin")
    named = {"wine/malbec", "wine/sauvignon-blanc", "wine/chardonnay", "wine/zinfandel"}
    assert len(answer.picks) == 2
    assert {pick.id for pick in answer.picks} <= named


def test_colours_asked_for_are_in_the_choice(session: Session) -> None:
    answer = asked(session, "choose 2 whites and 1 red for oysters, salami and cheddar")
    colours = sorted(pick.wine["colour"] for pick in answer.picks if pick.wine)
    assert colours == ["red", "white", "white"]


def test_limits_hold_for_a_choice(session: Session) -> None:
    answer = asked(session, "pick me 3 sparkling wines for oysters and fried chicken")
    assert len(answer.picks) == 3
    assert all("sparkling wine" in pick.groups for pick in answer.picks)


def test_fewer_wines_than_asked_are_told(session: Session) -> None:
    answer = asked(session, "choose five wines for tacos among malbec, chardonnay and zinfandel")
    assert len(answer.picks) == 3
    assert "No more than 3" in answer.text


def test_a_choice_without_food_asks_back(session: Session) -> None:
    answer = asked(session, "pick me four wines for tonight")
    assert answer.clarify
    assert not answer.understood
    assert answer.picks == ()


def test_a_diet_is_used_and_no_longer_left_out(session: Session) -> None:
    answer = asked(session, "is my board balanced: brie, camembert, salami, vegetarian please")
    assert "vegetarian" not in answer.left_out
    assert "Not surely vegetarian" in answer.text
    assert "salami" in answer.text.split("Not surely vegetarian")[1].split("\n")[0]


def test_a_board_names_what_it_lacks_and_the_swap(session: Session) -> None:
    answer = asked(session, "is my board balanced: brie, camembert, salami, dark chocolate")
    assert "Only cow's milk" in answer.text
    assert "Plate apart: dark chocolate" in answer.text
    assert "Best swap: " in answer.text
    assert {pick.kind for pick in answer.picks} == {"food"}
    assert all(pick.label.lower() in answer.text.lower() for pick in answer.picks)


def test_a_pouring_order_tells_what_a_swap_breaks(session: Session) -> None:
    answer = asked(session, "what order: Riesling, Pinot Noir, port")
    assert "Swap Pinot Noir and ruby port, and the drier one tastes sour." in answer.text


def test_a_limit_said_later_chooses_as_many_again(session: Session) -> None:
    asked(session, "choose four wines for brie, salami, oysters and dark chocolate")
    answer = session.ask("and without sparkling")
    assert answer.intent == "choose-wines"
    assert len(answer.picks) == 4
    assert not any("sparkling wine" in pick.groups for pick in answer.picks)


def test_which_goes_first_orders_the_wines_chosen(session: Session) -> None:
    chosen = asked(session, "choose three wines for brie, salami and dark chocolate")
    answer = session.ask("which goes first")
    assert answer.intent == "pour-order"
    assert [pick.id for pick in answer.picks] == [pick.id for pick in chosen.picks]
