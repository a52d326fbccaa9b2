"""A guest's question that the host passes on is answered as if the guest had asked it."""

from __future__ import annotations

import pytest

from assistant.language.passed_on import as_asked
from assistant.session import Session


@pytest.mark.parametrize(
    ("typed", "asked"),
    [
        ("pat asks if the malbec is vegan", "is the malbec vegan?"),
        ("pat asks: why is riesling oily", "why is riesling oily"),
        ("my mother in law wants to know whether we can chill it", "can we chill it?"),
        ("R. asks what tannin is", "what is tannin?"),
        ("R. asked about sulphites", "R. asked about sulphites"),
        ("she asks for water", "she asks for water"),
        ("aisha asked me to park it", "aisha asked me to park it"),
        ("what goes with brie", "what goes with brie"),
    ],
)
def test_what_is_asked_is_found(typed: str, asked: str) -> None:
    assert as_asked(typed) == asked


def test_it_is_answered_and_stays_as_typed(conversation: Session) -> None:
    typed = "pat asks if Parmesan is vegetarian"
    answer = conversation.ask(typed)
    assert answer.say == "Not for a vegetarian guest: Parmesan."
    assert answer.question == typed


def test_who_asks_is_heard_where_it_is_about_health(conversation: Session) -> None:
    answer = conversation.ask("guest on blood thinners asks is one glass of red fine")
    assert answer.intent == "safety"
    assert answer.cautions


@pytest.mark.parametrize("again", ["say again", "sorry, say that again", "what was that again?"])
def test_what_was_said_is_said_again(conversation: Session, again: str) -> None:
    said = conversation.ask("what goes with brie").say
    assert conversation.ask(again).say == said
    assert conversation.ask(again).say == said


def test_nothing_said_nothing_said_again(conversation: Session) -> None:
    assert not conversation.ask("say again").picks


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("is the port vegan", "Ask or read the label first for a vegan guest: ruby port."),
        ("can vegans eat honey", "Not for a vegan guest: honey."),
    ],
)
def test_whether_something_fits_a_diet(conversation: Session, asked: str, said: str) -> None:
    assert conversation.ask(asked).say == said


@pytest.mark.parametrize("asked", ["are there vegan cheeses for malbec", "is the vegan pie good with malbec"])
def test_a_diet_beside_a_pair_is_a_limit(conversation: Session, asked: str) -> None:
    assert "vegan guest" not in conversation.ask(asked).text
