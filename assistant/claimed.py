"""What guests claim against each other: what a wine is made of, whether it is chilled, who has the points."""

from __future__ import annotations

from dataclasses import replace

from assistant.language.dish_edits import POURED
from assistant.language.follow_lines import follow_lines, says
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE

DESCRIBES, SERVICE, SMALLTALK = "describe", "service", "smalltalk"
CLAIMED = ("pour-order", "compare", "judge-pair", "foods-for-wine", "describe", "unclear", "smalltalk",
           "wines-for-food", "set-table", "note", "myth", "define")  # fmt: skip
COUNTED = ("quantity", "smalltalk", "unclear", "note", "compare", "wines-for-food")
GRAPE = "grape/"


def claimed(frame: Frame) -> Frame | None:
    """The frame that settles what is claimed of one wine; None where nothing is."""
    if any(reading.kind in EDIBLE for reading in frame.text.readings):
        return None
    if not frame.text.readings and frame.intent in COUNTED and says(frame, "points"):
        return replace(frame, intent=SMALLTALK, dishes=(), wines=(), again="")
    if frame.intent not in CLAIMED:
        return None
    return _made_of(frame) or _chilled(frame)


def _made_of(frame: Frame) -> Frame | None:
    """`Rioja has to be Tempranillo`: what the wine is made of."""
    named = [r for r in frame.text.readings if r.kind in POURED]
    if len(named) != 2 or not any(one.startswith(GRAPE) for one in (named[1].id, *named[1].others)):
        return None
    between = frame.text.stems[named[0].end : named[1].start]
    wine = next((one for one in (named[0].id, *named[0].others) if one.startswith("wine/")), None)
    if wine is None or not follow_lines()["must-be"].stand_in(between):
        return None
    return replace(frame, intent=DESCRIBES, wines=(wine,), dishes=(), preferences=(), again="")


def _chilled(frame: Frame) -> Frame | None:
    """`Beaujolais is best chilled, no, room temp`: how cold the wine is poured."""
    one = len(frame.wines) == 1 and says(frame, "chilled-or-warm")
    return replace(frame, intent=SERVICE, dishes=(), preferences=(), again="") if one else None
