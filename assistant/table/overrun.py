"""What is said of time and money by itself: `we start at 7`, `we're 15 over`, `15 euros over`."""

from __future__ import annotations

from assistant.language.clock import clock_in_digits
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.quantities import numbers, quantities
from assistant.language.starting import time_of

# As what a start that is told is read; whatever else is asked with it has an answer of its own.
TELLS = ("note", "set-table", "unclear", "undo", "wines-for-food", "choose-wines")


def begins(frame: Frame) -> bool:
    """Whether all that is told is when the evening begins (`no, we start at half past six`)."""
    told = frame.intent in TELLS and says(frame, "starts-at") and not frame.topics
    return told and time_of(clock_in_digits(frame.text.typed)) is not None and not runs_late(frame)


def runs_late(frame: Frame) -> bool:
    """Whether time is said to be over (`we're 15 over`), and neither money nor anybody's health is meant."""
    found = numbers(frame.text.stems)
    people = len(found) == 1 and quantities(frame.text).people is not None  # `two guests are late`
    late = says(frame, "plan-behind") or (says(frame, "plan-over") and bool(found))
    return late and not people and not (overspends(frame) or frame.topics or frame.diets)


def buys(frame: Frame) -> bool:
    """Whether it is asked what so much money buys (`what should I buy with the 120`)."""
    return says(frame, "money-buys") and bool(numbers(frame.text.stems)) and not frame.topics


def food_late(frame: Frame) -> bool:
    """Whether what is eaten is told to be late, which leaves time (`the ham needs an hour`)."""
    told = says(frame, "food-late") and not opens(frame, "yes-no")
    poured = any(reading.type == "Wine" for reading in frame.text.readings)  # `a late-harvest Riesling`
    return told and not (frame.topics or poured)


def overspends(frame: Frame) -> bool:
    """Whether money is said to be over (`15 euros over`)."""
    return says(frame, "plan-overspent") and not frame.topics
