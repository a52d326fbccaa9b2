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


@pytest.mark.parametrize(
    "asked",
    [
        "Lucy's just walked in, hungry! what can she have and which wine with it",
        "what does lucy get when she comes, i'm putting something aside for her",
        "what can lucy have and which wine with it",
    ],
)
def test_a_plate_of_the_table_and_a_glass(conversation: Session, asked: str) -> None:
    for line in (*LAID, "Lucy is vegetarian", asked):
        answer = conversation.ask(line)
    assert answer.text.startswith("Ask or read the label first for Lucy: pasta alla Norma and caprese.")
    assert answer.picks
    assert "Only the label" in answer.text


def test_with_an_allergy_what_is_not_for_that_guest_comes_first(conversation: Session) -> None:
    for line in ("foods: olives, gambas al ajillo", "wines: fino, rioja", "Carmen is allergic to shellfish"):
        conversation.ask(line)
    answer = conversation.ask("what can carmen have and which wine with it")
    assert answer.text.startswith("Not for Carmen: gambas al ajillo.\nCarmen may have: mixed olives.")
    assert answer.picks
    assert answer.cautions


def test_a_driver_is_given_no_wine(conversation: Session) -> None:
    for line in (*LAID, "Lucy is driving", "what can lucy have and which wine with it"):
        answer = conversation.ask(line)
    assert not {"wine/gavi", "wine/barbera-d-asti"} & {pick.id for pick in answer.picks}
    assert answer.cautions
