"""What is asked on about trouble that was just told: `how do I warm it up`, `can I save it`."""

from __future__ import annotations

from dataclasses import replace

from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.spoken import Spoken

TROUBLE = "trouble"


def mended_on(frame: Frame, spoken: Spoken) -> Frame:
    """The frame about the trouble just told, where it is asked how that is mended and nothing is named."""
    named = any(reading.type in ("Food", "Wine", "Drink") for reading in frame.text.readings)
    if not spoken.ails or frame.text.entries or named or not says(frame, "mends-it"):
        return frame
    return replace(frame, intent=TROUBLE, entries=spoken.ails, topics=(), dishes=(), preferences=())
