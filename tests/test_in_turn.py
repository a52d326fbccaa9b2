"""Several questions in one line are answered in turn; what is left is named."""

from __future__ import annotations

import json

import pytest

from assistant.language.in_line import questions_in
from assistant.session import Session
from tests.answer_schema import faults


def asks(text: str) -> bool:
    return "wine" in text


@pytest.mark.parametrize(
    ("typed", "parts"),
    [
        ("wine for brie? and what wine for figs?", ["wine for brie?", "and what wine for figs?"]),
        ("hello. wine for brie? wine for fig? no red", ["hello. wine for brie?", "wine for fig? no red"]),
        ("wine for brie?? figs?", ["wine for brie?? figs?"]),
        ("is brie runny? and what wine for it?", ["is brie runny? and what wine for it?"]),
        ("wine for brie", ["wine for brie"]),
        ("wine for brie? wine for brie?", ["wine for brie? wine for brie?"]),
        ("", [""]),
        ("???", ["???"]),
    ],
)  # fmt: skip
def test_a_line_is_cut_only_where_each_part_asks(typed: str, parts: list[str]) -> None:
    assert questions_in(typed, asks, lambda text: False) == parts


def test_both_are_answered_and_the_last_one_stands(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("what goes with stilton? and does Malbec go with steak?")
    assert answer.intent == "wines-for-food"
    assert answer.also[0]["intent"] == "judge-pair"
    assert not faults(json.loads(json.dumps(answer.as_json())))
    assert answer.also[0]["say"] in answer.text
    assert "Malbec" in session.ask("why?").text


def test_what_may_hurt_is_told_first_and_knows_the_food(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("what goes with brie? is it safe if she is pregnant?")
    assert answer.intent == "safety"
    assert {c["id"] for c in answer.cautions} >= {
        c["id"] for c in session.ask("pregnant, is brie safe?").cautions
    }
    assert answer.also[0]["intent"] == "wines-for-food"


def test_more_than_two_leave_some_for_next(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("what goes with brie? does port go with stilton? what is tannin exactly?")
    assert answer.left_for_next == ("what is tannin exactly?",)
    assert "what is tannin exactly?" in answer.text.splitlines()[-1]


def test_a_question_with_a_remark_is_one(session: Session) -> None:
    session.new_conversation()
    assert session.ask("is malbec fine with steak? yes or no?").also == ()


@pytest.mark.parametrize(
    "typed",
    [
        "does PX go over the ice cream? and what about on the cheesecake",
        "Dave: 'does PX go over the ice cream?' and what about on the cheesecake",
        "is PX good with ice cream and how about the cheesecake",
    ],
)
def test_what_about_another_food_is_a_question_of_its_own(session: Session, typed: str) -> None:
    session.new_conversation()
    answer = session.ask(typed)
    assert "Pedro Ximénez with vanilla ice cream: " in answer.text
    assert "Pedro Ximénez with cheesecake: " in answer.text


def test_also_asks_another(session: Session) -> None:
    session.new_conversation()
    session.ask("the wines are Sancerre, red Burgundy and Oregon Pinot Noir")
    session.ask("we are seven")
    corked = "the burgundy smells like wet cardboard, what do I do"
    text = session.ask(f"{corked}, also have I got enough of the oregon for everybody").text
    assert "Corked" in text
    assert "One bottle for 7" in text


def test_who_takes_leave_is_asked_nothing(session: Session) -> None:
    assert "?" not in session.ask("ok bye thanks").text
