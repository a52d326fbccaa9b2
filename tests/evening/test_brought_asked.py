"""A dish that may come, or what of the table holds a food, is asked for every guest who may be harmed."""

from __future__ import annotations

import pytest

from assistant.session import Session

LEFT = "best left off the table"


@pytest.fixture
def table(conversation: Session) -> Session:
    """A table with a guest who is allergic and one who is vegetarian."""
    conversation.ask("8 guests, wines: Soave, Chianti. foods: Brie, Stilton, salami")
    conversation.ask("Moira is allergic to walnuts")
    conversation.ask("Helen is vegetarian")
    return conversation


@pytest.mark.parametrize(
    "typed",
    [
        "Helen's bringing a walnut loaf, is that ok",
        "is it ok if Helen brings a walnut loaf",
        "can Tom bring a walnut loaf",
        "a walnut loaf is coming with Helen",
        "Carol made a walnut loaf, is that alright?",
    ],
)
def test_a_dish_that_harms_is_told_first_and_not_praised(table: Session, typed: str) -> None:
    answer = table.ask(typed)
    assert answer.text.startswith("Not for Moira: walnut bread.")
    assert LEFT in answer.text
    assert "Helen may have" not in answer.text
    assert not any(word in answer.text for word in ("Soave", "Chianti"))


def test_what_is_laid_all_the_same_is_told_first(table: Session) -> None:
    answer = table.ask("Helen is bringing a walnut loaf")
    assert answer.text.startswith("Not for Moira: walnut bread.")
    assert LEFT in answer.text
    assert not any("bringing" in one.need for one in table.tonight.needs)


@pytest.mark.parametrize(
    "typed",
    [
        "and is there anything with walnuts in?",
        "does anything contain nuts",
        "which of these have walnuts in",
        "what's got nuts in it",
        "anything with walnuts in it?",
    ],
)
def test_what_holds_a_food_is_asked_of_the_dishes(table: Session, typed: str) -> None:
    table.ask("put walnut bread on the board")
    answer = table.ask(typed)
    assert "in it, or what counts as that: walnut bread." in answer.text
    assert "Not for Moira: walnut bread." in answer.text
    assert "Helen" not in answer.text


def test_nothing_that_is_known_is_said_with_the_label(table: Session) -> None:
    answer = table.ask("is there anything with walnuts in?")
    assert answer.say == "Nothing on the table that I know of holds walnuts."
    assert "label" in answer.text


def test_no_nuts_are_bought_where_a_guest_is_allergic(table: Session) -> None:
    table.ask("Thursday 19:30")
    assert "no nuts this time" in table.ask("plan the evening").text


def test_nuts_are_bought_where_nobody_is(conversation: Session) -> None:
    conversation.ask("8 guests, Thursday 19:30, wines: Soave, Chianti. foods: Brie, Stilton, salami")
    text = conversation.ask("plan the evening").text
    assert "crackers, nuts, dried fruit" in text
    assert "no nuts" not in text
