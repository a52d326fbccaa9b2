"""A need told in front of whom it is of, behind a name and a comma, or in words of talk, is put plainly."""

from __future__ import annotations

import pytest

from assistant.language.guests import Asked
from assistant.language.said_of import plainly
from assistant.session import Session


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("i spose yusuf's pregnant wife is coming too", "Yusuf's wife is pregnant too"),
        ("my coeliac mate dave is here", "my mate dave is coeliac"),
        ("leila, she's preggo", "leila's pregnant"),
        ("mia is vego", "mia is vegetarian"),
        ("sorry, she's vegan", "sorry, she's vegan"),
        ("the vegan cheese is coming", "the vegan cheese is coming"),
    ],
)
def test_what_is_said_of_a_guest_is_put_plainly(typed: str, told: str) -> None:
    assert plainly(typed) == told


def test_the_wife_of_a_guest_is_another_guest(conversation: Session) -> None:
    conversation.ask("yusuf is halal")
    conversation.ask("yusuf's pregnant wife is coming too")
    assert conversation.tonight.needs == (Asked("Yusuf", "halal"), Asked("Yusuf's wife", "pregnant"))


def test_a_name_in_front_of_a_comma_is_kept(conversation: Session) -> None:
    assert conversation.ask("leila, she's preggo").say == "Noted for Leila: pregnant."


@pytest.mark.parametrize("typed", ["take pregnant off yusuf", "remove the pregnancy from yusuf"])
def test_one_need_of_two_is_taken_off(conversation: Session, typed: str) -> None:
    conversation.ask("yusuf is halal and pregnant")
    assert conversation.ask(typed).say.startswith("Taken off for Yusuf: pregnan")
    assert conversation.tonight.needs == (Asked("Yusuf", "halal"),)


def test_an_allergy_is_not_taken_off_so(conversation: Session) -> None:
    conversation.ask("effie is allergic to nuts")
    conversation.ask("take the nut allergy off effie")
    assert conversation.tonight.needs == (Asked("Effie", "allergic to nuts"),)


def test_a_vegetarian_by_another_word_is_noted_beside_the_first_need(conversation: Session) -> None:
    conversation.ask("mia is preggo")
    conversation.ask("mia's changed her mind, she's vego too")
    assert conversation.tonight.needs == (Asked("Mia", "pregnant"), Asked("Mia", "vegetarian"))


@pytest.mark.parametrize(
    ("typed", "need"),
    [
        ("Yusuf is halal, doesn't drink at all", "halal, doesn't drink at all"),
        ("Yusuf is coeliac, never drinks", "coeliac, never drinks"),
    ],
)
def test_who_drinks_nothing_either_is_told_in_one_breath(
    conversation: Session, typed: str, need: str
) -> None:
    assert conversation.ask(typed).say == f"Noted for Yusuf: {need}."
    assert conversation.tonight.needs == (Asked("Yusuf", need),)


def test_whether_he_is_right_with_it_is_asked_for_the_guest(conversation: Session) -> None:
    conversation.ask("on the table: grilled lamb, saganaki")
    conversation.ask("Yusuf is halal")
    answer = conversation.ask("lambs halal from the butcher, so hes right yeah?")
    assert answer.say.startswith("Ask or read the label first for Yusuf:")


def test_wine_without_alcohol_by_its_short_name_is_read(conversation: Session) -> None:
    answer = conversation.ask("got any non alc wine for the lamb")
    assert not answer.left_out
    assert answer.picks[0].id.startswith("drink/dealcoholised")
