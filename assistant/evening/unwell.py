"""`Sue has had half a glass by mistake`, `she's got a headache`: who takes medicine, and what is done now."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import caution, cautions, spoken
from assistant.answers.wording import listed
from assistant.evening.by_talk import evening_of
from assistant.evening.care import care
from assistant.evening.guest_meant import spoken_of
from assistant.evening.needs import named_needs
from assistant.language.dish_edits import POURED
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.guest_named import guests_named
from assistant.language.sorting import EDIBLE
from assistant.session import Session

SAFETY = "safety"
DRUNK, UNWELL = "caution/medicines-drunk", "caution/medicines-unwell"
MEDICINES = frozenset(("medicines", "medicines-no-alcohol", "medicines-blood-thinner", "medicines-tyramine"))
ILL = frozenset(("unwell", "too-much", "headache"))


def unwell_asks(frame: Frame, session: Session) -> Callable[[Context, Session], Answer | None] | None:
    """What answers that a guest with medicine drank wine or is unwell; None for any other text."""
    first = DRUNK if drank_wine(frame) else UNWELL if ILL.intersection(frame.topics) else ""
    guests = guests_named(frame.text.typed, session.tonight.needs) or spoken_of(frame, session)
    theirs = tuple(guest for guest in guests if first and _takes_medicine(guest, session))
    return partial(_told, first, theirs) if theirs else None


def _takes_medicine(guest: str, session: Session) -> bool:
    told = (one.need for one in session.tonight.needs if one.guest == guest)
    return any(MEDICINES.intersection(need.topics) for said in told for need in named_needs(said, session))


def drank_wine(frame: Frame) -> bool:
    """Whether somebody is said to have drunk wine, and no food is spoken of."""
    drunk = says(frame, "young-drink") or any(reading.kind in POURED for reading in frame.text.readings)
    eaten = any(reading.kind in EDIBLE for reading in frame.text.readings)
    return says(frame, "guest-drank") and drunk and not (eaten or opens(frame, "guest-may"))


def _told(first: str, guests: tuple[str, ...], context: Context, session: Session) -> Answer:
    """What is done now, whose medicine it is, then what else is told of it."""
    rows = [row for row in care(evening_of(context), session) if row.guest in guests]
    session.spoken.of = session.spoken.asked = guests
    others = tuple(name for name in context.frame.topics if name not in MEDICINES)
    asked_of = replace(context, frame=replace(context.frame, topics=others, dishes=()))
    records = {one["id"]: one for one in (caution(context, first), *cautions(asked_of))}
    texts = [record["text"] for record in records.values()]
    heads = [
        context.wording("plan", "guest-sober", guest=row.guest, need=listed(list(row.needs))) for row in rows
    ]
    answer = compose(context.all_used(), " ".join([*heads, spoken(texts[0])[0]]), [*heads, *texts])
    return replace(answer, cautions=tuple(records.values()), dish=None, intent=SAFETY)
