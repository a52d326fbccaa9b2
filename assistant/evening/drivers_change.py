"""`Kate is driving after all and Jess got a taxi`: who drives now, and who does no more."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital
from assistant.evening.need_off import without_needs
from assistant.evening.needs import understood
from assistant.evening.needs_by_talk import needs_by_talk
from assistant.language.drives import Drives, drives_told
from assistant.language.fold import fold
from assistant.language.follow_lines import opens
from assistant.language.frame import Frame
from assistant.language.guest_named import has_name, own_name
from assistant.language.guests import Asked, Told, all_told
from assistant.session import Session

DRIVES, DRIVING, SETS = "driving", "driving", "set-table"
Answers = Callable[[Context, Session], Answer | None]


def drivers_changed(frame: Frame, session: Session) -> Answers | None:
    """What takes down who drives and who does not; None where no more is told than that somebody drives."""
    found = drives_told(frame.text.typed)
    if found is None or not found.changes or "?" in frame.text.stems or opens(frame, "guest-may"):
        return None
    gone = tuple(one for name in found.off for one in _driving(name, session))
    return (lambda context, session: _answer(found, gone, context, session)) if gone or found.on else None


def still_drives(guest: str, frame: Frame) -> bool:
    """Whether a line, whatever else it tells or asks, says that this guest drives."""
    found = drives_told(frame.text.typed)
    return found is not None and any(_is_called(guest, name) for name in found.on)


def _driving(name: str, session: Session) -> list[Asked]:
    """The needs of the guest so called that only tell that they drive."""
    own = (one for one in session.tonight.needs if has_name(one.guest) and _is_called(one.guest, name))
    return [one for one in own if {need.id for need in understood(one.need, session)} == {DRIVES}]


def _is_called(guest: str, name: str) -> bool:
    return fold(name) in (fold(guest), *(fold(word) for word in own_name(guest)))


def _told(found: Drives, session: Session) -> Told:
    """Who drives, as told before where that is known, and the needs told beside it."""
    rest = [all_told(part) for part in found.rest]
    now = [(_driving(name, session) or [Asked(capital(name), DRIVING)])[0] for name in found.on]
    unread = [part for part, told in zip(found.rest, rest, strict=True) if not told.asked]
    return Told((*now, *(one for told in rest for one in told.asked)), tuple(unread))


def _answer(found: Drives, gone: Sequence[Asked], context: Context, session: Session) -> Answer | None:
    """Who drives no more, behind who drives now."""
    told = _told(found, session)
    without_needs(tuple(gone), session)
    lines = [context.wording("plan", "need-gone", guest=one.guest, need=one.need) for one in gone]
    now = replace(context, tonight=session.tonight)
    noted = needs_by_talk(told)(now, session) if told.asked else None
    if noted is None:
        lines += [context.wording("plan", "need-unread", said=part) for part in told.unread]
        return replace(compose(now.all_used(), lines[0], lines), dish=None, intent=SETS) if lines else None
    return replace(noted, say=" ".join((noted.say, *lines)), text="\n".join((*lines, noted.text)))
