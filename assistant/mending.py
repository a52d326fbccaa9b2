"""What is asked on about trouble that was just told: `how do I warm it up`, `can I save it`."""

from __future__ import annotations

from dataclasses import replace

from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.spoken import Spoken

TROUBLE = "trouble"
SMELLED, FAULT, SOUND = "trouble/maybe-corked", "fault/", "fault/sound"


def mended_on(frame: Frame, spoken: Spoken) -> Frame:
    """The frame about the trouble just told, where it is asked how that is mended and nothing is named.

    Where it was asked what a bottle smells of, the smell that is told is taken for the answer.
    """
    if SMELLED in spoken.ails and (smell := _smell(frame)):
        return replace(frame, intent=TROUBLE, entries=(smell,), topics=(), dishes=(), preferences=())
    named = any(reading.type in ("Food", "Wine", "Drink") for reading in frame.text.readings)
    if not spoken.ails or frame.text.entries or named or not says(frame, "mends-it"):
        return frame
    return replace(frame, intent=TROUBLE, entries=spoken.ails, topics=(), dishes=(), preferences=())


def _smell(frame: Frame) -> str:
    """The fault that a smell tells, or that the bottle is sound; empty where none is told."""
    if frame.topics or (frame.intent == TROUBLE and frame.entries):
        return ""
    faults = [cue.name for cue in frame.text.entries if cue.name.startswith(FAULT)]
    return faults[0] if faults else SOUND if says(frame, "smells-sound") else ""
