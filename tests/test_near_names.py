"""A wine without figures of its own is read by its nearest neighbour, and that is said."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture(scope="module")
def session() -> Session:
    return Session()


@pytest.mark.parametrize("typed", ["Frascati", "frascatti", "Lugana"])
def test_what_stands_in_is_told(session: Session, typed: str) -> None:
    answer = session.ask(f"what can I eat with {typed}")
    assert answer.intent == "foods-for-wine"
    assert f"no figures for {typed}; going by Soave" in answer.text


def test_a_wine_of_its_own_is_read_without_a_word(session: Session) -> None:
    assert "no figures" not in session.ask("what can I eat with Soave").text
    assert "no figures" not in session.ask("what can I eat with Condrieu").text  # the same wine by its place


def test_nothing_stands_in_for_what_is_known() -> None:
    knowledge = Session().knowledge
    entries = map(knowledge.entry, knowledge.of_type("Wine", "Food"))
    near = [name for entry in entries for name in entry.get("nearLabel", ())]
    assert len(near) > 100
    assert len(near) == len({name.casefold() for name in near})
