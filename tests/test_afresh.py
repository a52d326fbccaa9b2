"""Help, a new evening and the end of a limit, whatever stands."""

from __future__ import annotations

import pytest

from assistant.session import Session
from assistant.table.tonight import Tonight


@pytest.fixture
def told(conversation: Session) -> Session:
    """A table, a guest, and a limit that stands."""
    for line in ("the food is lamb and brie", "a gavi and a malbec", "lucia is pregnant", "12 of us"):
        conversation.ask(line)
    conversation.ask("what goes with lamb")
    conversation.ask("only red")
    return conversation


@pytest.mark.parametrize("typed", ["help", "help me", "help please", "help the board"])
def test_help_always_helps(told: Session, typed: str) -> None:
    assert told.ask(typed).intent == "help"
    assert told.talk
    assert told.talk.frame.preferences


@pytest.mark.parametrize(
    "typed",
    ["start over", "new evening", "lets start again please", "can we start a new evening", "clean slate"],
)
def test_a_new_evening_forgets_the_old_one(told: Session, typed: str) -> None:
    before = told.tonight
    assert told.ask(typed).say.startswith("A new evening: ")
    assert told.tonight == Tonight()
    assert told.talk is None
    told.ask("undo")
    assert told.tonight == before


@pytest.mark.parametrize(
    "typed", ["any colour", "drop the limit", "no more limits", "doesn't matter what colour"]
)
def test_a_limit_is_dropped(told: Session, typed: str) -> None:
    answer = told.ask(typed)
    assert answer.intent == "wines-for-food"
    assert "Limit: " not in answer.text
    assert "Still with lamb" in answer.text
