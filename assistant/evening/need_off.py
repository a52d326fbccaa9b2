"""Needs that go off the table, and who drank nothing drinks again."""

from __future__ import annotations

from dataclasses import replace

from assistant.evening.needs import understood
from assistant.language.guests import Asked
from assistant.session import Session


def without_needs(gone: tuple[Asked, ...], session: Session) -> None:
    """Takes these needs off the table; who drank nothing is counted among those who drink."""
    tonight = session.tonight
    needs = tuple(one for one in tonight.needs if one not in gone)
    before, after = (_sober(rows, session) for rows in (tonight.needs, needs))
    drinks = max(0.0, tonight.non_drinkers - len(before - after))
    session.tonight = replace(tonight, needs=needs, non_drinkers=drinks)


def _sober(needs: tuple[Asked, ...], session: Session) -> set[str]:
    """The guests who drink no wine."""
    return {one.guest for one in needs if any(need.sober for need in understood(one.need, session))}
