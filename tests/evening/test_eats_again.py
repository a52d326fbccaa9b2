"""Who is vegetarian no more and eats the salami: one need goes, and nobody is made up who has another."""

from __future__ import annotations

import pytest

from assistant.language.guests import Asked
from assistant.session import Session


@pytest.mark.parametrize(
    "typed",
    [
        "Helen isn't vegetarian any more apparently, she's eating the salami",
        "Helen's not vegetarian any more, she's having the salami",
        "Helen has given up being vegetarian, she ate the salami",
        "Helen is no longer vegetarian, she is trying the salami",
    ],
)
def test_only_the_diet_goes(conversation: Session, typed: str) -> None:
    conversation.ask("wines: Soave. foods: Brie, salami")
    conversation.ask("Priya is vegetarian and so is Helen")
    answer = conversation.ask(typed)
    assert conversation.tonight.needs == (Asked("Priya", "vegetarian"),)
    assert "Helen may have: salami." in answer.text
    assert "Noted for" not in answer.text


def test_what_somebody_eats_is_no_need(conversation: Session) -> None:
    conversation.ask("wines: Soave. foods: Brie, salami")
    conversation.ask("Tom is eating the salami")
    assert not conversation.tonight.needs
