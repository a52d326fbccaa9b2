"""A guest who turns up late and has a need is taken down, counted, and given what of the table is theirs."""

from __future__ import annotations

import pytest

from assistant.language.guests import Asked
from assistant.session import Session

LAID = ("nine of us", "the board is pasta alla norma, caprese and lamb", "got gavi and barbera d'asti")


@pytest.mark.parametrize(
    ("typed", "guests"),
    [
        ("sara just turned up late, shes vegetarian", 10),
        ("Sara showed up and is vegetarian", 10),
        ("sara has joined us, she's vegetarian", 10),
        ("Sara arrived late, she is vegetarian", 9),
    ],
)
def test_the_need_is_kept_and_who_turned_up_is_one_more(
    conversation: Session, typed: str, guests: int
) -> None:
    for line in (*LAID, typed):
        answer = conversation.ask(line)
    assert conversation.tonight.needs == (Asked("Sara", "vegetarian"),)
    assert conversation.tonight.guests == guests
    assert answer.text.count("Noted: 10 guests.") == (guests == 10)


def test_what_she_has_instead_is_of_the_table_with_a_wine(conversation: Session) -> None:
    for line in (*LAID, "sara just turned up late, shes vegetarian", "what can she have instead of the lamb"):
        answer = conversation.ask(line)
    assert "for Sara: pasta alla Norma and caprese" in answer.text
    assert "Barbera d'Asti" in answer.text
    assert "bin it" not in answer.text


def test_what_she_drinks_with_a_dish_is_a_wine(conversation: Session) -> None:
    for line in (*LAID, "sara is vegetarian", "what does she drink with the pasta"):
        answer = conversation.ask(line)
    assert answer.intent == "wines-for-food"
    assert answer.picks
    assert conversation.ask("what can sara drink with the lamb").say == "Not for Sara: lamb."
