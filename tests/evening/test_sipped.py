"""A sip of wine in pregnancy is for the midwife, without a fever watch; a cheese eaten is watched."""

from __future__ import annotations

import pytest

from assistant.session import Session

FEVER, ASKED = "at once with fever", "No more of it from now on"


@pytest.mark.parametrize(
    "typed",
    [
        "Megan had a sip of prosecco, is that bad?",
        "oh no megan drank half a glass of rioja",
        "my pregnant sister drank a glass of wine by accident",
    ],
)
def test_wine_that_was_drunk_is_told_calmly(conversation: Session, typed: str) -> None:
    conversation.ask("Megan is pregnant")
    answer = conversation.ask(typed)
    assert answer.intent == "safety"
    assert ASKED in answer.text
    assert FEVER not in answer.text


@pytest.mark.parametrize(
    "typed", ["Megan had some of the brie", "my pregnant sister drank a glass of raw milk"]
)
def test_what_may_make_ill_later_is_watched(conversation: Session, typed: str) -> None:
    conversation.ask("Megan is pregnant")
    assert FEVER in conversation.ask(typed).text


def test_a_glass_that_was_drunk_is_not_broken(conversation: Session) -> None:
    conversation.ask("Kim is in recovery")
    assert conversation.ask("kim drank a glass of the prosecco").say == "Not for Kim: Prosecco."
    assert "broken into food" in conversation.ask("she drank a splinter of glass").text
