"""A session with what the options name: notebook, list of bottles, evening."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from assistant.notebook import Notebook
    from assistant.session import Session


def session_with(
    top: int, evening: Path | None = None, notebook: Path | None = None, bottles: Path | None = None
) -> Session:
    """A session, with the evening's wines and foods on the table, a notebook and a list of bottles.

    Raises KnowledgeError for a bad evening file or list.
    """
    from assistant.knowledge.collector import loading

    with loading():
        from assistant.session import Session

        session = Session(top=top, notebook=opened(notebook))
    return laid(session, evening, bottles)


def laid(session: Session, evening: Path | None, bottles: Path | None) -> Session:
    """The session with a list of bottles and an evening laid on. Raises KnowledgeError for a bad file."""
    if bottles is not None:
        from assistant.stock.opening import open_list

        open_list(session, bottles)
    if evening is not None:
        from assistant.evening.table import set_table

        set_table(session, evening)
    return session


def noting(session: Session, notebook: Path | None) -> Session:
    """The session with its answers noted in the log beside the notebook; without one nothing is written."""
    if notebook is not None:
        from assistant.notebook import log_beside
        from assistant.rehearse.noting import AnswerLog

        session.log = AnswerLog(log_beside(notebook), session.wording)
    return session


def opened(file: Path | None) -> Notebook | None:
    """The notebook in a file; of a damaged one what is sound, after one sentence on standard error."""
    if file is None:
        return None
    from assistant.answers.sanitise import safe
    from assistant.knowledge.check_report import sentence
    from assistant.notebook import load

    notebook = load(file)
    if notebook.problems:
        kept = f"{len(notebook.statements)} sound statements are used"
        print(f"goeswith: {safe(sentence(notebook.problems[0])).rstrip('.')} ({kept}).", file=sys.stderr)
    return notebook
