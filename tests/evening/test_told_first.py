"""A need told and asked of in one line is taken down first, and the question is that guest's."""

from __future__ import annotations

import pytest

from assistant.language.guests import Asked, all_asked
from assistant.session import Session


@pytest.mark.parametrize(
    ("typed", "guest", "need"),
    [
        ("jo in the room just told me shes pregnant, which cheeses are ok", "Jo", "pregnant"),
        ("lucia is pregnant so what can she eat?", "Lucia", "pregnant"),
        ("marks allergic to nuts, what can he have", "Mark", "allergic to nuts"),
        ("Ben is coeliac - is the tiramisu ok for him?", "Ben", "coeliac"),
    ],
)
def test_the_need_is_kept_and_the_question_answered_for_that_guest(
    conversation: Session, typed: str, guest: str, need: str
) -> None:
    conversation.ask("tom has a nut allergy")
    answer = conversation.ask(typed)
    assert Asked(guest, need) in conversation.tonight.needs
    assert answer.also[0]["intent"] == "safety"
    assert "Tom" not in answer.text
    assert f" {guest}" in str(answer.also[0]["text"])


def test_what_is_asked_next_is_still_of_that_guest(conversation: Session) -> None:
    conversation.ask("tom has a nut allergy")
    conversation.ask("jo just told me she's pregnant, which cheeses are ok")
    answer = conversation.ask("and which wine?")
    assert "without alcohol" in answer.text
    assert "Tom" not in answer.text


@pytest.mark.parametrize(
    "typed", ["my sister is vegan, something for the curry", "the brie is ripe, can I serve it now"]
)
def test_a_pairing_or_a_thing_is_asked_of_nobody(conversation: Session, typed: str) -> None:
    conversation.ask(typed)
    assert not conversation.tonight.needs


def test_a_caution_is_read_once(conversation: Session) -> None:
    lines = conversation.ask("Ben is coeliac, can he have the tiramisu?").text.splitlines()
    assert len([line for line in lines if line.startswith("For a coeliac guest")]) == 1


@pytest.mark.parametrize(
    ("typed", "asked"),
    [
        ("kate on the call is vegan", Asked("Kate", "vegan")),
        ("Ben just said hes coeliac", Asked("Ben", "coeliac")),
        ("lucias pregnant", Asked("Lucia", "pregnant")),
    ],
)
def test_told_in_passing(typed: str, asked: Asked) -> None:
    assert all_asked(typed) == (asked,)


@pytest.mark.parametrize("typed", ["guests allergic to nuts", "kids driving us mad"])
def test_several_are_no_name_run_together(typed: str) -> None:
    assert not all_asked(typed)
