"""The questions of tonight's table: a line that can be said in a breath, and what of it is contested."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from assistant.evening.facts import fact
from assistant.notebook import Entry, note_answer
from assistant.session import Session
from tests.taught.told import Talk

WINES = "a brut sparkling, an off-dry Riesling, a Pinot Noir and a Malbec"
TABLE = f"got {WINES}, garlic cheddar, brie, salami, oysters"
AGAINST = "i always do brie with Malbec and people hate it, remember that"
ASKED = [
    "rehearse",
    "what will they ask",
    "what will they ask me tonight",
    "quiz me",
    "practise tonight",
    "practice tonight",
    "what are the hard questions",
    "what questions should i expect",
    "what will my guests ask",
]


@pytest.fixture
def laid(talk: Talk) -> Session:
    """A conversation with a table."""
    opened = talk()
    assert opened.ask(TABLE).understood
    return opened


@pytest.mark.parametrize("said", ASKED)
def test_it_is_asked_for_in_many_ways(laid: Session, said: str) -> None:
    answer = laid.ask(said)
    assert (answer.intent, answer.understood) == ("plan", True)
    assert len(answer.expected) >= 8
    assert answer.say.startswith(f"{len(answer.expected)} questions to expect")


@pytest.mark.parametrize("said", ASKED[:3])
def test_without_a_table_it_is_asked_for(talk: Talk, said: str) -> None:
    answer = talk().ask(said)
    assert (answer.understood, answer.expected) == (False, ())
    assert answer.clarify


def test_each_line_is_said_in_some_twenty_seconds(laid: Session) -> None:
    laid.ask(AGAINST)
    most = fact("rehearse", "rehearsal", "words").high
    expected = laid.ask("rehearse").expected
    assert all(0 < one["words"] <= most for one in expected)
    assert all(one["words"] == len(one["line"].split()) for one in expected)
    assert not any(".." in one["line"] for one in expected)


def test_each_food_is_asked_for_with_the_wine_that_is_best(laid: Session) -> None:
    lines = {one["question"]: one["line"] for one in laid.ask("rehearse").expected}
    for food in ("garlic cheddar", "Brie", "salami"):
        best = laid.ask(f"which of these for the {food}").picks[0].label
        assert best.lower() in lines[f"What goes with the {food}?"].lower()


def test_what_clashes_is_asked_for_with_a_way_out(laid: Session) -> None:
    (one, *_) = [e for e in laid.ask("rehearse").expected if e["kind"] == "clash"]
    assert one["question"] == "Why not Malbec with the oyster?"
    assert laid.ask("does malbec go with oysters").verdict in one["line"]
    assert "Pour brut sparkling instead." in one["line"]


def test_every_sort_has_its_question(laid: Session) -> None:
    laid.ask("jo is allergic to nuts")
    laid.ask("park that question about smoke")
    kinds = {one["kind"] for one in laid.ask("rehearse").expected}
    assert kinds == {"clash", "myth", "best", "order", "diet", "trouble", "parked"}


def test_the_guest_with_a_need_is_named(laid: Session) -> None:
    laid.ask("jo is allergic to shellfish")
    (one,) = [e for e in laid.ask("rehearse").expected if e["kind"] == "diet"]
    assert one["question"] == "What may Jo have (allergic to shellfish)?"
    assert "oyster" in one["line"].split("May have")[0]


def test_where_book_and_host_differ_it_is_flagged_first(laid: Session) -> None:
    laid.ask(AGAINST)
    one = laid.ask("rehearse").expected[0]
    assert (one["kind"], one["question"]) == ("host", "Malbec with the Brie: who is right, you or the book?")
    assert one["line"].startswith("Brie with Malbec: the book says fair, I say poor.")
    assert "two steps apart" in one["contested"][0]
    laid.ask("my word first")
    assert (
        laid.ask("rehearse")
        .expected[0]["line"]
        .startswith("Brie with Malbec: I say poor, the book says fair.")
    )


def test_a_claim_on_tonights_foods_is_flagged(laid: Session) -> None:
    claims = [e for e in laid.ask("rehearse").expected if e["kind"] == "myth"]
    assert claims
    assert all("A popular claim" in e["contested"][0] for e in claims)


def test_what_was_answered_otherwise_before_is_told(laid: Session, log: Path) -> None:
    then = datetime.now().astimezone() - timedelta(days=30)
    past = Entry(
        then,
        "does brut sparkling go with salami",
        "judge-pair",
        ("wine/brut-sparkling", "food/salami"),
        "poor",
    )
    same = Entry(then, "does malbec go with oysters", "judge-pair", ("wine/malbec", "food/oyster"), "clash")
    assert not note_answer(past, log)
    assert not note_answer(same, log)
    text = laid.ask("rehearse").text
    now = laid.ask("does brut sparkling go with salami").verdict
    assert f"On {then.day} {then:%B} I said poor of salami with brut sparkling; now I say {now}." in text
    assert "of oyster with Malbec" not in text


def test_what_hosts_say_against_one_another_is_told_there_and_never_live(laid: Session) -> None:
    laid.ask(AGAINST)
    live = laid.ask("i always do brie with Malbec and people love it, remember that").text
    assert "is told" not in live
    told = laid.ask("rehearse").text
    assert "Malbec and Brie: you said poor" in told or "Brie and Malbec: you said poor" in told


def test_safety_stays_safety(laid: Session) -> None:
    assert laid.ask("what will they ask if i am pregnant").intent == "safety"
