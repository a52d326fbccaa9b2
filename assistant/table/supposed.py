"""What is only supposed: `what if I leave out the garlic` changes nothing on the table."""

from __future__ import annotations

from dataclasses import replace

from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame

SUPPOSES, SETS = "what-if", "set-table"
PAIRS = ("foods-for-wine", "wines-for-food")


def only_supposed(frame: Frame) -> bool:
    """Whether it is only asked what would be, so that the table stays as it is."""
    return says(frame, "what-if-asked") or opens(frame, "only-supposed")


def as_supposed(frame: Frame) -> Frame:
    """The frame as one that supposes, where it would set the table or names a food beside a wine."""
    beside = frame.dishes and frame.wines and frame.intent in PAIRS
    return replace(frame, intent=SUPPOSES) if beside or frame.intent == SETS else frame
