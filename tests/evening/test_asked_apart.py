"""Two things in one line, one of them a guest's safety: both are answered, what may hurt first."""

from __future__ import annotations

import pytest

from assistant.session import Session

TABLE = "wines: Soave, Chianti, off-dry Riesling. foods: Brie, Stilton, salami, lasagne"


@pytest.fixture
def table(conversation: Session) -> Session:
    """A table with a guest who is allergic and one who takes medicine."""
    conversation.ask(TABLE)
    conversation.ask("Moira is allergic to walnuts")
    conversation.ask("Sue is on blood pressure tablets")
    return conversation


@pytest.mark.parametrize(
    ("typed", "first", "then"),
    [
        (
            "is the salami ok for Moira, and which wine does she get with it",
            "Moira may have: salami.",
            "Chianti",
        ),
        ("which wine goes with the salami and is it safe for Sue", "Not for Sue: Chianti.", "Chianti"),
        ("can Sue have the Brie? and what does Moira drink with it", "Sue may have: Brie.", "Moira"),
        ("Sue's got a headache and Carol wants ice in her Riesling", "No alcohol for Sue", "Riesling"),
        (
            "is the Chianti ok for Sue and can Moira have the Stilton",
            "Not for Sue: Chianti.",
            "Moira may have",
        ),
    ],
)
def test_both_halves_are_answered(table: Session, typed: str, first: str, then: str) -> None:
    answer = table.ask(typed)
    assert answer.intent == "safety"
    assert answer.text.startswith(first)
    assert answer.also
    assert then in str(answer.also[0]["text"]) + str(answer.also[0]["question"])


@pytest.mark.parametrize(
    "typed", ["can Moira and Sue have the Brie", "Sue and Moira want the salami", "is the Brie ok for Moira"]
)
def test_what_is_one_question_stays_one(table: Session, typed: str) -> None:
    assert not table.ask(typed).also
