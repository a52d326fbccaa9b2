"""The table step by step, so that `undo` right after a change takes the table back too."""

from __future__ import annotations

from dataclasses import dataclass, field

from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.standing import Talk
from assistant.table.tonight import Tonight

UNDO = "undo"
Standing = tuple[Tonight, Talk | None]


@dataclass(slots=True)
class Steps:
    """How the table and the turn that stands were before each of the last changes, the newest last."""

    before: list[Standing] = field(default_factory=list)

    def noted(self, before: Standing, now: Standing, kept: bool) -> None:
        """Takes down what stood before a turn; what is kept in the notebook, or stands, ends the row."""
        if before[0] != now[0]:
            self.before.append(before)
        elif kept or before[1] is not now[1]:
            self.before.clear()

    def back(self, frame: Frame) -> Standing | None:
        """What stood before the last change, where `undo` means that; it is taken from the row."""
        named = any(reading.type in ("Wine", "Food", "Drink") for reading in frame.text.readings)
        undone = frame.intent == UNDO and not (named or says(frame, "guest-goes"))
        return self.before.pop() if self.before and undone else None
