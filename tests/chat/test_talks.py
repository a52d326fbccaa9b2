"""Talks are said today as they are written, and what the chat saves can be read back."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.chat.saving import file_named, save_talk
from assistant.chat.talk_file import TalkText, Turn, read, written
from assistant.chat.words import chat_words
from assistant.session import Session
from tests.chat.replay import said, talks

TURNS = (Turn("what goes with brie", "Demi-sec.", "About equal: two.\n  deeper"), Turn("why", "It cuts."))


@pytest.mark.parametrize("file", talks(), ids=lambda file: file.stem)
def test_a_talk_is_said_as_it_is_written(session: Session, file: Path) -> None:
    talk = read(file.read_text("utf-8"))
    assert len(talk.turns) > 4
    assert said(session, talk) == talk.turns


def test_there_are_talks() -> None:
    assert len(talks()) >= 5


def test_a_talk_written_is_read_back() -> None:
    found = read(written(TURNS, "an evening.toml"))
    assert found == TalkText(tuple(Turn(t.asked, t.said) for t in TURNS), "an evening.toml")


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ("said without a question", "line 1"),
        ("> asked\n> asked again\nsaid", "line 2"),
        ("> asked\nsaid\nsaid again", "line 3"),
        ("> asked", "“asked”"),
    ],
)
def test_what_is_no_talk_is_told_with_its_line(text: str, where: str) -> None:
    with pytest.raises(ValueError, match=where):
        read(text)


@pytest.mark.parametrize(
    ("line", "file"),
    [
        ("save this talk to friday.txt", "friday.txt"),
        ("Save our talk as ~/My Talks/Friday one.txt", "~/My Talks/Friday one.txt"),
        ('save the conversation in file "a b.txt"', "a b.txt"),
        ("save this talk", ""),
        ("save this talk.", ""),
        ("save this talkative guest", None),
        ("save it as Friday", None),
        ("what goes with brie", None),
    ],
)
def test_which_lines_save_the_talk(line: str, file: str | None) -> None:
    assert file_named(line, chat_words()) == file


def test_a_saved_talk_is_whole_and_private(tmp_path: Path) -> None:
    file = tmp_path / "talk.txt"
    told = save_talk(str(file), TURNS, None, chat_words())
    assert str(file) in told
    assert file.read_text("utf-8") == written(TURNS)
    assert file.stat().st_mode & 0o077 == 0


def test_lines_that_began_with_a_space_stay_out_and_that_is_told(tmp_path: Path) -> None:
    file = tmp_path / "talk.txt"
    told = save_talk(str(file), [*TURNS, Turn(" a secret", "Said.")], None, chat_words())
    assert "secret" not in file.read_text("utf-8")
    assert chat_words()("said", "private", count=1) in told


def test_a_file_that_is_there_stays_as_it_is(tmp_path: Path) -> None:
    file = tmp_path / "talk.txt"
    file.write_text("mine", "utf-8")
    assert "stays as it is" in save_talk(str(file), TURNS, None, chat_words())
    assert file.read_text("utf-8") == "mine"


@pytest.mark.parametrize("named", ["nowhere/talk.txt", "x" * 300, "a\0b"])
def test_a_talk_that_cannot_be_saved_is_told_with_what_to_do(tmp_path: Path, named: str) -> None:
    told = save_talk(str(tmp_path / named), TURNS, None, chat_words())
    assert "nothing was saved" in told
    assert list(tmp_path.iterdir()) == []


def test_nothing_asked_or_no_file_named_says_what_to_do(tmp_path: Path) -> None:
    words = chat_words()
    assert save_talk(str(tmp_path / "talk.txt"), (), None, words) == words("said", "nothing-yet")
    assert save_talk("", TURNS, None, words) == words("said", "which-file")
