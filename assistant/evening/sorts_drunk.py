"""The sorts of wine that guests keep to, as limits on the wines."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.context import Context
from assistant.answers.wording import capital
from assistant.evening.care import GuestCare
from assistant.evening.needs import understood
from assistant.evening.records import Evening
from assistant.language.frame import Preference
from assistant.session import Session

SUGAR = "sugar"
OFF_DRY, SWEET = 1.5, 3.0  # in points of sweetness: what tastes faintly sweet, and what is sweet


def sorts_drunk(rows: Sequence[GuestCare], session: Session) -> tuple[Preference, ...]:
    """The sorts of wine that alone are drunk and the tastes that are not, as limits; none for most."""
    needs = [need for row in rows for said in row.needs for need in understood(said, session)]
    sorts = dict.fromkeys(sort for need in needs for sort in sorted(need.only))
    tastes = dict.fromkeys(taste for need in needs for taste in need.tastes)
    label = session.knowledge.label
    return (*(Preference(label(sort), "kind", wanted=sort) for sort in sorts), *tastes)


def nearly_told(rows: Sequence[GuestCare], evening: Evening, context: Context, session: Session) -> list[str]:
    """The wine to offer a guest who likes it sweet, where that one is asked about and is not quite sweet."""
    asked = {line.wine for line in evening.wines}
    found = ((row.guest, _nearly_sweet(row, session)) for row in rows if row.keep_away)
    told = ((guest, context.knowledge.label(wine)) for guest, wine in found if wine in asked)
    return [capital(context.wording("plan", "nearly-sweet", guest=guest, wine=wine)) for guest, wine in told]


def _nearly_sweet(row: GuestCare, session: Session) -> str:
    """The sweetest wine of the table for who drinks sweet wine alone; empty if it is sweet, or dry."""
    sweet = any(limit.property == SUGAR and limit.low is not None for limit in sorts_drunk([row], session))
    points = {w: session.engine.glasses[w].points["sweetness"] for w in session.tonight.wines}
    best = max(points, key=lambda wine: points[wine], default="")
    return best if sweet and best and OFF_DRY <= points[best] < SWEET else ""


def by_taste(row: GuestCare, session: Session) -> bool:
    """Whether a guest only keeps to a sort of wine, which no label settles."""
    return all(need.of_taste for said in row.needs for need in understood(said, session))
