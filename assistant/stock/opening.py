"""Opens the list of a host for a session, and tells on standard error what was read of it."""

from __future__ import annotations

import sys
from pathlib import Path

from assistant.answers.sanitise import safe
from assistant.session import Session
from assistant.stock.reading import read_stock
from assistant.stock.report import lines_of


def open_list(session: Session, file: Path | None) -> None:
    """Gives a session the list in a file, if one is named. Raises KnowledgeError where none is in it."""
    if file is None:
        return
    session.stock = read_stock(file, session.knowledge, session.parser)
    for line in lines_of(session.stock):
        print(f"goeswith: {safe(line)}", file=sys.stderr)
