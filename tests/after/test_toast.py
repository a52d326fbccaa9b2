"""A toast: yes or no by the bottles with bubbles, a glass without alcohol, and another sparkling wine."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture
def laid(bare: Session) -> Session:
    """A table with two bottles that have bubbles, for nine, of whom two drink none."""
    bare.ask("tonight we have prosecco, cava, gruner veltliner and rioja with burrata, prawns and koftas")
    for line in ("nine of us", "Megan is pregnant", "Jo is driving"):
        bare.ask(line)
    return bare


@pytest.mark.parametrize(
    "asked",
    [
        "is there enough fizz for a toast for everyone",
        "do we have enough bubbly for a toast",
        "have we enough to toast the bride with",
        "can everybody get a glass of fizz for the toast",
    ],
)
def test_only_bottles_with_bubbles_count_for_a_toast(laid: Session, asked: str) -> None:
    lines = laid.ask(asked).text.splitlines()
    assert lines[0] == "Yes: 1 Prosecco and 1 Cava, so up to 125 ml for each of 7 who drink."
    assert lines[1].startswith("For the 2 who drink none, in the same glasses: dealcoholised sparkling or ")


def test_it_is_no_where_bottles_are_short(bare: Session) -> None:
    bare.ask("tonight we have prosecco and rioja with burrata")
    bare.ask("we're 24")
    assert "3 bottles with bubbles are short" in bare.ask("is there enough fizz for a toast?").say
    bare.ask("we're 12")
    assert "one bottle with bubbles is short" in bare.ask("is there enough fizz for a toast?").say


def test_without_guests_a_bottle_is_told(bare: Session) -> None:
    bare.ask("tonight we have prosecco and rioja with burrata")
    assert bare.ask("is there enough fizz for a toast?").say.startswith("A bottle gives 7 glasses")


@pytest.mark.parametrize(
    "asked",
    [
        "another fizz for the bride please, something better than prosecco",
        "something fancier than prosecco for the bride",
        "a fizz that's a step up from the prosecco",
    ],
)
def test_another_fizz_is_another_sparkling_wine(laid: Session, asked: str) -> None:
    answer = laid.ask(asked)
    assert answer.say.startswith("Another with bubbles: ")
    assert all(wine in answer.say for wine in ("crémant", "Champagne", "English sparkling"))
    assert "finer and creamier than Prosecco" in answer.text


def test_who_may_have_no_alcohol_is_offered_no_other_fizz(laid: Session) -> None:
    text = laid.ask("another fizz for Megan please").text
    assert "Not for Megan: sparkling wine." in text
    assert "Another with bubbles" not in text


@pytest.mark.parametrize(
    "asked", ["which one won", "and which one won then?", "which wine won", "who likes what"]
)
def test_votes_told_in_one_line_tell_who_won(laid: Session, asked: str) -> None:
    laid.ask("votes: 5 for prosecco, 2 for cava, 1 gruner")
    assert laid.ask(asked).say.startswith("Prosecco won, with 5 votes. Then Cava with 2 votes")


def test_who_likes_what_tells_tastes_and_votes_and_no_health(laid: Session) -> None:
    laid.ask("Ruby hates oaky whites and loves bubbles")
    laid.ask("Kim loved the cava")
    text = laid.ask("who likes what").text
    assert "Cava was liked by Kim." in text
    assert "Ruby: hates oaky whites and loves bubbles." in text
    assert "Megan" not in text
