"""What is wrong with evening files, for `goeswith check`."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

from assistant.evening.care import care
from assistant.evening.numbers import care_problems
from assistant.evening.read import read_evening
from assistant.evening.selecting import select
from assistant.evening.tasting import taste
from assistant.knowledge.problems import KnowledgeError, Problem
from assistant.session import Session


def evening_problems(files: Sequence[Path], session: Session, now: datetime) -> tuple[Problem, ...]:
    """Everything a plan of each file would name. Raises KnowledgeError for all that cannot be read."""
    found: list[Problem] = []
    unreadable: list[Problem] = []
    for file in files:
        try:
            found += _problems(file, session, now)
        except KnowledgeError as error:
            unreadable += error.problems
    if unreadable:
        raise KnowledgeError(unreadable)
    return tuple(found)


def _problems(file: Path, session: Session, now: datetime) -> list[Problem]:
    evening = read_evening(file, session, now)
    selection = select(evening, taste(evening, session.engine), session.engine)
    return [*evening.problems, *selection.problems, *care_problems(evening, care(evening, session))]
