"""A bottle told to be spoilt: it comes off the table, so that nobody is poured it again."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.afresh import names_evening, names_kept
from assistant.after.heat import heated
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.table.headcount import with_the_sober
from assistant.table.served import served
from assistant.table.time_and_money import expecting
from assistant.table.tonight import Tonight, after_said

if TYPE_CHECKING:
    from assistant.session import Session

TROUBLE, POUR, NEVER, LATE = "trouble", "pour", "pourNo", "latecomer"


def after_told(frame: Frame, session: Session) -> Tonight:
    """The table after all that a frame says of it, without a bottle that is told to be spoilt.

    Of what follows an evening only the heat counts, and who comes late is looked out for.
    """
    if frame.after:
        late = expecting(session.tonight, frame) if frame.after == LATE else session.tonight
        return heated(late, frame)
    if names_evening(frame) or names_kept(frame):
        return session.tonight
    told = served(session.tonight, after_said(frame, session.tonight), frame, session.knowledge)
    tonight = with_the_sober(told, session)
    spoilt = _spoilt(frame, session) if frame.intent == TROUBLE else set()
    kept = tuple(wine for wine in tonight.wines if wine not in spoilt)
    return heated(replace(tonight, wines=kept), frame)


def gone(before: Tonight, now: Tonight) -> tuple[str, ...]:
    """The wines that came off the table."""
    return tuple(wine for wine in before.wines if wine not in now.wines)


def _spoilt(frame: Frame, session: Session) -> set[str]:
    """The wines that are told, and not asked, to have a fault that nobody is poured.

    Of a wine of which a list holds more than one bottle, another is opened; the last wine of all stays.
    """
    asked = says(frame, "table-questions") or opens(frame, "yes-no")
    pours = (session.knowledge.entry(name).get(POUR, ()) for name in frame.entries)
    if asked or not any(NEVER in pour for pour in pours):
        return set()
    spoilt = {wine for wine in frame.wines if _left(wine, session) < 2}
    return spoilt if set(session.tonight.wines) - spoilt else set()


def _left(wine: str, session: Session) -> int:
    """How many bottles the list holds, one where it does not say, and how many are told to be at home."""
    owned = dict(session.tonight.owned).get(wine, 0)
    return owned + sum(bottle.left or 1 for bottle in session.stock.of.get(wine, ()))
