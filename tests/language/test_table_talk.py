"""What stands on the table is talked about as a whole: changed, limited, poured from one bottle."""

from __future__ import annotations

import pytest

from assistant.pairing.dish import table_of
from assistant.session import Session


def test_what_is_told_of_the_table_stands(conversation: Session) -> None:
    conversation.new_conversation()
    told = conversation.ask("on the table tonight: brie, salami and a malbec")
    assert told.intent == "set-table"
    assert told.understood
    judged = conversation.ask("does it go with the brie?")
    assert judged.intent == "judge-pair"
    assert [item.id for item in judged.picks] == ["wine/malbec"]


def test_with_nothing_before_undo_says_so(conversation: Session) -> None:
    conversation.new_conversation()
    answer = conversation.ask("undo")
    assert answer.intent == "undo"
    assert not answer.understood


@pytest.mark.parametrize("question", ["why does blue cheese need sweet wine", "why is red bad with oysters"])
def test_why_asks_about_a_kind_of_wine(conversation: Session, question: str) -> None:
    conversation.new_conversation()
    answer = conversation.ask(question)
    assert answer.intent in ("why", "why-not")
    assert answer.picks
    assert answer.verdict == answer.picks[0].verdict


def test_one_bottle_says_how_it_does_with_each(conversation: Session) -> None:
    conversation.new_conversation()
    answer = conversation.ask("one bottle for sushi, burgers and Caesar salad")
    assert answer.intent == "one-bottle"
    wine = answer.picks[0].id
    for dish in conversation.parser.parse("sushi, burgers and Caesar salad").dishes:
        verdict = conversation.engine.judge(table_of([dish]), wine).verdict
        assert f"{conversation.knowledge.label(dish.main.food)} {verdict}" in answer.text


def test_a_limit_on_one_bottle_still_asks_for_one(conversation: Session) -> None:
    conversation.new_conversation()
    conversation.ask("one bottle for sushi, burgers and Caesar salad")
    limited = conversation.ask("no whites")
    assert limited.intent == "one-bottle"
    assert {item.wine["colour"] for item in limited.picks if item.wine} & {"red", "rosé", "orange"}
    assert "white" not in {item.wine["colour"] for item in limited.picks if item.wine}
