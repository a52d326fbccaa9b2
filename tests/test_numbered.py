"""Wines of the table called by number or place are those poured there, in the order of pouring."""

from __future__ import annotations

import pytest

from assistant.session import Session
from assistant.table.numbered import by_number

WINES = (
    "the wines are Sancerre, Marlborough Sauvignon Blanc, red Burgundy, Oregon Pinot Noir"
    " and late harvest riesling"
)
FOODS = "on the table: goat cheese, smoked salmon, mushroom tart and gruyere"
FIRST, SECOND, THIRD = "wine/sancerre", "wine/marlborough-sauvignon-blanc", "wine/red-burgundy"


@pytest.fixture
def laid(session: Session) -> Session:
    session.new_conversation()
    for line in (WINES, FOODS):
        session.ask(line)
    return session


@pytest.mark.parametrize(
    ("asked", "wines"),
    [
        ("does it still go with number two", (SECOND,)),
        ("what's number two again", (SECOND,)),
        ("what goes with wine 3", (THIRD,)),
        ("how cold for glass number 1", (FIRST,)),
        ("tell me about the second one", (SECOND,)),
        ("is number one better with the tart than number three", (FIRST, THIRD)),
        ("which is better with the tart, wines 1 and 3", (FIRST, THIRD)),
        ("compare one and three", (FIRST, THIRD)),
    ],
)
def test_a_number_is_the_wine_poured_there(laid: Session, asked: str, wines: tuple[str, ...]) -> None:
    assert laid.read(asked).wines == wines


@pytest.mark.parametrize(
    "said",
    [
        "wine two is a merlot",
        "wine 3 bottles each",
        "what about two people",
        "wine 9",
        "which do I pour first",
        "the second of",
    ],
)
def test_what_is_counted_or_named_is_no_place(laid: Session, said: str) -> None:
    assert by_number(said, laid) == {}


def test_behind_a_list_of_other_wines_a_place_is_one_of_them(laid: Session) -> None:
    picks = laid.ask("which wine not on the table goes with steak").picks
    assert not {pick.id for pick in picks} <= set(laid.tonight.wines)
    assert laid.read("tell me about the second one").wines == (picks[1].id,)
    assert laid.read("tell me about number two").wines == (SECOND,)


@pytest.mark.parametrize("said", ["swap three and four", "swap the burgundy and the oregon"])
def test_two_that_change_places_both_stay(laid: Session, said: str) -> None:
    wines = laid.tonight.wines
    answer = laid.ask(said)
    assert laid.tonight.wines == wines
    assert "New World Pinot Noir, red Burgundy and late-harvest Riesling" in answer.text


def test_the_region_of_one_wine_names_it(laid: Session) -> None:
    assert laid.read("how cold for the oregon one").wines == ("wine/new-world-pinot-noir",)
    assert laid.read("is the oregon pinot noir good with the tart").wines == ("wine/new-world-pinot-noir",)
    order = laid.ask("pour the burgundy next to the oregon which one first")
    assert order.say == "Pour red Burgundy first, New World Pinot Noir last."


def test_two_wines_are_both_described(laid: Session) -> None:
    text = laid.ask("tell me about two and three").text
    assert "Marlborough Sauvignon Blanc: dry" in text
    assert "Red Burgundy: dry" in text
