"""Which act of after the evening a text asks for, and what answers it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from assistant.after.amounts import amount_said
from assistant.after.heat import heat_told
from assistant.after.names import guests_named
from assistant.after.phrases import Act, one_of, phrases
from assistant.after.times import minutes_out
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE
from assistant.taught.hands import hands
from assistant.taught.telling import Hearing
from assistant.taught.votes import votes

if TYPE_CHECKING:
    from assistant.language.standing import Talk
    from assistant.session import Session

Builder = Callable[[Context, "Session"], Answer | None]
MYTH, KEPT = "myth", ("park", "vote")
SAID, KNOWN = "said", "known"


def after_heard(frame: Frame, session: Session, talk: Talk | None) -> Frame:
    """The frame as one of what follows an evening, with what stands where it names nothing, or as it was."""
    act = next((one for one in phrases().acts if _meant(one, frame, session, talk)), None)
    if act is None:
        return frame
    if act.name in KEPT:
        return replace(frame, intent="note", again="")
    heard = replace(frame, after=act.name, intent=act.intent or frame.intent, again="", follows=False)
    if act.safe and frame.intent == "safety":
        heard = replace(heard, intent="safety")
    if act.intent == MYTH:
        return session.parser.entries.told(heard)
    return _standing(heard, act, session, talk)


def _meant(act: Act, frame: Frame, session: Session, talk: Talk | None) -> bool:
    stems = frame.text.stems
    heard = act.lines.stand_in(stems) and not act.unless.stand_in(stems)
    if not heard or (act.from_ is not None and frame.intent not in act.from_):
        return False
    if not act.topics.issuperset(frame.topics) or frame.diets:
        return False
    if (act.proposed and session.proposed is None) or (act.fresh and talk is not None):
        return False
    if act.expected and not session.tonight.late:
        return False
    if (act.poured and not session.tonight.wines) or (act.written and session.written is None):
        return False
    if act.ailing and not session.spoken.ails:
        return False
    return (
        _said(act, frame, session)
        and _wine_said(act, frame, session, talk)
        and _has(act, frame, session, talk)
        and _stands_out(act, frame, session)
    )


def _stands_out(act: Act, frame: Frame, session: Session) -> bool:
    """Whether the heat is told or known, and food was just said to stand out, where the act is of that."""
    heat, out = session.tonight.heat, session.spoken.out
    told = {SAID: heat_told(frame) is not None, KNOWN: heat is not None and heat.over}
    lasts = act.just_out != "time" or minutes_out(frame.text.typed, datetime.now()) is not None
    return told.get(act.heat, True) and (not act.just_out or (bool(out) and lasts))


def _said(act: Act, frame: Frame, session: Session) -> bool:
    """Whether what the act asks for is said: no name, a vote, a guest, an amount."""
    return not (
        (act.nameless and _named(act, frame, session))
        or (act.voted and not _voted(frame, session))
        or (act.hands and not hands(_hearing(frame, session)))
        or (act.guest_named and not guests_named(frame, session))
        or (act.amount_said and amount_said(frame) is None)
    )


def _voted(frame: Frame, session: Session) -> bool:
    """Whether a guest is named with a vote on something, while a table is set."""
    if not (session.tonight.wines or session.tonight.dishes):
        return False
    return any(vote.guest for vote in votes(_hearing(frame, session)))


def _hearing(frame: Frame, session: Session) -> Hearing:
    topics = session.parser.topics.by_id
    context = Context(frame, session.engine, session.wording, topics, session.top, session.tonight)
    return Hearing(context, session.taught)


def _named(act: Act, frame: Frame, session: Session) -> bool:
    """Whether something is named where nothing may be; `food`: foods alone matter."""
    return _eaten(frame) or (act.nameless != "food" and _poured(frame, session))


def _eaten(frame: Frame) -> bool:
    return any(r.kind in EDIBLE for r in frame.text.readings)


def _poured(frame: Frame, session: Session) -> bool:
    return any(session.knowledge.styles_of(r.id) for r in frame.text.readings)


def _wine_said(act: Act, frame: Frame, session: Session, talk: Talk | None) -> bool:
    """Whether a wine is named or spoken of, where one must be; a food named is another matter."""
    if not act.wine_said or _poured(frame, session):
        return True
    stands = talk is not None and bool(talk.frame.wines)
    return not _eaten(frame) and (one_of(frame.text.stems, "wine") or stands)


def _has(act: Act, frame: Frame, session: Session, talk: Talk | None) -> bool:
    """Whether what must be named is, now or in the turn that stands."""
    old = talk.frame if talk else frame
    poured = _poured(frame, session)
    laid = bool(act.heat and session.tonight.dishes) or bool(act.just_out)
    held = {
        "food": bool(frame.dishes) or (not poured and (laid or bool(old.dishes))),
        "named": bool(frame.dishes) and _eaten(frame) and not poured,
        "wine": poured,
        "pair": bool(frame.wines and frame.dishes),
    }
    return all(held[name] for name in act.names)


def _standing(frame: Frame, act: Act, session: Session, talk: Talk | None) -> Frame:
    """The frame with the dish or wine that stands, where the act is about one and none is named."""
    if frame.dishes or frame.wines:
        return frame
    out = act.just_out or session.spoken.out_minutes is not None  # the heat is told of what was just judged
    of_table = (session.spoken.out if out else session.tonight.dishes) if act.heat or act.just_out else ()
    if of_table or talk is None:
        return replace(frame, dishes=of_table)
    if "food" in act.names:
        return replace(frame, dishes=talk.frame.dishes)
    return replace(frame, wines=talk.frame.wines) if act.wine_said else frame


def of_after(frame: Frame) -> Builder | None:
    """What answers an act; loaded only then."""
    if not frame.after or frame.after == "spoon":
        return None
    from assistant.after.answering import BUILDERS

    return BUILDERS[frame.after]
