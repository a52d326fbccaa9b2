"""Opens the list of a host for a session, and tells on standard error what was read of it."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Sequence
from pathlib import Path

from assistant.answers.sanitise import safe
from assistant.answers.wrap import wrapped
from assistant.knowledge.problems import KnowledgeError, Problem
from assistant.session import Session
from assistant.stock.reading import read_stock
from assistant.stock.report import lines_of, more_problems


def list_problems(files: Sequence[Path], session: Session) -> tuple[Problem, ...]:
    """What is wrong with lists, for `goeswith check`. Raises KnowledgeError for all that are none."""
    found: list[Problem] = []
    unreadable: list[Problem] = []
    for file in files:
        try:
            stock = read_stock(file, session.knowledge, session.parser)
            found += [*stock.told, *more_problems(stock)]
        except KnowledgeError as error:
            unreadable += error.problems
    if unreadable:
        raise KnowledgeError(unreadable)
    return tuple(found)


def open_list(session: Session, file: Path | None) -> None:
    """Gives a session the list in a file, if one is named. Raises KnowledgeError where none is in it."""
    if file is None:
        return
    session.stock = read_stock(file, session.knowledge, session.parser)
    width = shutil.get_terminal_size().columns
    for line in lines_of(session.stock):
        told = f"goeswith: {safe(line)}"
        print(wrapped(told, width) if sys.stderr.isatty() else told, file=sys.stderr)
