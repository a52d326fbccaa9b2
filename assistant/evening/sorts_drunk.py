"""The sorts of wine that guests keep to, as limits on the wines."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.evening.care import GuestCare
from assistant.evening.needs import understood
from assistant.language.frame import Preference
from assistant.session import Session


def sorts_drunk(rows: Sequence[GuestCare], session: Session) -> tuple[Preference, ...]:
    """The sorts of wine that alone are drunk and the tastes that are not, as limits; none for most."""
    needs = [need for row in rows for said in row.needs for need in understood(said, session)]
    sorts = dict.fromkeys(sort for need in needs for sort in sorted(need.only))
    tastes = dict.fromkeys(taste for need in needs for taste in need.tastes)
    label = session.knowledge.label
    return (*(Preference(label(sort), "kind", wanted=sort) for sort in sorts), *tastes)


def by_taste(row: GuestCare, session: Session) -> bool:
    """Whether a guest only keeps to a sort of wine, which no label settles."""
    return all(need.of_taste for said in row.needs for need in understood(said, session))
