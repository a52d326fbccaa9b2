"""A dish told to be for the vegetarians, and made with vegetarian cheese, is kept as theirs by its label."""

from __future__ import annotations

import pytest

from assistant.session import Session

LASAGNES = "two lasagnes, one beef and a button mushroom lasagne for the vegetarians"
DISH = "button mushroom lasagne"


@pytest.fixture
def table(conversation: Session) -> Session:
    """A table with a vegetarian and a vegan."""
    conversation.ask("8 guests, wines: Soave, Chianti. foods: Brie, salami")
    conversation.ask("Priya is vegetarian")
    conversation.ask("Tom is vegan")
    return conversation


def test_for_the_vegetarians_tells_what_the_label_must_say(table: Session) -> None:
    answer = table.ask(LASAGNES)
    assert "fine for the vegetarians once the hard cheese in it is vegetarian too" in answer.text
    assert (
        f"Ask or read the label first for Priya: {DISH}."
        in table.ask("can Priya have the mushroom lasagne").text
    )


@pytest.mark.parametrize(
    "typed",
    [
        "I'll use vegetarian parmesan in the mushroom one, is it ok for Priya then?",
        "the mushroom lasagne is made with vegetarian cheese",
        "I've bought vegetarian Parmesan for the mushroom lasagne",
    ],
)
def test_vegetarian_cheese_is_kept(table: Session, typed: str) -> None:
    table.ask(LASAGNES)
    answer = table.ask(typed)
    assert f"Priya may have: {DISH}." in answer.text
    assert "label" in answer.text
    assert f"Priya may have: {DISH}." in table.ask("can Priya have the mushroom lasagne").text


def test_other_needs_still_stand(table: Session) -> None:
    table.ask(LASAGNES)
    table.ask("the mushroom lasagne is made with vegetarian cheese")
    assert f"Not for Tom: {DISH}." in table.ask("can Tom have the mushroom lasagne").text
    assert "Not for Priya: lasagne." in table.ask("can Priya have the beef lasagne").text.replace(
        " and beef", ""
    )


def test_a_question_keeps_nothing(table: Session) -> None:
    table.ask("a button mushroom lasagne is on the table too")
    table.ask("is there a vegetarian cheese")
    assert not table.spoken.made
