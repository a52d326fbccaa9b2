"""An allergy to wine is taken down and kept to; a reaction that always comes is no emergency now."""

from __future__ import annotations

import pytest

from assistant.language.guest_named import guests_named
from assistant.language.guests import Asked, all_asked
from assistant.session import Session


@pytest.mark.parametrize(
    ("typed", "need"),
    [
        ("actually its only mark who gets hives from red wine", "allergic to red wine"),
        ("Mark gets a rash from nuts", "allergic to nuts"),
        ("mark is allergic to red wine", "allergic to red wine"),
    ],
)
def test_it_is_taken_down(conversation: Session, typed: str, need: str) -> None:
    answer = conversation.ask(typed)
    assert Asked("Mark", need) in conversation.tonight.needs
    assert answer.text.startswith("Noted for Mark")


def test_when_to_call_for_help_is_told_last(conversation: Session) -> None:
    answer = conversation.ask("mark gets hives from red wine")
    assert "emergency number" in answer.cautions[-1]["text"]
    assert len(answer.cautions) > 1


@pytest.mark.parametrize("typed", ["mark has hives", "he is getting hives from the wine"])
def test_a_reaction_now_is_an_emergency(conversation: Session, typed: str) -> None:
    assert conversation.ask(typed).say.startswith("Trouble breathing")
    assert not conversation.tonight.needs


def test_who_reacts_to_sulphites_is_offered_no_wine(conversation: Session) -> None:
    conversation.ask("mark is allergic to sulphites")
    answer = conversation.ask("what can mark drink with the brie")
    wines = conversation.knowledge.wines
    assert answer.picks
    assert all(wines[pick.id].type == "Drink" for pick in answer.picks)
    assert "sulphites" in answer.text


@pytest.mark.parametrize(
    ("typed", "guest", "named"),
    [
        ("what can mark drink", "Mark", True),
        ("what does mark get", "Mark", True),
        ("mark my words", "Mark", False),
        ("can rose go with the salmon", "Rose", False),
    ],
)
def test_a_name_that_is_a_word_counts_where_only_somebody_stands(typed: str, guest: str, named: bool) -> None:
    assert bool(guests_named(typed, [Asked(guest, "vegan")])) is named


def test_wine_is_asked_for_where_no_allergy_is_told() -> None:
    assert not all_asked("jo is vegan, wine for the curry")
