"""The first five minutes: three things to try, and after three questions one hint, once for ever."""

from __future__ import annotations

from pathlib import Path

from assistant.chat.history import entries
from assistant.chat.words import ChatWords

HINT_AFTER = 3
MARK = "hint-given"


def greeting(folder: Path, table: bool, words: ChatWords) -> str:
    """Three things to try for whoever has typed nothing yet; empty for everybody else."""
    if entries(folder / "history") or (folder / MARK).exists():
        return ""
    tries = words.tries("table" if table else "open")
    return "\n".join([words("said", "first"), *(f"  {one}" for one in tries), words("said", "first-end")])


def hint(folder: Path, asked: int, words: ChatWords) -> str:
    """What else there is, once so many questions were asked; empty where it was told before.

    Where it cannot be marked as told it is not told at all, so that nobody hears it twice.
    """
    if asked < HINT_AFTER:
        return ""
    try:
        (folder / MARK).touch(mode=0o600, exist_ok=False)
    except OSError:
        return ""
    return words("said", "hint")
