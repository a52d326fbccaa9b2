"""The history file of the chat: what is kept in it can be shown on any terminal."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress

from prompt_toolkit.history import FileHistory

from assistant.answers.sanitise import safe


class SafeHistory(FileHistory):
    """Keeps typed lines without anything that steers a terminal; a full disk ends no conversation."""

    def load_history_strings(self) -> Iterable[str]:
        """The lines kept, the newest first; none where the file cannot be read."""
        try:
            return [safe(line) for line in super().load_history_strings()]
        except OSError:
            return []

    def store_string(self, string: str) -> None:
        """Keeps a line, where it can be kept."""
        with suppress(OSError):
            super().store_string(safe(string))
