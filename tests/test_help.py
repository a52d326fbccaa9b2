"""Help: every topic is found by each of its words, and what it tells to try is answered."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.answers.help import Topic, topics
from assistant.answers.wording import MAX_SPOKEN_WORDS
from assistant.chat.saving import file_named
from assistant.chat.words import chat_words
from assistant.evening.table import set_table
from assistant.knowledge.files import corpus_dir
from assistant.notebook import load
from assistant.session import Session
from assistant.table.tonight import Tonight

WHOLE = "Ask me what goes with any food or wine."
by_name = pytest.mark.parametrize("topic", topics(), ids=lambda topic: topic.words[0])


@by_name
@pytest.mark.parametrize("before", ["", "what goes with brie"])
def test_a_topic_is_found_by_each_of_its_words(conversation: Session, topic: Topic, before: str) -> None:
    for word in topic.words:
        conversation.new_conversation()
        if before:
            conversation.ask(before)
        answer = conversation.ask(f"help {word}")
        assert answer.say == topic.say, word
        assert answer.understood
        assert not answer.left_out


@by_name
def test_what_it_tells_to_try_is_answered(topic: Topic, tmp_path: Path) -> None:
    session = Session(notebook=load(tmp_path / "notebook.ttl"))
    set_table(session, corpus_dir() / "evenings" / "quay-house.toml")
    for question in topic.tries:
        if file_named(question, chat_words()) is None:
            assert session.ask(question).understood, question
    session.lay(Tonight())


@by_name
def test_it_can_be_said_aloud(topic: Topic) -> None:
    assert len(topic.say.split()) <= MAX_SPOKEN_WORDS
    assert topic.say.endswith(".")
    assert topic.text
    assert topic.tries


def test_no_two_topics_answer_to_the_same_word() -> None:
    stems = [phrase for topic in topics() for phrase in set(topic.stems)]
    assert len(stems) == len(set(stems))


@pytest.mark.parametrize("question", ["what can you do about diets", "help with the notebook please"])
def test_they_are_found_in_the_middle_of_a_talk(conversation: Session, question: str) -> None:
    conversation.ask("what goes with brie")
    assert conversation.ask(question).intent == "help"


def test_help_alone_names_the_topics(conversation: Session) -> None:
    answer = conversation.ask("help")
    assert answer.say == WHOLE
    assert all(topic.words[0] in answer.text for topic in topics())


@pytest.mark.parametrize(
    ("question", "name"),
    [
        ("what can you do about diets", "diets"),
        ("help with the notebook please", "teaching"),
        ("help me with pouring", "pouring"),
        ("do you need the internet", "privacy"),
        ("help me get out", "keys"),
        ("do i type it or talk to you", "typing"),
        ("do you do quantities as well or just matching", "pairing"),
    ],
)
def test_topics_are_found_in_plain_words(conversation: Session, question: str, name: str) -> None:
    said = {topic.words[0]: topic.say for topic in topics()}
    assert conversation.ask(question).say == said[name]


@pytest.mark.parametrize(
    ("question", "intent"),
    [
        ("help me choose wines for brie", "wines-for-food"),
        ("help, the cork broke", "trouble"),
        ("help me please", "help"),
    ],
)
def test_a_question_that_begins_with_help_is_answered_itself(
    conversation: Session, question: str, intent: str
) -> None:
    assert conversation.ask(question).intent == intent


def test_what_stood_before_help_stands_on(conversation: Session) -> None:
    conversation.ask("what goes with garlic cheddar")
    conversation.ask("help pouring")
    assert "garlic cheddar" in conversation.ask("what about a white").text


def test_why_with_nothing_to_explain_says_what_to_do(conversation: Session) -> None:
    answer = conversation.ask("why")
    assert not answer.understood
    assert answer.say == conversation.wording("missing", "why")
