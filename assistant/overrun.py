"""Time or money that is said to be over: `we're 15 over`, `15 euros over`."""

from __future__ import annotations

from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.quantities import numbers, quantities


def runs_late(frame: Frame) -> bool:
    """Whether time is said to be over (`we're 15 over`), and neither money nor anybody's health is meant."""
    found = numbers(frame.text.stems)
    people = len(found) == 1 and quantities(frame.text).people is not None  # `two guests are late`
    late = says(frame, "plan-behind") or (says(frame, "plan-over") and bool(found))
    return late and not people and not (overspends(frame) or frame.topics)


def overspends(frame: Frame) -> bool:
    """Whether money is said to be over (`15 euros over`)."""
    return says(frame, "plan-overspent") and not frame.topics
