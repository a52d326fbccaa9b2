"""A guest who takes medicine and drank by mistake, or is unwell: what is done now, and whom to ring."""

from __future__ import annotations

import pytest

from assistant.session import Session

TABLE = "wines: Chianti, off-dry Riesling. foods: Brie, salami"


@pytest.mark.parametrize(
    "typed",
    [
        "Sue has had half a glass of chianti by mistake",
        "sue drank some of the Riesling by accident",
        "oh no, Sue just drank a whole glass of wine",
        "Sue took a sip of the wrong glass",
    ],
)
def test_wine_drunk_with_medicine_is_met_with_what_to_do(conversation: Session, typed: str) -> None:
    conversation.ask(TABLE)
    conversation.ask("Sue is on blood pressure tablets")
    answer = conversation.ask(typed)
    assert answer.cautions[0]["id"] == "caution/medicines-drunk"
    assert "No alcohol for Sue: on blood pressure tablets." in answer.say
    assert "May have" not in answer.text


@pytest.mark.parametrize("typed", ["Sue's got a headache", "sue has a bad headache", "Sue feels dizzy"])
def test_who_is_unwell_with_medicine_asks_the_pharmacist(conversation: Session, typed: str) -> None:
    conversation.ask("Sue is on blood pressure tablets")
    assert conversation.ask(typed).cautions[0]["id"] == "caution/medicines-unwell"


def test_nobody_else_is_taken_for_ill_with_medicine(conversation: Session) -> None:
    conversation.ask("Moira is allergic to walnuts")
    answer = conversation.ask("Moira has a headache")
    assert {one["id"] for one in answer.cautions} == {"caution/headache"}


def test_without_a_name_it_is_told_too(conversation: Session) -> None:
    answer = conversation.ask("my mum is on tablets and she drank a glass of wine")
    assert any(one["id"] == "caution/medicines-drunk" for one in answer.cautions)
