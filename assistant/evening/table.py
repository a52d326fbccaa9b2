"""An evening file as tonight's table, which answers look to first."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from pathlib import Path

from assistant.evening.facts import wording
from assistant.evening.read import read_evening
from assistant.evening.records import Evening
from assistant.knowledge.problems import KnowledgeError, Problem
from assistant.language.guests import Asked
from assistant.session import Session
from assistant.table.at_home import SUPPER
from assistant.table.tonight import Tonight

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
    wines = poured(evening, session)
    reserve = tuple(dict.fromkeys(line.wine for line in evening.wines if line.wine not in wines))
    dishes = tuple(dish for line in evening.foods for dish in line.dishes)
    guests = float(evening.guests) if evening.guests else None
    needs = tuple(Asked(need.guest, said) for need in evening.needs for said in need.needs)
    drinkless = float(evening.non_drinkers)
    table = Tonight(wines, dishes, guests, drinkless, evening.start, needs, evening.title, evening)
    owned = tuple((line.wine, line.owned) for line in evening.wines if line.owned and line.wine in wines)
    meal = SUPPER if evening.meal == SUPPER else ""
    session.lay(replace(table, reserve=reserve, owned=owned, meal=meal))


def poured(evening: Evening, session: Session) -> tuple[str, ...]:
    """The styles that are poured: where the file wants fewer than it lists, those that its plan chooses."""
    styles = {line.label: line.wine for line in evening.wines}
    if evening.choose is not None and evening.foods and evening.choose < len(evening.wines):
        from assistant.evening.selecting import select
        from assistant.evening.tasting import taste

        chosen = select(evening, taste(evening, session.engine), session.engine).poured
        styles = {label: styles[label] for label in chosen} or styles
    return tuple(dict.fromkeys(styles.values()))


def _spoils(problem: Problem) -> bool:
    """Whether a problem is with what comes to the table."""
    return problem.term is None or problem.term.startswith(LAID)


def _still_to_come() -> tuple[str, ...]:
    """What is told of a file that was kept before all of the evening was said."""
    say = wording()
    return say("problem", "no-wines"), say("problem", "no-foods"), say("problem", "missing", key="guests")
