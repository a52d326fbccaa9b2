"""Writes the sheets where the host wants them: whole or not at all, and never over a file of another kind."""

from __future__ import annotations

import contextlib
import os
import stat
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from assistant.answers.sanitise import safe_line
from assistant.evening.facts import wording
from assistant.handout.words import say
from assistant.notebook.disk import UnsettledError, write_whole

ENDINGS = (".html", ".htm")
READABLE = 0o666
WRITABLE = stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH


class HandoutError(Exception):
    """The sheets cannot be written; its text is one sentence that says why and what to do."""


def target(file: Path) -> Path:
    """The file that is to be written, links followed. Raises HandoutError where it must not or cannot be."""
    try:
        place = file.resolve()
        mode = place.stat().st_mode if place.exists() else None
        folder = place.parent.is_dir()
    except (OSError, RuntimeError, ValueError) as error:
        raise HandoutError(f"{file}: this is no usable place for the handout ({_why(error)}).") from error
    for name in {file, place}:
        if name.suffix.lower() not in ENDINGS:
            raise HandoutError(f"{name}: the handout is an HTML file; give it a name that ends in .html.")
    if not folder:
        raise HandoutError(f"{file}: there is no folder {place.parent}; make it first, or name another.")
    if mode is not None:
        _refuse(file, mode)
    return place


def _refuse(file: Path, mode: int) -> None:
    """What stands there already must be a plain file that may be written."""
    if stat.S_ISDIR(mode):
        raise HandoutError(f"{file}: this is a folder; name a file in it.")
    if not stat.S_ISREG(mode):
        raise HandoutError(f"{file}: this is no plain file; name another.")
    if not mode & WRITABLE:
        raise HandoutError(f"{file}: the file that stands there is read-only; name another.")


def written(plan: Mapping[str, Any], file: Path) -> str:
    """What the host is told: the problems of the plan, and where the sheets are."""
    heading = wording()("heading", "problems")
    problems = "\n".join([heading, *(f"  {problem}" for problem in plan["problems"])])
    told = say()("page", "written", file=safe_line(str(file)))
    return f"{problems}\n\n{told}" if plan["problems"] else told


def write(place: Path, text: str) -> None:
    """Puts the text there, at once or not at all. Raises HandoutError; what stood there is then untouched."""
    try:
        with contextlib.suppress(UnsettledError):  # it is there, and can be made again
            write_whole(place, text.encode("utf-8"), _rights(place))
    except OSError as error:
        raise HandoutError(
            f"{place}: the handout cannot be written ({_why(error)}); name another place."
        ) from error


def _rights(place: Path) -> int:
    """Those of the file that stands there, else the usual ones."""
    with contextlib.suppress(OSError):
        return stat.S_IMODE(place.stat().st_mode)
    mask = os.umask(0)
    os.umask(mask)
    return READABLE & ~mask


def _why(error: Exception) -> str:
    return getattr(error, "strerror", None) or " ".join(str(error).split())
