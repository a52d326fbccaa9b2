"""The history file of the chat holds nothing that steers a terminal, and never ends a conversation."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from assistant.chat.history import OwnHistory, own_history
from tests.safety.test_places import apart, no_larger
from tests.safety.tricks import TRICKS, slipped


def test_no_trick_is_kept_or_shown_again(tmp_path: Path) -> None:
    file = tmp_path / "history"
    file.touch()
    history = OwnHistory(file)
    for trick in TRICKS.values():
        history.keep(f"what goes with {trick}")
    assert slipped(file.read_text("utf-8").replace("\n", " ")) == []
    with file.open("ab") as out:
        out.write("\n# now\n+brie \x1b[2J\u202e\n".encode())
    assert [
        line for line in OwnHistory(file).load_history_strings() if slipped(line.replace("\n", " "))
    ] == []


def test_full_disk_keeps_the_old_lines(tmp_path: Path) -> None:
    file = tmp_path / "history"
    file.touch()
    OwnHistory(file).keep("brie")
    before = file.read_bytes()

    def work() -> bool:
        no_larger(len(before))
        OwnHistory(file).keep("stilton")
        return True

    assert apart(work)
    assert file.read_bytes() == before


@pytest.mark.parametrize("kind", ["directory", "pipe", "device", "file for a folder"])
def test_what_is_no_plain_file_is_left_alone(tmp_path: Path, kind: str) -> None:
    file = tmp_path / "goeswith" / "history"
    if kind == "file for a folder":
        file.parent.write_bytes(b"old")
    else:
        file.parent.mkdir()
        {
            "directory": file.mkdir,
            "pipe": lambda: os.mkfifo(file),
            "device": lambda: file.symlink_to("/dev/zero"),
        }[kind]()
    history = own_history(tmp_path / "goeswith")
    history.keep("brie")
    assert list(history.load_history_strings()) == []


def test_file_that_is_gone_or_spoilt_is_no_trouble(tmp_path: Path) -> None:
    history = OwnHistory(tmp_path / "none" / "history")
    history.keep("brie")
    assert list(history.load_history_strings()) == []
    (tmp_path / "history").write_bytes(b"\xff\xfe\n+\x00brie\n")
    list(OwnHistory(tmp_path / "history").load_history_strings())
