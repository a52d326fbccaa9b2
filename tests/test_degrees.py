"""A wine said to have so many degrees is held against the range it is poured at."""

from __future__ import annotations

import pytest

from assistant.knowledge.store import shipped
from assistant.session import Session

SERVE = {name: shipped().wines[f"wine/{name}"].serve for name in ("pinot-noir", "champagne", "chardonnay")}
FOUND = {"warm": "Too warm", "cold": "Too cold", "right": "Yes"}


@pytest.mark.parametrize("name", SERVE)
@pytest.mark.parametrize(("beyond", "found"), [(1.0, "warm"), (0.0, "right"), (-30.0, "cold")])
def test_the_range_decides(conversation: Session, name: str, beyond: float, found: str) -> None:
    serve = SERVE[name]
    assert serve is not None
    degrees = serve.high + beyond if found != "cold" else max(1.0, serve.low - 1)
    called = shipped().label(f"wine/{name}")
    answer = conversation.ask(f"is {degrees:g} degrees ok for the {called}")
    assert answer.intent == "service"
    assert answer.say.startswith(FOUND[found])
    assert answer.figures["celsius"]["value"] == pytest.approx(degrees)
    assert ("in the fridge from" in answer.text) == (found == "warm")


def test_fahrenheit_is_taken_for_what_it_is(conversation: Session) -> None:
    for typed in ("is 60 degrees fahrenheit fine for chardonnay", "is 60 degrees fine for chardonnay"):
        conversation.new_conversation()
        assert conversation.ask(typed).figures["celsius"]["value"] == pytest.approx((60 - 32) / 1.8)


def test_a_kind_is_held_against_its_common_styles(conversation: Session) -> None:
    answer = conversation.ask("red at room temperature, 22 degrees, ok?")
    assert answer.say.startswith("Too warm: red wine")


def test_percent_and_guests_are_no_degrees(conversation: Session) -> None:
    assert "celsius" not in conversation.ask("is zinfandel of 15 percent too strong").figures
    assert conversation.ask("we are 12 people, how many bottles").intent == "quantity"
