"""An evening file as tonight's table, which answers look to first."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from assistant.evening.read import read_evening
from assistant.knowledge.problems import KnowledgeError
from assistant.session import Session
from assistant.tonight import Tonight


def set_table(session: Session, file: Path) -> None:
    """Puts the wines and foods of an evening file on the session's table.

    Raises KnowledgeError, with every problem, for a file that cannot be read or names what is not known.
    """
    evening = read_evening(file, session, datetime.now().astimezone())
    if evening.problems:
        raise KnowledgeError(list(evening.problems))
    wines = tuple(dict.fromkeys(line.wine for line in evening.wines))
    session.lay(Tonight(wines, tuple(dish for line in evening.foods for dish in line.dishes)))
