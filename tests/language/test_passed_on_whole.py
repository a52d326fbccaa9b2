"""A guest's question passed on is answered; what touches health, or is to be kept, is heard whole."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.mark.parametrize(
    ("said", "intent"),
    [
        ("guest on blood thinners asks is one glass of red fine", "safety"),
        ("my pregnant sister wants to know is one glass ok", "safety"),
        ("somebody asked why the chianti was cloudy - put that aside for later", "note"),
        ("jo asks what goes with brie", "wines-for-food"),
    ],
)
def test_a_question_passed_on(conversation: Session, said: str, intent: str) -> None:
    assert conversation.ask(said).intent == intent
