"""`Fried in the same oil as the gambas`: what touched what a guest may not have is not for that guest."""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.wording import listed
from assistant.evening.care import GuestCare, stands
from assistant.evening.guest_things import asks_little
from assistant.evening.needs import understood
from assistant.evening.records import Evening
from assistant.knowledge.diets import Fit
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.guests import Asked
from assistant.session import Session
from assistant.spoken import Spoken

CONTACT = "cross-contact"


def touched_guests(frame: Frame, session: Session) -> tuple[str, ...]:
    """The guests with an allergy to something on the table that is told to touch a food named."""
    touches = says(frame, "touches") or _by_name(frame)
    if not (touches and frame.dishes) or says(frame, "touches-not"):
        return ()
    foods = {part.food for dish in session.tonight.dishes for part in dish.parts}
    harmed = (one for one in session.tonight.needs if _harmed(one, foods, session))
    return tuple(dict.fromkeys(one.guest for one in harmed))


def _harmed(asked: Asked, foods: Set[str], session: Session) -> bool:
    allergies = (need for need in understood(asked.need, session) if need.allergy)
    return any(stands(f, need, session.knowledge) is Fit.NO for need in allergies for f in foods)


def with_touched(
    rows: Sequence[GuestCare], evening: Evening, context: Context, spoken: Spoken
) -> list[GuestCare]:
    """The rows, what touched what an allergic guest is kept from moved to what is not for that guest.

    It stays so until it is made anew, where it is told and not only asked.
    """
    return [_with_touched(row, {line.label for line in evening.foods}, context.frame, spoken) for row in rows]


def _with_touched(row: GuestCare, foods: set[str], frame: Frame, spoken: Spoken) -> GuestCare:
    kept = spoken.touched.setdefault(row.guest, set())
    if says(frame, "touches-not"):
        kept -= foods
        return row
    new = foods if frame.dishes and _counts(row, frame) else set()
    if not (opens(frame, "yes-no") or "?" in frame.text.typed):
        kept |= new & {*row.may_have, *row.check_label}
    return _kept_from(row, new | (kept & foods))


def _counts(row: GuestCare, frame: Frame) -> bool:
    """Whether it matters to this guest that things touched: `the oil` may be any, but for prawns named."""
    what = bool(row.keep_away) or says(frame, "touching-it")  # `they are next to the turkey`
    return row.allergy and (says(frame, "touches") or (what and _by_name(frame)))


def _by_name(frame: Frame) -> bool:
    """Whether what touched a food is told by its own name, or by the tool that lay in it."""
    return says(frame, "touches-named") or says(frame, "tool-touches")


def _kept_from(row: GuestCare, foods: set[str]) -> GuestCare:
    spoilt = tuple(x for x in (*row.may_have, *row.check_label) if x in foods)
    may, check = (tuple(x for x in part if x not in spoilt) for part in (row.may_have, row.check_label))
    topics = (CONTACT, *row.topics) if spoilt else row.topics
    away = (*spoilt, *row.keep_away)
    return replace(row, may_have=may, check_label=check, keep_away=away, topics=topics)


def traces_told(rows: Sequence[GuestCare], context: Context) -> list[str]:
    """That not even a little is for somebody with an allergy, where that is asked (`just a bite`)."""
    if asks_little(context.frame) and any(row.allergy and row.keep_away for row in rows):
        return [context.wording("plan", "guest-trace")]
    return []


def touched_told(rows: Sequence[GuestCare], context: Context) -> list[str]:
    """What to make anew for whom, where something touched what a guest may not have."""
    guests = list(dict.fromkeys(row.guest for row in rows if CONTACT in row.topics))
    return [context.wording("plan", "guest-touched", guests=listed(guests))] if guests else []
