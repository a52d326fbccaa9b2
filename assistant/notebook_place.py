"""Where the notebook lies. Nothing here makes a file or a folder.

It stands outside the notebook, all of which the chat would else load before its prompt is drawn.
"""

from __future__ import annotations

from pathlib import Path

import platformdirs


def folder() -> Path:
    """The data folder of this user."""
    return Path(platformdirs.user_data_dir("goeswith", appauthor=False))


def place(override: Path | None = None) -> Path:
    """The notebook's file: the one named, or else `notebook.ttl` in the user's data folder."""
    return override or folder() / "notebook.ttl"


def log_place(override: Path | None = None) -> Path:
    """The log of answers: the file named, or else `answers.jsonl` in the user's data folder."""
    return override or folder() / "answers.jsonl"


def log_beside(notebook: Path) -> Path:
    """The log of answers that goes with a notebook: beside it, that of the user's own in its usual place."""
    return log_place() if notebook == place() else notebook.with_name(f"{notebook.stem}-answers.jsonl")
