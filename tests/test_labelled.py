"""A wine named with its sweetness is that style of it, and what is not eaten is kept to, tastes too."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.mark.parametrize(
    ("question", "read"),
    [
        ("food for riesling, the off dry one", "off-dry Riesling"),
        ("food for riesling, the dry one", "dry Riesling"),
        ("what goes with a riesling, it says sweet", "Riesling"),
        ("food for riesling, something sweet", "dry Riesling"),
    ],
)
def test_the_style_of_that_sweetness_is_meant(conversation: Session, question: str, read: str) -> None:
    line = next(line for line in conversation.ask(question).text.splitlines() if line.startswith("I read"))
    assert read in line


@pytest.mark.parametrize(
    ("question", "trait"),
    [
        ("what can I eat with banyuls that isn't chocolate", "trait/chocolate"),
        ("what goes with chablis, no fish", "trait/fish"),
        ("what goes with malbec, no cheese", "trait/cheese"),
    ],
)
def test_what_is_not_eaten_is_in_none_of_the_foods_named(
    conversation: Session, question: str, trait: str
) -> None:
    picks = conversation.ask(question).picks
    assert picks
    assert all(trait not in conversation.knowledge.food(pick.id).traits for pick in picks)


def test_a_food_not_eaten_is_told_once(conversation: Session) -> None:
    assert "Kept to: no nuts;" in conversation.ask("snack for prosecco, no nuts").text


def test_a_taste_of_nuts_holds_none(conversation: Session) -> None:
    named = conversation.ask("which cheese goes with amontillado, no nuts").picks
    assert any("trait/nutty" in conversation.knowledge.food(pick.id).traits for pick in named)
