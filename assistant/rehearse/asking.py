"""Whether a frame asks to rehearse or for what was not known, and what answers it."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.language.frame import Frame
from assistant.rehearse.words import rehearse_words

if TYPE_CHECKING:
    from assistant.session import Session

NEVER = ("safety", "undo", "teach", "note", "trouble")


def by_talk(frame: Frame) -> Callable[[Context, Session], Answer | None] | None:
    """The builder of the answer, loaded only then; None for every other frame."""
    if frame.intent in NEVER or frame.topics:
        return None
    lines = rehearse_words().lines
    if lines["unknowns"].stand_in(frame.text.stems):
        from assistant.rehearse.unknown import unknown_by_talk

        return unknown_by_talk
    named = any(r.type in ("Wine", "Drink", "Food") for r in frame.text.readings)
    if not named and lines["rehearse"].stand_in(frame.text.stems):
        from assistant.rehearse.by_talk import rehearse_by_talk

        return rehearse_by_talk
    return None
