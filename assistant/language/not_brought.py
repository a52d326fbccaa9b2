"""What is told not to have come: it is put on no table, and comes off where it was counted on."""

from __future__ import annotations

from assistant.language.dish_edits import POURED
from assistant.language.follow_lines import follow_lines, says
from assistant.language.frame import Frame, Reading
from assistant.language.small_words import small_words
from assistant.language.sorting import EDIBLE

TOLD = (
    "set-table",
    "wines-for-food",
    "foods-for-wine",
    "unclear",
    "note",
    "smalltalk",
    "substitute",
    "describe",
    "judge-pair",
    "compare",
)


def not_brought(frame: Frame) -> list[Reading]:
    """What nobody brought, or never came; empty where something is asked, or it may come yet."""
    asks = says(frame, "menu-asks") or "?" in frame.text.typed or bool(frame.topics)
    if asks or frame.intent not in TOLD or says(frame, "not-yet"):
        return []
    named = [r for r in frame.text.readings if r.kind in (*EDIBLE, *POURED)]
    return [reading for reading in named if _is_missed(frame, reading)]


def _is_missed(frame: Frame, reading: Reading) -> bool:
    """Whether a name stands behind `nobody brought` with no turn between, or right before `never came`."""
    stems, lines = frame.text.stems, follow_lines()
    ends = [places[-1] + 1 for places in lines["not-brought"].find(stems) if places[-1] < reading.start]
    if ends and small_words()["turns-to"].isdisjoint(stems[max(ends) : reading.start]):
        return True
    return any(places[0] == reading.end for places in lines["never-came"].find(stems))
