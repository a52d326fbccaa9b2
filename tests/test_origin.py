"""Where a wine comes from, what it is made of and how strong it is, as guests ask."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("where is malbec from", "It comes above all from Mendoza."),
        ("where does barolo come from", "It comes above all from Piedmont."),
        ("how strong is zinfandel", "It has about 15 % alcohol, 13.5 to 16 as a rule."),
        ("what grapes is rioja reserva made of", "It is made from Tempranillo, Grenache and Graciano."),
    ],
)
def test_what_is_asked_is_said_first(session: Session, asked: str, said: str) -> None:
    session.new_conversation()
    answer = session.ask(asked)
    assert answer.intent == "describe"
    assert answer.say == said
    assert answer.text.count(said) == 1


def test_a_description_tells_all_three(session: Session) -> None:
    session.new_conversation()
    text = session.ask("describe barolo").text
    for told in ("from Piedmont", "from Nebbiolo", "14.3 % alcohol"):
        assert told in text


def test_of_a_drink_without_alcohol_no_strength_and_no_home_is_told(session: Session) -> None:
    session.new_conversation()
    text = session.ask("describe lemonade").text
    assert "% alcohol" not in text
    assert "comes above all" not in text
