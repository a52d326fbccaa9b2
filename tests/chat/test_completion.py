"""Completion: tonight's names first, then the world's, each with what it is."""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import Future

import pytest
from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.document import Document

from assistant.chat.completion import MOST, NameCompleter
from assistant.chat.words import chat_words
from assistant.session import Session


def completed(text: str, session: Session | Exception | None) -> list[tuple[str, str]]:
    """Completions of a text, with what each is."""
    future: Future[Session] = Future()
    if isinstance(session, Exception):
        future.set_exception(session)
    elif session is not None:
        future.set_result(session)
    found = NameCompleter(future, chat_words()).get_completions(Document(text), CompleteEvent())
    return [(c.text, c.display_meta_text) for c in found]


@pytest.fixture
def table(conversation: Session) -> Iterator[Session]:
    conversation.ask("got a Syrah, an off-dry Riesling, garlic cheddar and some brie")
    yield conversation
    conversation.new_conversation()


def test_tonights_come_first_then_the_worlds(table: Session) -> None:
    found = completed("what goes with bri", table)
    assert found[0] == ("Brie", "food, tonight")
    assert ("Brie de Meaux", "food") in found
    assert [label for label, _ in found].count("Brie") == 1


def test_tonights_are_found_by_any_of_their_words(table: Session) -> None:
    assert ("garlic cheddar", "food, tonight") in completed("the che", table)
    assert completed("the riesl", table)[0] == ("off-dry Riesling", "wine, tonight")


def test_behind_a_space_and_on_an_empty_line_only_tonights_are_offered(table: Session) -> None:
    tonight = {"Syrah", "off-dry Riesling", "garlic cheddar", "Brie"}
    assert {label for label, _ in completed("what goes with ", table)} == tonight
    assert {label for label, _ in completed("", table)} == tonight


def test_without_a_table_the_world_is_offered(conversation: Session) -> None:
    assert completed("", conversation) == []
    assert ("Malbec", "wine") in completed("does malb", conversation)


def test_names_of_several_words_are_completed_whole(conversation: Session) -> None:
    assert completed("what goes with garlic che", conversation)[0][0] == "garlic cheddar"


def test_topics_of_help_are_offered(conversation: Session) -> None:
    assert ("pouring", "help") in completed("help po", conversation)


def test_there_are_never_too_many(conversation: Session) -> None:
    assert len(completed("ch", conversation)) == MOST


def test_until_all_is_loaded_and_where_it_failed_nothing_is_offered() -> None:
    assert completed("bri", None) == []
    assert completed("bri", OSError("gone")) == []
