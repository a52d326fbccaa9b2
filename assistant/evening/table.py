"""An evening file as tonight's table, which answers look to first."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from assistant.evening.facts import wording
from assistant.evening.read import read_evening
from assistant.knowledge.problems import KnowledgeError, Problem
from assistant.language.guests import Asked
from assistant.session import Session
from assistant.tonight import Tonight

LAID = ("wines", "foods", "guests", "non_drinkers")


def set_table(session: Session, file: Path) -> None:
    """Puts the wines and foods of an evening file on the session's table.

    Raises KnowledgeError, with every problem, for a file that cannot be read or names what is not known;
    what only a plan needs (`start`) may be missing, and of wines, foods and guests what is not said yet.
    """
    evening = read_evening(file, session, datetime.now().astimezone())
    told = bool(evening.wines or evening.foods or evening.guests)
    spoilt = [p for p in evening.problems if _spoils(p) and not (told and p.message in _still_to_come())]
    if spoilt:
        raise KnowledgeError(spoilt)
    wines = tuple(dict.fromkeys(line.wine for line in evening.wines))
    dishes = tuple(dish for line in evening.foods for dish in line.dishes)
    guests = float(evening.guests) if evening.guests else None
    needs = tuple(Asked(need.guest, said) for need in evening.needs for said in need.needs)
    session.lay(
        Tonight(
            wines, dishes, guests, float(evening.non_drinkers), evening.start, needs, evening.title, evening
        )
    )


def _spoils(problem: Problem) -> bool:
    """Whether a problem is with what comes to the table."""
    return problem.term is None or problem.term.startswith(LAID)


def _still_to_come() -> tuple[str, ...]:
    """What is told of a file that was kept before all of the evening was said."""
    say = wording()
    return say("problem", "no-wines"), say("problem", "no-foods"), say("problem", "missing", key="guests")
