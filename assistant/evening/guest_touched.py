"""`Fried in the same oil as the gambas`: what touched what a guest may not have is not for that guest."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.wording import listed
from assistant.evening.care import GuestCare
from assistant.evening.records import Evening
from assistant.language.follow_lines import says
from assistant.language.frame import Frame

CONTACT = "cross-contact"


def with_touched(rows: Sequence[GuestCare], evening: Evening, context: Context) -> list[GuestCare]:
    """The rows, what touched what an allergic guest is kept from moved to what is not for that guest."""
    foods = {line.label for line in evening.foods}
    touched = bool(context.frame.dishes) and not says(context.frame, "touches-not")
    return [_kept_from(row, foods) if touched and _counts(row, context.frame) else row for row in rows]


def _counts(row: GuestCare, frame: Frame) -> bool:
    """Whether it matters to this guest that things touched: `the oil` may be any, but for prawns named."""
    return row.allergy and (says(frame, "touches") or bool(row.keep_away and says(frame, "touches-named")))


def _kept_from(row: GuestCare, foods: set[str]) -> GuestCare:
    spoilt = tuple(x for x in (*row.may_have, *row.check_label) if x in foods)
    may, check = (tuple(x for x in part if x not in spoilt) for part in (row.may_have, row.check_label))
    topics = (CONTACT, *row.topics) if spoilt else row.topics
    away = (*spoilt, *row.keep_away)
    return replace(row, may_have=may, check_label=check, keep_away=away, topics=topics)


def touched_told(rows: Sequence[GuestCare], context: Context) -> list[str]:
    """What to make anew for whom, where something touched what a guest may not have."""
    guests = list(dict.fromkeys(row.guest for row in rows if CONTACT in row.topics))
    return [context.wording("plan", "guest-touched", guests=listed(guests))] if guests else []
