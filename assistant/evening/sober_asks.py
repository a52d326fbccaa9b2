"""`two people don't drink, what do they get`: drinks without alcohol for the table, never a wine."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.by_talk import evening_of
from assistant.evening.care import care
from assistant.evening.guest_drinks import drinks_told
from assistant.language.dish_edits import POURED
from assistant.language.eating import somebody_abstains, unkept
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.guest_named import has_name
from assistant.session import Session
from assistant.table.headcount import counts_drinkless

SAFETY, TOPIC = "safety", "non-drinker"
# What else may be meant, though somebody is said not to drink.
OTHER = ("plan", "undo", "teach", "judge-pair", "pour-order", "trouble", "help", "describe", "define")


def sober_asks(frame: Frame, session: Session) -> Callable[[Context, Session], Answer | None] | None:
    """What answers what those who drink no wine get; None for any other text, and where it is the host."""
    told = bool(somebody_abstains(frame.text.stems)) or counts_drinkless(frame.text.stems)
    told = told and not says(frame, "sober-self")
    meant = told or (session.spoken.sober and says(frame, "they-get"))
    asks = any(says(frame, line) for line in ("they-drink", "they-get", "sober-get"))
    session.spoken.sober = told or (meant and asks)
    return _told if meant and asks and not _names_wine(frame) and _may_be(frame, session) else None


def _names_wine(frame: Frame) -> bool:
    """Whether a wine is asked of by name; one that only stands is not."""
    return any(reading.kind in POURED for reading in frame.text.readings)


def _may_be(frame: Frame, session: Session) -> bool:
    """Whether nothing else is asked: of health no more than what to drink, and not whether a sip will do."""
    topics = session.parser.topics.by_id
    if opens(frame, "yes-no") and not says(frame, "asks-what"):
        return False
    if frame.intent == SAFETY:
        return all(topics[name].no_alcohol and not topics[name].urgent for name in frame.topics)
    return frame.intent not in OTHER


def _told(context: Context, session: Session) -> Answer | None:
    """Drinks for the food named, else for the table; what guests with needs may not have stays away."""
    rows = [row for row in care(evening_of(context), session) if row.sober]
    frame = replace(context.frame, text=replace(context.frame.text, left_out=unkept(context.frame.text)))
    meant = [row for row in rows if set(row.topics) & set(frame.text.topics)]  # drivers, and nobody else
    answer = drinks_told(replace(context, frame=frame), meant or rows, session, frame.topics or (TOPIC,))
    guests = list(dict.fromkeys(row.guest for row in meant if has_name(row.guest)))
    if not guests:
        return answer
    line = context.wording("plan", "sober-for", guests=listed(guests))
    return replace(answer, say=f"{line} {answer.say}", text=f"{line}\n{answer.text}")
