"""Evenings kept by name and loaded again: nothing that was said is lost on the way."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
import tomli_w

from assistant.evening import kept
from assistant.evening.by_talk import evening_of
from assistant.evening.keep_by_talk import with_reserve
from assistant.evening.read import read_evening
from assistant.evening.table import set_table
from assistant.knowledge.problems import KnowledgeError
from assistant.session import Session
from assistant.table.tonight import Tonight

DEMO = Path(__file__).parents[2] / "corpus" / "evenings" / "quay-house.toml"


@pytest.fixture
def laid(session: Session) -> Iterator[Session]:
    """A session whose table is cleared behind the test."""
    session.new_conversation()
    yield session
    session.lay(Tonight())
    session.new_conversation()


def test_all_that_a_file_says_is_kept_under_a_name(laid: Session, tmp_path: Path) -> None:
    set_table(laid, DEMO)
    laid.new_conversation()
    file = tmp_path / "again.toml"
    evening = with_reserve(evening_of(laid._context(laid.read("what goes with what"))), laid.tonight)
    file.write_text(tomli_w.dumps(kept.tables(evening, "again")), "utf-8")
    again = read_evening(file, laid)
    before = read_evening(DEMO, laid)
    assert again.problems == ()
    for name in ("foods", "budget", "currency", "pour_ml", "guests", "choose"):
        assert getattr(again, name) == getattr(before, name), name
    assert set(again.wines) == set(before.wines)
    assert {line.wine for line in again.wines[:4]} == set(laid.tonight.wines)
    assert [(n.guest, n.needs) for n in again.needs] == [(n.guest, n.needs) for n in before.needs]


def test_an_evening_that_is_not_all_said_yet_is_loaded(laid: Session, tmp_path: Path) -> None:
    file = tmp_path / "half.toml"
    file.write_text('title = "Half"\nguests = 8\nwines = []\n[[foods]]\nlabel = "brie"\n', "utf-8")
    set_table(laid, file)
    assert [dish.main.food for dish in laid.tonight.dishes] == ["food/brie"]


@pytest.mark.parametrize("text", ['title = "Empty"\nwines = []\n', "guests = 8\nwines = 3\n"])
def test_a_file_that_says_nothing_or_what_is_no_list_is_refused(
    laid: Session, tmp_path: Path, text: str
) -> None:
    file = tmp_path / "bad.toml"
    file.write_text(text, "utf-8")
    with pytest.raises(KnowledgeError):
        set_table(laid, file)
