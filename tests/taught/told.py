"""What tests of teaching look at."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from assistant.notebook import Statement, load, standing
from assistant.session import Session

Talk = Callable[[], Session]


def told(file: Path) -> list[Statement]:
    """What stands in a sound notebook, withdrawals left out."""
    notebook = load(file)
    assert not notebook.problems
    return [one for one in standing(notebook.statements) if not one.withdraws]


def verdict(session: Session, question: str) -> str | None:
    """The verdict of a pair that is asked for."""
    return session.ask(question).verdict
