"""`Sue may have a drop, her pharmacist said so`: noted as told; nothing here gives that leave itself."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import caution
from assistant.answers.wording import listed
from assistant.evening.guest_meant import spoken_of
from assistant.evening.needs import understood
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.guest_named import guests_named
from assistant.language.guests import Asked
from assistant.session import Session

SAFETY = "safety"


def leave_told(frame: Frame, session: Session) -> Callable[[Context, Session], Answer | None] | None:
    """What notes that somebody of health let a guest drink; None for any other text or a no."""
    if not says(frame, "leave-told") or says(frame, "leave-not"):
        return None
    guests = guests_named(frame.text.typed, session.tonight.needs) or spoken_of(frame, session)
    needs = tuple(one for one in session.tonight.needs if one.guest in guests and _by_health(one, session))
    return partial(_noted, needs) if len({one.guest for one in needs}) == 1 else None


def _by_health(asked: Asked, session: Session) -> bool:
    """Whether a need keeps a guest from wine that no label settles, but whoever looks after that guest."""
    topics = session.parser.topics.by_id
    needs = understood(asked.need, session)
    return any(topics[name].no_alcohol and not topics[name].another for need in needs for name in need.topics)


def _noted(needs: tuple[Asked, ...], context: Context, session: Session) -> Answer:
    """The need with the leave beside it, kept; whose word it is, and what still holds."""
    mark = context.wording("plan", "leave-mark")
    told = {one: one if mark in one.need else replace(one, need=f"{one.need} {mark}") for one in needs}
    session.tonight = replace(
        session.tonight, needs=tuple(told.get(one, one) for one in session.tonight.needs)
    )
    guest = needs[0].guest
    session.spoken.of = session.spoken.asked = (guest,)
    need = listed([one.need for one in told.values()])
    heads = [
        context.wording("plan", "need", guest=guest, need=need),
        context.wording("plan", "leave-told", guest=guest),
    ]
    topics = dict.fromkeys(t for one in needs for need in understood(one.need, session) for t in need.topics)
    base = dict.fromkeys(c for topic in topics for c in session.parser.topics.by_id[topic].base)
    records = tuple(caution(context, name) for name in base)
    answer = compose(context.all_used(), " ".join(heads), [*heads, *(one["text"] for one in records)])
    return replace(answer, cautions=records, dish=None, intent=SAFETY)
