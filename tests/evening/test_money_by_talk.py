"""What the money buys for a dinner, and a potluck, of which no food is bought."""

from __future__ import annotations

import pytest

from assistant.session import Session

TOLD = (
    "friendsgiving, 14 people, 4 of them don't drink, dinner at 6 saturday",
    "the table: turkey, stuffing, pecan pie, chips and salsa",
    "I've got three bottles already: a cava, a pinot noir and a chardonnay",
    "my budget is $120",
)


@pytest.fixture
def table(conversation: Session) -> Session:
    for line in TOLD:
        conversation.ask(line)
    return conversation


def test_the_money_buys_so_many_bottles(table: Session) -> None:
    answer = table.ask("my budget is $120 how many more bottles can I get at like 15 each")
    assert answer.say.startswith("120 buys 8 at 15 each. For 10 who drink, 5 to 7 bottles last a dinner;")
    assert "3 are there.\nSo buy 2 to 4 more." in answer.text
    assert "can't use" not in answer.text


@pytest.mark.parametrize(
    "typed",
    ["what should I buy with the 120", "which wines should I buy for 120 bucks so there's enough all night"],
)
def test_without_a_price_the_bottles_of_a_dinner_are_told(table: Session, typed: str) -> None:
    text = table.ask(typed).text
    assert "So buy 2 to 4 more." in text
    assert "Say what a bottle costs" in text
    assert "turkey:" not in text


@pytest.mark.parametrize(
    "typed",
    [
        "the guests bring the food I don't buy any of it",
        "it's a potluck",
        "everyone brings a dish",
        "we're not cooking any of it",
    ],
)
def test_of_a_potluck_no_food_is_bought(table: Session, typed: str) -> None:
    before = table.tonight
    answer = table.ask(typed)
    assert "none of it is to be bought" in answer.text
    assert (table.tonight.dishes, table.tonight.wines) == (before.dishes, before.wines)
    bought = table.ask("what do I need to buy").text
    assert "water" in bought
    assert "turkey" not in bought


def test_a_potluck_told_with_the_party_is_planned(conversation: Session) -> None:
    answer = conversation.ask("planning a potluck, 14 people, dinner at 6 saturday")
    assert answer.text.startswith("Noted: 14 guests")
    assert conversation.tonight.food_brought


@pytest.mark.parametrize(
    "typed", ["what wine for a potluck", "we don't have anything to eat", "I don't buy it"]
)
def test_who_asks_or_doubts_tells_of_no_potluck(table: Session, typed: str) -> None:
    table.ask(typed)
    assert not table.tonight.food_brought


def test_bottles_for_so_many_people_are_no_money(table: Session) -> None:
    assert table.ask("how many bottles should I get for 12 people").intent == "quantity"
