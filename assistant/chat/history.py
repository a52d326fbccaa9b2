"""What was typed, kept for the next chat in a file of the user's own.

A line that begins with a space is not kept, and neither is a question of health or safety: it would tell
the next one at the keyboard who is pregnant. Two chats at once may write: each line goes in under a lock.
"""

from __future__ import annotations

import os
from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path

from prompt_toolkit.history import History

from assistant.answers.sanitise import safe

PRIVATE, OWN_FOLDER = 0o600, 0o700
PATIENCE = 2.0  # seconds to wait for another chat; then the line is kept for this chat only
LARGEST, ENTRIES_KEPT = 262_144, 1_000


class OwnHistory(History):
    """Lines typed: in memory at once, in the file (where there is one) when `keep` is told to."""

    def __init__(self, file: Path | None) -> None:
        super().__init__()
        self._file = file
        self._last = ""

    def load_history_strings(self) -> Iterable[str]:
        """What the file holds, newest first."""
        return [safe(line) for line in reversed(entries(self._file))] if self._file else ()

    def append_string(self, string: str) -> None:
        """Keeps a line for this chat, unless it begins with a space."""
        if not string.startswith(" "):
            super().append_string(string)

    def store_string(self, string: str) -> None:
        """Nothing yet: whether a line may go into the file is known once it is answered."""

    def keep(self, line: str) -> None:
        """Puts a line into the file, unless it begins with a space or was the last one."""
        if self._file is None or line.startswith(" ") or line in ("", self._last):
            return
        self._last = line
        with suppress(OSError):
            _add(self._file, line)


def own_history(folder: Path) -> OwnHistory:
    """The history in a folder of the user's own; in memory where none can be kept."""
    file = folder / "history"
    try:
        folder.mkdir(mode=OWN_FOLDER, parents=True, exist_ok=True)
        file.touch(mode=PRIVATE, exist_ok=True)
        if not file.is_file():  # a pipe or a device in its place would hang the chat
            return OwnHistory(None)
        if os.name != "nt" and file.stat().st_mode & 0o077:
            file.chmod(PRIVATE)
    except OSError:
        return OwnHistory(None)
    return OwnHistory(file)


def entries(file: Path) -> list[str]:
    """What was typed, oldest first. An entry is a run of lines that start with `+`; the rest are remarks."""
    try:
        text = file.read_text("utf-8", errors="replace")
    except OSError:
        return []
    found: list[list[str]] = [[]]
    for line in text.split("\n"):
        if line.startswith("+"):
            found[-1].append(line[1:])
        elif found[-1]:
            found.append([])
    return ["\n".join(entry) for entry in found if entry]


def _add(file: Path, line: str) -> None:
    from assistant.notebook.disk import held

    with held(file, PATIENCE):
        if file.stat().st_size > LARGEST:
            _shorten(file)
        handle = os.open(file, os.O_WRONLY | os.O_APPEND | os.O_CREAT, PRIVATE)
        with os.fdopen(handle, "ab") as out:
            out.write(_written(safe(line)))


def _shorten(file: Path) -> None:
    """Only the newest entries stay."""
    from assistant.notebook.disk import write_whole

    write_whole(file, b"".join(map(_written, entries(file)[-ENTRIES_KEPT:])))


def _written(line: str) -> bytes:
    return ("\n" + "".join(f"+{part}\n" for part in line.split("\n"))).encode("utf-8", "replace")
