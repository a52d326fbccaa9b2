"""When the evening begins and what it may cost, as far as a text tells of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, time, timedelta
from typing import TYPE_CHECKING

from assistant.after.times import minutes_said
from assistant.language.arriving import arrivals, without_arrivals
from assistant.language.clock import clock_in_digits
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.guests import all_told
from assistant.language.party import money_said
from assistant.language.quantities import is_each, is_for_all, numbers, quantities
from assistant.language.starting import day_of, next_day_at, starts_at, time_of
from assistant.table.overrun import overspends, runs_late
from assistant.table.prices_told import prices_told

if TYPE_CHECKING:
    from assistant.table.tonight import Tonight

CHOOSES, SUPPOSES = "choose-wines", "what-if"
PREPARES, COUNTS = ("plan", "set-table"), ("quantity", "unclear")
DATED = ("set-table", "plan", "quantity", "choose-wines", "unclear", "note", "wines-for-food")


def dated(tonight: Tonight, frame: Frame) -> Tonight:
    """The table with the day and the start a frame speaks of; a time alone is of the day said before."""
    typed, now, day = of_all(frame), datetime.now(), tonight.day
    tonight = expecting(tonight, frame)
    if frame.intent in PREPARES or quantities(frame.text).people:
        day = day_of(typed, now.date()) or day
    sits = says(frame, "sits-at")
    if frame.intent not in DATED and not sits:
        return replace(tonight, day=day)
    if sits or says(frame, "starts-at"):
        day = day or next_day_at(typed, now)
        return replace(tonight, day=day, start=starts_at(typed, now, day) or tonight.start)
    return replace(tonight, day=day, start=starts_at(typed, now) or tonight.start)


def of_all(frame: Frame) -> str:
    """The text with times in digits, and without when one guest alone arrives."""
    return clock_in_digits(without_arrivals(frame.text.typed))


def expecting(tonight: Tonight, frame: Frame) -> Tonight:
    """The table with the guests who are told to come alone, each with the time (None: late)."""
    typed, late = frame.text.typed, dict(tonight.late)
    for one in arrivals(typed) if frame.intent != SUPPOSES else ():
        told = all_told(typed[: one.start]).asked
        guest = one.guest or (told[-1].guest if told else "")
        if guest:
            late[guest[0].upper() + guest[1:]] = time_of(f"at {clock_in_digits(f'at {one.time}')[3:]}") or (
                _behind_start(typed, tonight)
            )
    return replace(tonight, late=tuple(late.items()))


def _behind_start(typed: str, tonight: Tonight) -> time | None:
    """When somebody comes who is told to be so long late (`half an hour late`)."""
    length = minutes_said(typed)
    return (tonight.start + timedelta(minutes=length)).time() if tonight.start and length else None


def budgeted(tonight: Tonight, frame: Frame) -> Tonight:
    """The table with the money a frame says there is to spend, in all or a head."""
    said = budget_said(frame, tonight)
    each = tonight.per_head if said is None else said if _a_head(frame, said) else None
    if each is None:
        return replace(tonight, budget=said or tonight.budget, per_head=None)
    return replace(tonight, budget=each * tonight.guests if tonight.guests else None, per_head=each)


def _a_head(frame: Frame, money: float) -> bool:
    """Whether the money is told for each guest, and no other number is (`250, I charge them 85 a head`)."""
    stems = frame.text.stems
    other = any(is_each(stems, end) for _, end, number in numbers(stems) if number != money)
    return says(frame, "a-head") and not other


def budget_said(frame: Frame, tonight: Tonight) -> float | None:
    """The money that is said to be there for the evening that is being prepared; None for any other text."""
    if prices_told(frame, tonight):
        return None
    if frame.intent == CHOOSES and says(frame, "in-all"):
        return money_said(frame.text.stems)
    asks = says(frame, "menu-asks") and not (opens(frame, "budget-can") or opens(frame, "budget-told"))
    if _is_there(frame):
        return money_said(frame.text.stems)
    if (whole := _for_all(frame)) is not None:
        return whole
    if asks or runs_late(frame) or overspends(frame):
        return None
    told = frame.intent in PREPARES or says(frame, "budget-is") or says(frame, "money-there")
    if told and frame.intent in (*PREPARES, "unclear") and (money := money_said(frame.text.stems)):
        return money
    found = [number for _, _, number in numbers(frame.text.stems)]
    prepared = tonight.guests or tonight.wines or tonight.dishes
    return found[0] if prepared and len(found) == 1 and says(frame, "budget-is") else None


def _for_all(frame: Frame) -> float | None:
    """The money that is told to be there for everything (`it's 150 for everything`); None for other text."""
    stems, found = frame.text.stems, numbers(frame.text.stems)
    named = any(reading.type in ("Wine", "Food") for reading in frame.text.readings)
    if len(found) != 1 or named or not is_for_all(stems, *found[0][:2]):
        return None
    return found[0][2]


def _is_there(frame: Frame) -> bool:
    """Whether so much money a head, or to spend, is told and not only supposed, whatever else is asked."""
    told = says(frame, "a-head") or says(frame, "money-there")
    return told and frame.intent in (*COUNTS, *PREPARES) and not says(frame, "supposing")
