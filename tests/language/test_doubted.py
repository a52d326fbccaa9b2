"""A guest who doubts every answer is told the reason, the sources, or the fixed wording again."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture
def table(conversation: Session) -> Session:
    """Two wines, two dishes and a guest who does not drink."""
    conversation.ask("Tom doesn't drink, Ines is vegan")
    conversation.ask("the wines are zinfandel and sauvignon blanc")
    conversation.ask("food is sausages and potato salad")
    return conversation


@pytest.mark.parametrize(
    "typed",
    [
        "rolf doesn't believe you",
        "Rolf thinks that's rubbish",
        "is he right",
        "he's not convinced",
        "she disagrees",
        "rubbish, he says",
    ],
)
def test_who_doubts_an_answer_is_told_why(table: Session, typed: str) -> None:
    table.ask("what goes with the sausage")
    answer = table.ask(typed)
    assert answer.intent == "why"
    assert "Zinfandel with sausage: good." in answer.text
    assert "can't use" not in answer.text


@pytest.mark.parametrize("typed", ["prove it", "says who", "how do you know", "what's your source"])
def test_who_wants_proof_is_told_the_sources(table: Session, typed: str) -> None:
    table.ask("what goes with the sausage")
    text = table.ask(typed).text
    assert "Trade practice without a single published source" in text
    assert "CONSTRUCT" not in text


@pytest.mark.parametrize("typed", ["is he right", "says who", "prove it"])
def test_what_is_said_of_health_is_said_again(table: Session, typed: str) -> None:
    said = table.ask("can Tom have the zinfandel")
    assert said.intent == "safety"
    assert table.ask(typed).text == said.text


@pytest.mark.parametrize(
    ("typed", "entry"),
    [
        ("rolf says never chill red", "Modern rooms are too warm"),
        ("my uncle reckons red never goes in the fridge", "Modern rooms are too warm"),
        ("Rolf claims legs mean quality", "No: legs show alcohol and sugar"),
        ("he says screw caps are for cheap wine", "No: fine wines use them too"),
    ],
)
def test_what_somebody_claims_is_looked_up(table: Session, typed: str, entry: str) -> None:
    answer = table.ask(typed)
    assert answer.intent == "myth"
    assert answer.say.startswith(entry)
    assert "can't use" not in answer.text


def test_a_claim_of_health_is_not_taken_for_a_saying(table: Session) -> None:
    assert table.ask("rolf says one glass is fine when pregnant").intent == "safety"


def test_what_is_named_is_asked_about(table: Session) -> None:
    table.ask("what goes with the sausage")
    assert table.ask("does the sauvignon go with it, he says").intent != "why"


def test_a_pair_that_was_a_saying_is_proved_as_a_pair(table: Session) -> None:
    table.ask("rolf says red with sausage is rubbish")
    assert "Sum " in table.ask("prove it").text


def test_a_saying_is_said_again_with_its_source(table: Session) -> None:
    said = table.ask("rolf claims legs mean quality")
    assert table.ask("prove it").text == said.text
