"""No wine for a guest under age, however it is asked; the need is kept, drinks without alcohol are told."""

from __future__ import annotations

import pytest

from assistant.language.guests import Asked
from assistant.session import Session

TABLE = "wines: Chianti, off-dry Riesling. foods: lasagne, salami"


@pytest.mark.parametrize(
    "typed",
    [
        "next door's lad Josh is popping in, he's 17, can he have a small glass?",
        "Josh is 17, can he have a glass?",
        "Josh's mum says he's allowed a drop, he's 17",
        "Josh from next door, 17, wants to try the Chianti",
        "can 17 year old Josh have a glass?",
    ],
)
def test_a_young_guest_is_noted_and_gets_no_wine(conversation: Session, typed: str) -> None:
    conversation.ask(TABLE)
    conversation.ask("Sue is on blood pressure tablets")
    answer = conversation.ask(typed)
    assert Asked("Josh", "17 years old") in conversation.tonight.needs
    assert "No alcohol for Josh: 17 years old." in answer.text
    assert any(one["id"] == "caution/minors" for one in answer.cautions)


@pytest.mark.parametrize(
    "typed",
    [
        "can Josh have the Riesling instead",
        "what can I give Josh instead?",
        "what does Josh get",
        "just a splash for Josh then?",
        "Josh wants to try the Chianti",
        "Josh's mum says he's allowed a drop",
    ],
)
def test_the_next_line_knows_it(conversation: Session, typed: str) -> None:
    conversation.ask(TABLE)
    conversation.ask("Josh is seventeen")
    answer = conversation.ask(typed)
    assert "No alcohol for Josh: 17 years old." in answer.text
    assert not {pick.id for pick in answer.picks} & {"wine/chianti", "wine/off-dry-riesling"}


def test_with_a_food_it_is_still_no_wine(conversation: Session) -> None:
    conversation.ask(TABLE)
    conversation.ask("Josh is 17, can he have a glass?")
    answer = conversation.ask("and with the lasagne, at the table with his mum?")
    assert "No alcohol for Josh" in answer.text


def test_what_he_eats_is_answered_as_before(conversation: Session) -> None:
    conversation.ask(TABLE)
    conversation.ask("Josh is seventeen")
    assert "Josh may have: salami." in conversation.ask("can Josh have the salami").text
