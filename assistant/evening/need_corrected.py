"""`It's not Ann who's pregnant, it's Kay`: the need goes from one guest to the other, or off."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.evening.drivers_change import drivers_changed, still_drives
from assistant.evening.need_changes import need_changed
from assistant.evening.need_off import without_needs
from assistant.evening.needs import named_needs, understood
from assistant.evening.needs_by_talk import needs_by_talk
from assistant.language.corrected import Corrected, corrected
from assistant.language.frame import Frame
from assistant.language.guests import Asked, Told, all_told
from assistant.language.sorting import EDIBLE
from assistant.session import Session
from assistant.table.tonight import needing

_JOINED = re.compile(r",\s(?:and\s)?|\sand\s")
SETS, SAFETY = "set-table", "safety"
Answers = Callable[[Context, Session], Answer | None]


def need_corrected(frame: Frame, session: Session) -> Answers | None:
    """What takes a need or a guest off, and gives the need to another; None where none changes."""
    if drivers := drivers_changed(frame, session):
        return drivers
    found = corrected(frame.text, session.tonight.needs, session.spoken.of)
    if found and still_drives(found.off, frame):
        return None  # `Jess isn't driving, but Kate is, what do they get`
    moves = found and (found.on or found.goes or all_told(found.rest).asked)
    if not moves and (changed := need_changed(frame, session)):
        return changed
    gone = _gone(found, session) if found else ()
    if found and not gone and (stays := _allergies(found, session)):
        return lambda context, _: _stays(stays, context)
    told = _told(found, gone) if found else ()
    if found is None or not gone:
        return needs_by_talk(Told(told)) if told else None
    return lambda context, session: _answer(found, gone, told, context, session)


def _told(found: Corrected, gone: tuple[Asked, ...]) -> tuple[Asked, ...]:
    """What is told of another guest: the same need, or what stands behind (`the driver is Mike`)."""
    if found.on:
        return tuple(Asked(capital(found.on), one.need) for one in gone)
    return all_told(found.rest).asked


def _gone(found: Corrected, session: Session) -> tuple[Asked, ...]:
    """The needs of the guest that are meant; where none is named the last, and all where the guest goes.

    An allergy goes only with the guest, or to another guest.
    """
    if found.one:
        return (found.one,)
    own = tuple(one for one in session.tonight.needs if found.off and one.guest == found.off)
    if found.goes or found.names:
        return own
    if not found.need:
        return own[-1:]
    ids = {need.id for need in named_needs(found.need, session) if found.on or not need.allergy}
    return tuple(one for one in own if ids & {need.id for need in understood(one.need, session)})


def _allergies(found: Corrected, session: Session) -> tuple[Asked, ...]:
    """The allergies that a guest is said not to have."""
    ids = {need.id for need in named_needs(found.need, session) if need.allergy}
    own = (one for one in session.tonight.needs if found.off and one.guest == found.off)
    return tuple(one for one in own if ids & {need.id for need in understood(one.need, session)})


def _stays(needs: tuple[Asked, ...], context: Context) -> Answer:
    """That an allergy told of stays noted, and how it is taken off where it was told by mistake."""
    say = context.wording("plan", "need-stays", guest=needs[0].guest, need=listed([n.need for n in needs]))
    return replace(compose(context.all_used(), say, [say]), dish=None, intent=SAFETY)


def _apart(one: Asked, need: str, session: Session) -> str:
    """What else was told in one breath with a need that is taken off (`halal and pregnant`)."""
    ids = {each.id for each in named_needs(need, session)}
    parts = _JOINED.split(one.need) if need else []
    return " and ".join(p for p in parts if not ids & {each.id for each in understood(p, session)})


def _answer(
    found: Corrected, gone: tuple[Asked, ...], told: tuple[Asked, ...], context: Context, session: Session
) -> Answer:
    """What was taken off, and before it what is noted for another guest."""
    without_needs(gone, session)
    kept = [] if found.goes or found.on else [_apart(one, found.need, session) for one in gone]
    for one, others in zip(gone, kept, strict=False):
        session.tonight = needing(session.tonight, Asked(one.guest, others)) if others else session.tonight
    kind, guest = "guest-off" if found.goes else "need-off", found.off or context.wording("plan", "guest")
    off = [found.need if any(kept) else one.need for one in gone]
    say = context.wording("plan", kind, guest=guest, need=listed(off))
    now = replace(context, tonight=session.tonight)
    noted = needs_by_talk(Told(told))(now, session) if told else None
    if noted is not None and found.names:
        return noted
    if noted is not None:
        return replace(noted, say=f"{say} {noted.say}", text=f"{say}\n{noted.text}")
    lines = [say, *_now_theirs(guest, now)]
    return replace(compose(now.all_used(), " ".join(lines), lines), dish=None, intent=SETS)


def _now_theirs(guest: str, context: Context) -> list[str]:
    """That a guest of whom nothing else is told may have what is named (`she's eating the salami`)."""
    eaten = {reading.id for reading in context.frame.text.readings if reading.kind in EDIBLE}
    named = [context.one_dish(dish) for dish in context.tonight.dishes if dish.main.food in eaten]
    free = named and not any(one.guest == guest for one in context.tonight.needs)
    return [context.wording("plan", "guest-yes", guest=guest, things=listed(named))] if free else []
