"""Bottles that are there already are not bought, and a supper is portioned as one."""

from __future__ import annotations

import pytest

from assistant.session import Session

GAVI, BARBERA, MALBEC = "wine/gavi", "wine/barbera-d-asti", "wine/malbec"


@pytest.fixture
def table(conversation: Session) -> Session:
    """Nine guests and three foods."""
    conversation.ask("nine of us saturday")
    conversation.ask("roast lamb, olives and brie")
    return conversation


@pytest.mark.parametrize(
    "typed",
    [
        "ive got a Gavi and two bottles of Barbera d'Asti already",
        "got the Gavi, 2 bottles of Barbera d'Asti",
        "I already own a gavi and two barbera d'asti",
    ],
)
def test_bottles_owned_are_not_bought(table: Session, typed: str) -> None:
    answer = table.ask(typed)
    assert dict(table.tonight.owned) == {GAVI: 1, BARBERA: 2}
    assert "not to buy: 1 Gavi and 2 Barbera d'Asti" in answer.text
    bought = table.ask("what do i still need to buy").text
    assert "roasted lamb" in bought
    assert "Gavi" not in bought
    assert "Barbera" not in bought


def test_only_what_is_short_is_bought(table: Session) -> None:
    table.ask("the wines are gavi and malbec")
    table.ask("12 guests")
    assert "Malbec: 2 bottles" in table.ask("what do i need to buy").text
    table.ask("i own one bottle of malbec already")
    assert table.tonight.wines == (GAVI, MALBEC)
    assert "Malbec: 1 bottle" in table.ask("what do i need to buy").text


@pytest.mark.parametrize(
    "typed",
    ["it's a proper supper, not a tasting", "for supper, at half seven", "nine of us, italian supper"],
)
def test_a_supper_has_portions_of_a_supper(table: Session, typed: str) -> None:
    assert "at a tasting" in table.ask("how much lamb").say
    table.ask(typed)
    answer = table.ask("how much lamb")
    assert answer.say == "lamb: about 2250 g for 9 as supper."
    assert answer.figures["grams_lamb"]["value"] == 2250
    table.ask("no, it's just a tasting")
    assert "at a tasting" in table.ask("how much lamb").say


def test_how_much_of_a_food_is_asked_whatever_is_told_beside_it(table: Session) -> None:
    answer = table.ask("it's a proper supper, not a tasting, so how much lamb")
    assert answer.intent == "quantity"
    assert "2250 g" in answer.say


@pytest.mark.parametrize(
    "typed",
    [
        "I've got three bottles already: a gavi, a barbera d'asti and a malbec",
        "I have three bottles, gavi, barbera d'asti and malbec",
        "we have three bottles already a gavi a barbera d'asti and a malbec",
    ],
)
def test_a_number_before_a_list_counts_all_of_it(table: Session, typed: str) -> None:
    table.ask(typed)
    assert dict(table.tonight.owned) == {GAVI: 1, BARBERA: 1, MALBEC: 1}


@pytest.mark.parametrize(
    "typed",
    [
        "wait, I only have one bottle of gavi. two bottles altogether",
        "sorry, just one bottle of gavi",
        "it's one gavi, not six",
    ],
)
def test_a_count_is_put_right(table: Session, typed: str) -> None:
    table.ask("I've got six bottles of gavi and one malbec already")
    answer = table.ask(typed)
    assert table.tonight.wines == (GAVI, MALBEC)
    assert dict(table.tonight.owned) == {GAVI: 1, MALBEC: 1}
    assert "There already, so not to buy: 1 Gavi and 1 Malbec." in answer.text


def test_one_of_each_counts_all_that_are_there(table: Session) -> None:
    table.ask("I've got six bottles of gavi and two malbec already")
    table.ask("one bottle of each")
    assert dict(table.tonight.owned) == {GAVI: 1, MALBEC: 1}


@pytest.mark.parametrize("typed", ["will one bottle of each be enough", "I only have one glass of gavi left"])
def test_what_is_asked_or_left_in_a_glass_counts_no_bottle(table: Session, typed: str) -> None:
    table.ask("I've got six bottles of gavi and two malbec already")
    table.ask(typed)
    assert dict(table.tonight.owned) == {GAVI: 6, MALBEC: 2}
