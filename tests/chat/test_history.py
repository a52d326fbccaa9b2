"""The history: its owner's only, whole though two chats write, and silent about health."""

from __future__ import annotations

import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from subprocess import run

import pytest

from assistant.chat import history as kept
from assistant.chat.history import entries, own_history
from assistant.session import Session

WRITER = """
import sys
from pathlib import Path
from assistant.chat.history import own_history
history = own_history(Path(sys.argv[1]))
for number in range(60):
    history.keep(f"chat {sys.argv[2]} line {number}\\nwith a second line")
"""


def test_what_is_kept_is_read_back_newest_first(tmp_path: Path) -> None:
    history = own_history(tmp_path)
    for line in ("brie", "two\nlines", "what goes with crème brûlée"):
        history.append_string(line)
        history.keep(line)
    assert list(own_history(tmp_path).load_history_strings()) == [
        "what goes with crème brûlée",
        "two\nlines",
        "brie",
    ]


def test_two_chats_at_once_lose_and_mix_nothing(tmp_path: Path) -> None:
    def write(name: str) -> int:
        return run([sys.executable, "-c", WRITER, str(tmp_path), name], check=True).returncode

    with ThreadPoolExecutor(2) as pool:
        assert list(pool.map(write, "ab")) == [0, 0]
    wanted = {f"chat {name} line {n}\nwith a second line" for name in "ab" for n in range(60)}
    found = entries(tmp_path / "history")
    assert set(found) == wanted
    assert len(found) == len(wanted)


def test_a_line_that_begins_with_a_space_is_kept_nowhere(tmp_path: Path) -> None:
    history = own_history(tmp_path)
    history.append_string(" secret")
    history.keep(" secret")
    assert history.get_strings() == []
    assert entries(tmp_path / "history") == []


@pytest.mark.parametrize(
    ("line", "private"),
    [
        ("I'm pregnant, is the brie safe?", True),
        ("someone is allergic to nuts", True),
        ("can I drive after four glasses", True),
        ("what goes with brie", False),
        ("vegetarian food for Syrah", False),
        ("how many bottles for 12, five wines", False),
        ("Priya just told me she is expecting", True),
        ("Bob doesnt drink", True),
        ("Tim is an alcoholic", True),
        ("what goes with brie? and Jo is allergic to nuts", True),
    ],
)
def test_what_tells_of_health_is_private(conversation: Session, line: str, private: bool) -> None:
    assert conversation.ask(line).private is private


def test_what_goes_on_about_a_guest_with_needs_is_private(conversation: Session) -> None:
    conversation.ask("Jo is allergic to nuts")
    assert all(conversation.ask(line).private for line in ("what can she have", "and the almonds?"))


@pytest.mark.skipif(sys.platform == "win32", reason="modes are a matter of POSIX")
def test_the_file_is_its_owners_only_even_if_it_was_not(tmp_path: Path) -> None:
    file = tmp_path / "history"
    file.write_text("\n+brie\n", "utf-8")
    file.chmod(0o644)
    own_history(tmp_path)
    assert file.stat().st_mode & 0o777 == 0o600


def test_a_history_that_grew_too_long_keeps_its_newest(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(kept, "LARGEST", 200)
    monkeypatch.setattr(kept, "ENTRIES_KEPT", 5)
    history = own_history(tmp_path)
    for number in range(200):
        history.keep(f"line {number}")
    found = entries(tmp_path / "history")
    assert found[-1] == "line 199"
    assert found == [f"line {n}" for n in range(200 - len(found), 200)]
    assert len(found) < 40
    assert (tmp_path / "history").stat().st_mode & 0o077 == 0


def test_a_damaged_file_is_no_hindrance(tmp_path: Path) -> None:
    (tmp_path / "history").write_bytes(b"\xff\xfe\0nonsense\n+brie\n+\xff\n")
    history = own_history(tmp_path)
    history.keep("cheddar")
    assert entries(tmp_path / "history")[-1] == "cheddar"


def test_where_no_file_can_be_kept_it_is_kept_in_memory(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder", "utf-8")
    history = own_history(tmp_path / "file")
    history.append_string("brie")
    history.keep("brie")
    assert history.get_strings() == ["brie"]
