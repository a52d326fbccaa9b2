"""What a limit costs is told in a few words, with what on the plate makes up for it."""

from __future__ import annotations

import pytest

from assistant.answers.record import Answer
from assistant.session import Session

COSTLY = ["only sweet red with oysters", "a dry white for stilton", "a light white with beef stew"]
FREE = ["something not oaky with steak", "a red for steak", "white wine with oysters"]
MOST_WORDS = 6


def cost_of(answer: Answer) -> str | None:
    """The line that tells the cost, without the wine in brackets."""
    found = [line for line in answer.text.splitlines() if line.startswith("The limit costs")]
    return found[0].partition(" (")[0] if found else None


@pytest.mark.parametrize("typed", COSTLY)
def test_a_limit_that_costs_a_verdict_says_so_shortly(session: Session, typed: str) -> None:
    session.new_conversation()
    answer = session.ask(typed)
    cost = cost_of(answer)
    assert cost is not None
    assert len(cost.split()) <= MOST_WORDS
    assert answer.picks[0].verdict in cost


@pytest.mark.parametrize("typed", FREE)
def test_a_limit_that_costs_nothing_is_not_complained_of(session: Session, typed: str) -> None:
    session.new_conversation()
    assert cost_of(session.ask(typed)) is None


def test_the_fix_on_the_plate_does_what_it_says(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("only sweet red with oysters")
    line = next(x for x in answer.text.splitlines() if x.startswith("On the plate"))
    assert "a knob of butter" in line
    wine = answer.picks[0].label
    session.new_conversation()
    assert session.ask(f"does {wine} go with oysters and butter").verdict in line


@pytest.mark.parametrize("typed", ["no reds with ribeye steak", "no whites with the duck please"])
def test_a_ban_with_a_dish_and_nothing_asked_asks_for_a_wine(session: Session, typed: str) -> None:
    session.new_conversation()
    answer = session.ask(typed)
    assert answer.intent == "wines-for-food"
    banned = "red" if "reds" in typed else "white"
    assert all(item.wine and item.wine["colour"] != banned for item in answer.picks)


def test_a_reason_asked_for_is_given(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("why no red with fish")
    assert answer.intent == "why-not"
    assert answer.understood


@pytest.mark.parametrize("typed", ["forget the limit", "drop that limit", "any colour"])
def test_a_limit_taken_off_late_keeps_the_dish_that_stands(session: Session, typed: str) -> None:
    session.new_conversation()
    for line in ("steak", "what about a red?", "and the salmon?"):
        session.ask(line)
    answer = session.ask(typed)
    assert "Limit" not in answer.text
    assert "Still with salmon" in answer.text


def test_going_back_still_answers_the_turn_before(session: Session) -> None:
    session.new_conversation()
    for line in ("steak", "what about a red?", "and the salmon?"):
        session.ask(line)
    assert "Still with steak" in session.ask("go back").text
