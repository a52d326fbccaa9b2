"""The answer before is told once more, whole or in its first sentence."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.mark.parametrize("asked", ["say that again", "sorry?", "sorry, say again?", "one more time"])
def test_it_is_told_again(conversation: Session, asked: str) -> None:
    before = conversation.ask("what goes with brie")
    assert conversation.ask(asked).text == before.text


@pytest.mark.parametrize(
    "asked", ["make it shorter", "shorter please", "too long", "in one sentence", "be brief"]
)
def test_it_is_told_in_its_first_sentence(conversation: Session, asked: str) -> None:
    before = conversation.ask("what goes with brie")
    assert before.say != before.text
    assert conversation.ask(asked).text == before.say


@pytest.mark.parametrize(
    "asked", ["a shorter wine list for brie and ham", "is it too long in the fridge now"]
)
def test_other_questions_are_no_wish_for_it(conversation: Session, asked: str) -> None:
    before = conversation.ask("what goes with brie")
    assert conversation.ask(asked).say != before.say
