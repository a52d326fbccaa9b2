"""Bubbles without alcohol are bubbles; at a toast no food is asked for; aunt Carol is Carol."""

from __future__ import annotations

import pytest

from assistant.language.guest_named import guests_named
from assistant.language.guests import Asked
from assistant.language.preferences import sparkling
from assistant.session import Session


@pytest.mark.parametrize(
    "typed",
    [
        "something without alcohol thats fizzy for the brie",
        "something fizzy without alcohol for the brie",
        "anything non alcoholic with bubbles for the brie",
    ],
)
def test_without_turns_alcohol_alone(session: Session, typed: str) -> None:
    limits = session.parser.parse(typed).preferences
    assert sparkling(session.parser.limit_words) in limits
    assert not any(limit.banned for limit in limits)


def test_not_fizzy_is_still_not_fizzy(session: Session) -> None:
    limits = session.parser.parse("something without alcohol but not fizzy for the brie").preferences
    assert "not sparkling" in {limit.label for limit in limits}


@pytest.mark.parametrize("asked", ["what do the non drinkers get for the toast", "what can carol toast with"])
def test_what_is_raised_has_bubbles_and_no_alcohol(conversation: Session, asked: str) -> None:
    conversation.ask("aunt carol doesn't drink")
    answer = conversation.ask(asked)
    wines, glasses = conversation.knowledge.wines, conversation.engine.glasses
    assert answer.picks
    assert all(wines[pick.id].type == "Drink" for pick in answer.picks)
    assert all(glasses[pick.id].points["bubbles"] > 2 for pick in answer.picks)
    assert answer.clarify is None


@pytest.mark.parametrize(
    "asked", ["what fizzy can carol have with the brie", "what does Carol drink with the brie"]
)
def test_a_guest_is_known_by_the_name_behind_aunt(conversation: Session, asked: str) -> None:
    conversation.ask("aunt carol doesn't drink")
    answer = conversation.ask(asked)
    assert "drink without alcohol" in answer.text


def test_who_is_only_a_friend_has_no_name_of_its_own() -> None:
    assert not guests_named("the friend sits here", [Asked("my best friend", "vegan")])
    assert guests_named("can jo have it", [Asked("my sister jo", "vegan")]) == ("my sister jo",)
