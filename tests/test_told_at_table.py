"""Trouble told of a bottle at the table is trouble, whatever its wine is called, and is asked on about."""

from __future__ import annotations

import pytest

from assistant.session import Session

FLAT, COLD = "Serve it as still wine, or open another.", "Cup the glass in your hands for some minutes."


@pytest.fixture
def table(conversation: Session) -> Session:
    """Three wines and two cheeses."""
    conversation.ask("the wines are crémant, beaujolais and rioja")
    conversation.ask("on the board: manchego, brie")
    return conversation


@pytest.mark.parametrize(
    "told",
    [
        "sues cremant is flat",
        "my cremant's got no fizz",
        "the cava has gone a bit flat",
        "there's no bubbles in helen's prosecco",
        "mine's gone flat",
    ],
)
def test_a_sparkling_wine_without_bubbles_is_trouble(table: Session, told: str) -> None:
    assert (table.ask(told).intent, table.ask(told).say) == ("trouble", FLAT)


@pytest.mark.parametrize(
    "told",
    [
        "tony's red is freezing, been in the fridge all day",
        "the rioja's stone cold",
        "my beaujolais is ice cold what now",
        "how do I warm the red up",
    ],
)
def test_a_red_too_cold_is_warmed(table: Session, told: str) -> None:
    assert table.ask(told).say == COLD


@pytest.mark.parametrize("asked", ["how do i warm it up quick", "quickest way to warm it"])
def test_how_it_is_mended_is_asked_of_the_trouble_just_told(table: Session, asked: str) -> None:
    table.ask("the rioja is freezing")
    assert table.ask(asked).say == COLD


def test_what_is_no_trouble_stays_what_it_is(table: Session) -> None:
    assert table.ask("is rioja too cold at 10 degrees").intent == "service"
    assert table.ask("which wine has no fizz").intent != "trouble"
    table.ask("how long can I keep the cooked rice")
    assert table.ask("can I warm it up again").say != COLD
