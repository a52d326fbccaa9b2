"""Reads a notebook. A file that is missing is an empty notebook; a damaged one gives its sound part."""

from __future__ import annotations

import os
import stat
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from assistant.knowledge.problems import Problem
from assistant.notebook.block import block_facts
from assistant.notebook.facts import statement
from assistant.notebook.faults import faults
from assistant.notebook.sealing import KEEP, pages
from assistant.notebook.statement import Statement, cleaned
from assistant.notebook.versions import migrated, newest
from assistant.notebook_place import place

LARGEST = 50_000_000
"""The largest file that is read or written, in bytes."""
MOST_TOLD = 20
"""Problems of one file that are told one by one."""


@dataclass(frozen=True, slots=True)
class Notebook:
    """A file as it was read: its statements in the order they were made, and all that is wrong with it.

    With `problems` the file is unsound and `statements` are what of it can be trusted. `remarks` say what
    was cleaned. `version` is 0 where there is no file, `digest` the SHA-256 of a sound file and else empty.
    """

    path: Path
    statements: tuple[Statement, ...] = ()
    problems: tuple[Problem, ...] = ()
    remarks: tuple[Problem, ...] = ()
    version: int = 0
    digest: str = ""


def load(path: Path | None = None) -> Notebook:
    """Reads a notebook, the user's own by default. Makes no file and raises nothing."""
    file = place(path)
    try:
        data = read_bytes(file)
    except FileNotFoundError:
        return Notebook(file)
    except (OSError, ValueError) as error:
        return Notebook(file, problems=(unreadable(file, error),))
    return parsed(file, data)


def read_bytes(file: Path, largest: int = LARGEST) -> bytes:
    """The bytes of a plain file. Raises OSError where it is none, is too large or cannot be read."""
    handle = os.open(file, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    with os.fdopen(handle, "rb") as opened:
        if not stat.S_ISREG(os.fstat(handle).st_mode):
            raise OSError("it is no plain file")
        data = opened.read(largest + 1)
    if len(data) > largest:
        raise OSError(f"it is larger than {largest // 1_000_000} MB")
    return data


def unreadable(file: Path, error: Exception) -> Problem:
    """What to say of a file that cannot be read."""
    reason = getattr(error, "strerror", None) or str(error)
    return Problem(
        str(file),
        f"the file cannot be read ({reason}).",
        "Check its name and that it may be read; it is left as it is.",
    )


def parsed(file: Path, data: bytes) -> Notebook:
    """The notebook in these bytes."""
    found = pages(data, str(file), newest())
    told: list[Statement] = []
    problems, remarks = list(found.problems), list[Problem]()
    for line, text in found.blocks:
        one, wrong, cleanings = _read(text, found.version, str(file), line)
        told.extend(one)
        problems.extend(wrong)
        remarks.extend(cleanings)
    problems.extend(_twice(told, str(file)))
    digest = "" if problems else sha256(data).hexdigest()
    return Notebook(file, tuple(told), _few(problems), _few(remarks), found.version, digest)


_Read = tuple[Sequence[Statement], Sequence[Problem], Sequence[Problem]]


def _read(text: bytes, version: int, source: str, line: int) -> _Read:
    """A block as a statement or none, what is wrong with it and what was cleaned."""
    try:
        id, said = block_facts(text)
        said = migrated(said, version)
        raw = statement(id, said)
    except ValueError as error:
        return (), [Problem(source, f"the block from here on is no statement: {error}.", KEEP, line)], ()
    found, remarks = cleaned(raw, source, line)
    wrong = faults(found, source, line, said if found is raw else None)
    return ([] if wrong else [found]), wrong, remarks


def _twice(told: Sequence[Statement], source: str) -> list[Problem]:
    times = Counter(one.id for one in told)
    return [
        Problem(source, "this statement stands in it twice.", KEEP, None, id) for id in times if times[id] > 1
    ]


def _few(problems: Sequence[Problem]) -> tuple[Problem, ...]:
    """The first problems by line; of the others, how many there are."""
    ordered = sorted(problems, key=lambda problem: problem.line or 0)
    more = len(ordered) - MOST_TOLD
    if more <= 0:
        return tuple(ordered)
    told = ordered[:MOST_TOLD]
    last = told[-1]
    return (
        *told,
        Problem(last.source, f"there are {more} more such places.", last.remedy, ordered[MOST_TOLD].line),
    )
