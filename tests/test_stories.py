"""Stories of wine are told as outside the job, with what can be asked instead."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.mark.parametrize(
    "asked",
    [
        "who invented port",
        "how old is wine",
        "when was champagne invented",
        "who made the first wine",
        "what is the history of port",
        "where does wine come from",
        "why is it called lambrusco",
    ],
)
def test_a_story_is_outside(conversation: Session, asked: str) -> None:
    conversation.new_conversation()
    answer = conversation.ask(asked)
    assert "stories are outside" in answer.say
    assert "Try: describe" in answer.text
    assert not answer.picks
    assert not answer.understood


@pytest.mark.parametrize(
    ("asked", "intent"),
    [
        ("where does Barolo come from", "describe"),
        ("what goes with port", "foods-for-wine"),
        ("which wine first, riesling or malbec", "pour-order"),
        ("is it true that the first glass is best with port", "myth"),
    ],
)
def test_what_is_no_story_is_answered(conversation: Session, asked: str, intent: str) -> None:
    conversation.new_conversation()
    answer = conversation.ask(asked)
    assert answer.intent == intent
    assert "stories" not in answer.say
