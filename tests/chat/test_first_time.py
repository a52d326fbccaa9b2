"""The first five minutes: things to try that work, and one hint, once."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from assistant.chat.first_time import HINT_AFTER, MARK, greeting, hint
from assistant.chat.words import chat_words
from assistant.evening.table import set_table
from assistant.knowledge.files import corpus_dir
from assistant.session import Session
from assistant.table.tonight import Tonight

DEMO = corpus_dir() / "evenings" / "quay-house.toml"
WORDS = chat_words()


def test_whoever_has_typed_nothing_yet_is_told_three_things_to_try(tmp_path: Path) -> None:
    told = greeting(tmp_path, False, WORDS)
    assert all(question in told for question in WORDS.tries("open"))
    assert len(WORDS.tries("open")) == len(WORDS.tries("table")) == 3
    assert greeting(tmp_path, True, WORDS) != told


def test_nobody_is_told_twice(tmp_path: Path) -> None:
    (tmp_path / "history").write_text("\n+brie\n", "utf-8")
    assert greeting(tmp_path, False, WORDS) == ""


def test_what_is_to_be_tried_is_from_the_demo_evening_and_answered(conversation: Session) -> None:
    demo = tomllib.loads(DEMO.read_text("utf-8"))
    labels = {line["label"] for kind in ("wines", "foods") for line in demo[kind]}
    poured = {r["label"] for label in labels for r in conversation.ask(label).read_as}
    conversation.new_conversation()
    for question in WORDS.tries("open"):
        answer = conversation.ask(question)
        assert answer.understood, question
        assert {r["label"] for r in answer.read_as} <= poured
        assert not answer.left_out


def test_what_is_to_be_tried_at_a_table_is_answered(conversation: Session) -> None:
    set_table(conversation, DEMO)
    try:
        assert all(conversation.ask(question).understood for question in WORDS.tries("table"))
    finally:
        conversation.lay(Tonight())


def test_the_hint_comes_once_and_never_again(tmp_path: Path) -> None:
    assert [bool(hint(tmp_path, asked, WORDS)) for asked in range(1, 8)] == [
        asked == HINT_AFTER for asked in range(1, 8)
    ]
    assert hint(tmp_path, HINT_AFTER, WORDS) == ""
    assert (tmp_path / MARK).exists()


def test_where_it_cannot_be_marked_it_is_not_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder", "utf-8")
    assert hint(tmp_path / "file", HINT_AFTER, WORDS) == ""


@pytest.mark.parametrize("name", ["first", "first-end", "hint"])
def test_they_are_short(name: str) -> None:
    assert len(WORDS("said", name)) < 160
