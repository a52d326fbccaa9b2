"""A broken language file is told in one sentence with exit code 2, whenever it is met."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from assistant import cli, put_right
from assistant.answers import help, wording
from assistant.knowledge.files import corpus_dir
from assistant.knowledge.problems import KnowledgeError
from assistant.language import (
    clock,
    cooked_with,
    counting,
    eating,
    follow_lines,
    follow_words,
    guests,
    made_of,
    parse,
    preferences,
    profile,
    quantities,
    senses,
    small_words,
    smells,
    twins,
)
from assistant.rehearse import words as rehearsing
from assistant.table import numbered, pointed
from assistant.taught import words

READERS = (
    wording,
    help,
    parse,
    small_words,
    counting,
    follow_words,
    follow_lines,
    eating,
    profile,
    quantities,
    senses,
    cooked_with,
    made_of,
    guests,
    words,
    rehearsing,
    clock,
    numbered,
    pointed,
    smells,
    twins,
    put_right,
)
KEPT = (
    made_of.heads,
    help.help_texts,
    small_words.small_words,
    counting.counted_words,
    follow_words.follow_words,
    follow_lines.follow_lines,
    eating.eating_words,
    profile.profile_words,
    quantities.quantity_words,
    guests.guest_words,
    words.taught_words,
    rehearsing.rehearse_words,
    clock.clock_words,
    numbered.number_patterns,
    pointed.pointed_patterns,
    smells.smell_words,
    put_right.right_words,
)
# What is read only by the chat itself: tests/chat looks after it.
OF_THE_CHAT = "chat.toml"
LANGUAGE = sorted(f.name for f in (corpus_dir() / "language").iterdir() if f.name != OF_THE_CHAT)
LATE = {"help.toml": "help", "clock.toml": "brie out since 7, it is 10 now"}
WHOLE = [name for name in LANGUAGE if name.endswith(".toml")]

MAY_BE_EMPTY = ("roles.toml", "cues.toml", "word-classes.toml")


@pytest.fixture
def corpus(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the corpus that the program reads instead of its own; returns its language folder."""
    shutil.copytree(corpus_dir() / "language", tmp_path / "language")
    for module in READERS:
        monkeypatch.setattr(module, "corpus_dir", lambda: tmp_path)
    read_anew()
    monkeypatch.setattr(preferences, "_alcohol_patterns", preferences._alcohol_patterns.__wrapped__)
    return tmp_path / "language"


def read_anew() -> None:
    """Forgets what was read of the language files."""
    for kept in KEPT:
        kept.cache_clear()


def complaint(capsys: pytest.CaptureFixture[str], name: str) -> str:
    """What `ask` says, and that it says it in one line with exit code 2."""
    try:
        question = LATE.get(name, "what goes with brie, no oaky reds under 13%")
        assert cli.main(["ask", question]) == cli.WRONG_USAGE
    finally:
        read_anew()
    shown = capsys.readouterr()
    assert shown.out == ""
    assert shown.err.count("\n") == 1
    return shown.err


@pytest.mark.parametrize("name", LANGUAGE)
def test_a_missing_file(corpus: Path, capsys: pytest.CaptureFixture[str], name: str) -> None:
    (corpus / name).unlink()
    assert f"language/{name}: cannot be read" in complaint(capsys, name)


@pytest.mark.parametrize("name", WHOLE)
def test_a_file_that_is_no_toml(corpus: Path, capsys: pytest.CaptureFixture[str], name: str) -> None:
    (corpus / name).write_text("lines = [", "utf-8")
    assert f"language/{name}: cannot be understood" in complaint(capsys, name)


@pytest.mark.parametrize("name", [n for n in WHOLE if n not in MAY_BE_EMPTY])
def test_a_file_that_lacks_everything(corpus: Path, capsys: pytest.CaptureFixture[str], name: str) -> None:
    (corpus / name).write_text("", "utf-8")
    assert f"language/{name}: has no" in complaint(capsys, name)


def test_a_template_that_asks_for_what_is_not_there(tmp_path: Path) -> None:
    file = tmp_path / "wording.toml"
    file.write_text('[say]\npick = "{wine} with {moon}"\n', "utf-8")
    with pytest.raises(KnowledgeError, match="has no 'moon'"):
        wording.Wording(file)("say", "pick", wine="Barolo")
