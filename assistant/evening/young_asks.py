"""`Josh wants a small glass`, `his mum says he may`: no wine for who is under age, and what there is."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.brought_asked import brought_asked
from assistant.evening.by_talk import evening_of
from assistant.evening.care import care
from assistant.evening.guest_drinks import drinks_told
from assistant.evening.guest_meant import pronoun_in, spoken_of
from assistant.evening.guest_things import Before, asked_things
from assistant.evening.leave_told import leave_told
from assistant.evening.made_for import made_told
from assistant.evening.needs import named_needs
from assistant.evening.sober_asks import sober_asks
from assistant.evening.unwell import unwell_asks
from assistant.language.dish_edits import POURED
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.guest_named import guests_named
from assistant.language.sorting import EDIBLE
from assistant.session import Session

UNDER_AGE = "under-age"
# What is asked of the evening or told of it, whoever is named beside.
OTHER = ("undo", "plan", "pour-order", "quantity", "trouble", "help")


def no_wine_asks(frame: Frame, session: Session) -> Callable[[Context, Session], Answer | None] | None:
    """What answers for those with medicine, under age, or who drink no wine; None for any other text."""
    kinds = (made_told, brought_asked, leave_told, unwell_asks, young_asks, sober_asks)
    return next((asked for kind in kinds if (asked := kind(frame, session))), None)


def young_asks(frame: Frame, session: Session) -> Callable[[Context, Session], Answer | None] | None:
    """What answers that wine is asked or wanted for guests under age; None for any other text."""
    guests = guests_named(frame.text.typed, session.tonight.needs) or spoken_of(frame, session)
    young = tuple(guest for guest in guests if is_young(guest, session) and _is_meant(guest, frame))
    drank = says(frame, "guest-drank") and not opens(frame, "guest-may")  # `can he have a glass`
    eaten = any(reading.kind in EDIBLE for reading in frame.text.readings) or drank
    if not young or len(young) < len(guests) or eaten or frame.intent in OTHER or not drinks(frame):
        return None
    return partial(_told, young)


def drinks(frame: Frame) -> bool:
    """Whether a wine is named, or something to drink spoken of."""
    return says(frame, "young-drink") or any(reading.kind in POURED for reading in frame.text.readings)


def is_young(guest: str, session: Session) -> bool:
    """Whether a guest is noted as under age."""
    told = (one.need for one in session.tonight.needs if one.guest == guest)
    return any(need.id == UNDER_AGE for said in told for need in named_needs(said, session))


def _is_meant(guest: str, frame: Frame) -> bool:
    """Whether it is of the guest, and not of somebody of theirs (`Josh's mum wants a glass`)."""
    alone = re.search(rf"\b{re.escape(guest)}\b(?!['’]s\s)", frame.text.typed, re.IGNORECASE)
    return bool(alone) or pronoun_in(frame.text.stems) is not None


def _told(guests: Sequence[str], context: Context, session: Session) -> Answer:
    """That there is no wine for them, and the drinks without alcohol for what is on the table."""
    asked = replace(asked_things(context, session, Before()), foods=())
    barred = [row for row in care(asked, session) if row.guest in guests and row.keep_away]
    rows = [row for row in care(evening_of(context), session) if row.guest in guests]
    session.spoken.of = session.spoken.asked = tuple(guests)
    session.spoken.drink = True
    answer = drinks_told(context, rows, session)
    lines = [
        context.wording("plan", "guest-no", guest=row.guest, things=listed(list(row.keep_away)))
        for row in barred
    ]
    return replace(answer, say=" ".join([*lines, answer.say]), text="\n".join([*lines, answer.text]))
