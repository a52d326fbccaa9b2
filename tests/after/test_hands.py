"""A show of hands is counted, kept, and told: who won, ties too, beside what single guests said."""

from __future__ import annotations

import pytest

from assistant.session import Session
from assistant.table.numbered import in_pouring_order

WINES = "wines: Cava, Picpoul, Provence rosé and Beaujolais"


@pytest.fixture
def laid(bare: Session) -> Session:
    bare.ask(WINES)
    return bare


@pytest.mark.parametrize(
    "told",
    [
        "rosé 4 votes, beaujolais 3, cava 2",
        "votes: 4 for the rosé, 3 for the beaujolais and 2 for the cava",
        "four hands for the rosé, three for the beaujolais, two for the cava",
    ],
)
def test_hands_are_counted_and_the_winner_is_told(laid: Session, told: str) -> None:
    said = laid.ask(told).say
    assert said == "Counted: 4 for Provence rosé, 3 for Beaujolais and 2 for Cava."
    won = "Provence rosé won, with 4 votes. Then Beaujolais with 3 votes and Cava with 2 votes."
    assert laid.ask("which wine was the favourite").say == won


@pytest.mark.parametrize(
    "asked",
    ["who won", "who's winning?", "what did everybody vote", "what was the vote", "did they agree with us"],
)
def test_places_are_those_of_the_order_and_a_tie_is_one(laid: Session, asked: str) -> None:
    poured = in_pouring_order(laid.tonight.wines, laid.engine)
    first, second = map(laid.knowledge.label, poured[:2])
    laid.ask("okay favorite vote, one got three votes, two got three, three got one")
    assert laid.ask(asked).say.startswith(f"A tie: {first} and {second}, with 3 votes each.")
    laid.ask("no wait Kelly switched to two so two's got four")
    assert laid.ask(asked).say.startswith(f"{second} won, with 4 votes.")


def test_single_guests_are_told_beside(laid: Session) -> None:
    laid.ask("rosé 4 votes, beaujolais 3")
    laid.ask("dave loved the beaujolais")
    lines = laid.ask("who won").text.splitlines()
    assert lines[0].startswith("Provence rosé won")
    assert lines[1] == "By what single guests said: Beaujolais was liked best."


def test_the_text_for_all_tells_the_vote(laid: Session) -> None:
    laid.ask("rosé 4 votes, beaujolais 4, cava 2")
    text = laid.ask("text for everyone").text
    assert "The Provence rosé and the Beaujolais shared the first place in the vote" in text
    assert text.count("Dear") == 1


@pytest.mark.parametrize("said", ["we've got 2 rosé and 3 cava", "dave gave the cava 4 of 5", "jen loved 2"])
def test_what_counts_no_hands(laid: Session, said: str) -> None:
    assert "Counted" not in laid.ask(said).text


def test_what_is_taken_back_is_not_counted(laid: Session) -> None:
    laid.ask("rosé 4 votes, beaujolais 3")
    laid.ask("beaujolais got 5 votes now")
    laid.ask("undo that")
    assert laid.ask("who won").say.startswith("Provence rosé won")


def test_one_more_is_added(laid: Session) -> None:
    laid.ask("rosé 4 votes, beaujolais 3")
    assert laid.ask("two more votes for the beaujolais").say == "Counted: 5 for Beaujolais."
    assert laid.ask("who won").say.startswith("Beaujolais won, with 5 votes.")
