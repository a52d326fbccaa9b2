"""A guest who drinks wine but none of those on the table, and a wine of that guest's sort for the food."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.evening.care import GuestCare
from assistant.evening.facts import wording
from assistant.evening.records import Evening
from assistant.evening.sorts_drunk import sorts_drunk
from assistant.knowledge.problems import Problem
from assistant.pairing.choose import COMMONEST
from assistant.pairing.dish import table_of
from assistant.session import Session

WINE = "Wine"


def unserved_problems(evening: Evening, rows: Sequence[GuestCare], session: Session) -> list[Problem]:
    """The same as problems of an evening file, each with the wine to add."""
    say = wording()
    return [
        evening.problem(
            "wines", say("problem", "unserved", guest=row.guest), say("problem", "unserved-do", wine=wine)
        )
        for row, wine in unserved(rows, evening, session)
    ]


def unserved(rows: Sequence[GuestCare], evening: Evening, session: Session) -> list[tuple[GuestCare, str]]:
    """Each guest whose taste leaves none of the wines, with the wine that would do best with the food."""
    wines = {line.label for line in evening.wines}
    dry = [row for row in rows if wines and wines <= {*row.keep_away} and not row.sober]
    found = [(row, _wine_for(row, evening, session)) for row in dry]
    return [(row, wine) for row, wine in found if wine]


def _wine_for(row: GuestCare, evening: Evening, session: Session) -> str:
    """The label of the best wine that the guest drinks; empty where taste is not all, or nothing is eaten."""
    known, dishes = session.knowledge, [dish for line in evening.foods for dish in line.dishes]
    limits = sorts_drunk([row], session)
    every = [wine for wine in known.wines.values() if wine.type == WINE]
    common = [wine.id for wine in every if wine.availability >= COMMONEST]
    wines = session.engine.within(common, limits) if dishes and limits else []
    ranked = session.engine.rank(table_of(dishes), wines) if wines else []
    return known.label(ranked[0].wine) if ranked else ""
