"""Names offered at the cursor of the chat, without a terminal."""

from __future__ import annotations

from concurrent.futures import Future

import pytest
from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.document import Document

from assistant.chat.completion import MOST, NameCompleter
from assistant.session import Session


def offered(session: Session, typed: str) -> list[tuple[str, int, str]]:
    """What is offered behind what was typed: the name, where it begins, and what it is."""
    loaded: Future[Session] = Future()
    loaded.set_result(session)
    found = NameCompleter(loaded).get_completions(Document(typed), CompleteEvent())
    return [(each.text, each.start_position, each.display_meta_text) for each in found]


def test_the_last_words_are_completed_to_names_with_what_they_are(session: Session) -> None:
    found = offered(session, "what goes with garlic ched")
    assert found[0][:2] == ("garlic cheddar", -len("garlic ched"))
    assert found[0][2]
    assert all(name.lower().startswith(("with garlic ched", "garlic ched", "ched")) for name, _, _ in found)


@pytest.mark.parametrize("typed", ["", "b", "what goes with ", "with q", "zzzz"])
def test_too_little_and_nothing_known_offer_nothing(session: Session, typed: str) -> None:
    assert offered(session, typed) == []


def test_no_name_is_offered_twice_and_never_too_many(session: Session) -> None:
    found = [name for name, _, _ in offered(session, "ch")]
    assert len(found) == len(set(found)) == MOST


def test_capitals_do_not_matter(session: Session) -> None:
    assert offered(session, "SANCER")[0][:2] == ("Sancerre", -6)


def test_nothing_is_offered_before_all_is_loaded_or_where_it_cannot_be() -> None:
    loading: Future[Session] = Future()
    broken: Future[Session] = Future()
    broken.set_exception(OSError("no such file"))
    for session in (loading, broken):
        assert list(NameCompleter(session).get_completions(Document("brie"), CompleteEvent())) == []
