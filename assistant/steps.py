"""The table step by step, so that `undo` right after a change takes the table back too."""

from __future__ import annotations

from dataclasses import dataclass, field

from assistant.language.frame import Frame
from assistant.language.standing import Talk
from assistant.tonight import Tonight

UNDO = "undo"


@dataclass(slots=True)
class Steps:
    """How the table and the turn that stands were before each of the last changes, the newest last."""

    before: list[tuple[Tonight, Talk | None]] = field(default_factory=list)

    def noted(self, tonight: Tonight, talk: Talk | None, now: Tonight) -> None:
        """Takes down what stood before a turn; one that changed nothing ends the row of changes."""
        if tonight == now:
            self.before.clear()
        else:
            self.before.append((tonight, talk))

    def back(self, frame: Frame) -> tuple[Tonight, Talk | None] | None:
        """What stood before the last change, where `undo` means that; it is taken from the row."""
        named = any(reading.type in ("Wine", "Food", "Drink") for reading in frame.text.readings)
        return self.before.pop() if self.before and frame.intent == UNDO and not named else None
