"""A diet or driving that was told of a guest may change; an allergy does not change by such words."""

from __future__ import annotations

import pytest

from assistant.language.guests import Asked
from assistant.session import Session

BEFORE = (
    "eight guests",
    "foods: olives, gambas al ajillo, croquetas",
    "wines: fino, rioja",
    "Carmen is allergic to shellfish",
)


@pytest.fixture
def told(conversation: Session) -> Session:
    for line in (*BEFORE, "Joe is driving", "Lucy is vegetarian"):
        conversation.ask(line)
    return conversation


@pytest.mark.parametrize(
    "typed",
    ["she says actually she eats fish now, just no meat", "lucy eats fish now", "Lucy is pescatarian"],
)
def test_who_eats_fish_now_may_have_the_prawns(told: Session, typed: str) -> None:
    assert "Noted for Lucy: pescatarian." in told.ask(typed).text
    assert told.ask("so can lucy have the gambas then").say.startswith("Lucy may have")


def test_what_is_still_not_eaten_stays(told: Session) -> None:
    told.ask("lucy eats fish but no shellfish")
    assert told.ask("can lucy have the gambas").say.startswith("Not for Lucy")


def test_a_claim_in_a_question_counts_for_it(told: Session) -> None:
    assert told.ask("can lucy have the tuna, she eats fish").say.startswith("Lucy may have")


@pytest.mark.parametrize(
    ("typed", "gone"),
    [
        ("actually lucy isn't vegetarian", Asked("Lucy", "vegetarian")),
        ("joe isn't driving after all", Asked("Joe", "driving")),
    ],
)
def test_what_is_so_no_longer_is_taken_back(told: Session, typed: str, gone: Asked) -> None:
    assert f"Noted: {gone.guest} is no longer {gone.need}." in told.ask(typed).text
    assert gone not in told.tonight.needs
    assert len(told.tonight.needs) == 2


@pytest.mark.parametrize(
    "typed", ["does lucy eat fish", "carmen isn't allergic", "lucy isn't driving", "carmen eats fish"]
)
def test_nothing_else_changes(told: Session, typed: str) -> None:
    told.ask(typed)
    assert {Asked("Carmen", "allergic to shellfish"), Asked("Lucy", "vegetarian")} <= set(told.tonight.needs)


def test_she_is_who_was_told_of_as_she_and_what_she_eats_changes(told: Session) -> None:
    for line in ("Sarah is pregnant", "lena just turned up shes vegan"):
        told.ask(line)
    assert told.ask("what can she have").say.startswith("Not for Lena")
    assert told.ask("she changed her mind, shes just veggie").say == "Noted for Lena: veggie."
    assert [one.need for one in told.tonight.needs if one.guest == "Lena"] == ["veggie"]
