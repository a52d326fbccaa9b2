"""Of two wines what is asked is told first, and how they differ where a food stands."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("is chablis lighter than chardonnay", "Chardonnay is fuller than Chablis."),
        ("which is sweeter, sauternes or chablis", "Sauternes is sweeter than Chablis."),
        ("riesling or chardonnay, which is sweeter", "In that dry Riesling and Chardonnay are about equal."),
        ("is port stronger than pinot noir", "Ruby port is stronger than Pinot Noir."),
    ],
)
def test_what_is_asked_is_told_first(session: Session, asked: str, said: str) -> None:
    session.new_conversation()
    answer = session.ask(asked)
    assert answer.intent == "compare"
    assert answer.say == said


def test_a_difference_is_told_whatever_food_stands(session: Session) -> None:
    session.new_conversation()
    session.ask("what goes with brie")
    assert session.ask("what is the difference between riesling and malbec").say.startswith(
        "Malbec has more grip"
    )
    with_food = session.ask("what is the difference between merlot and malbec with steak").text
    assert "Merlot: good" in with_food
    assert "has more grip" not in with_food


@pytest.mark.parametrize(
    "asked", ["how does Crottamore differ from Brie", "difference of Brie and Crottamore?"]
)
def test_what_is_not_known_is_told_where_a_difference_is_asked(session: Session, asked: str) -> None:
    session.new_conversation()
    answer = session.ask(asked)
    assert answer.intent == "compare"
    assert answer.say == "I don't know “Crottamore”."
