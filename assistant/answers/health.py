"""Whether a line tells of somebody's body: no file of what was typed or answered keeps its words."""

from __future__ import annotations

from assistant.answers.record import Answer
from assistant.language.frame import Frame
from assistant.language.guests import all_asked
from assistant.language.party import party_of

HEALTH = "safety"


def of_health(frame: Frame, answer: Answer) -> bool:
    """Whether a question or its answer tells of health or safety, or of what a guest must not have."""
    topics = frame.topics or frame.text.topics or answer.cautions
    told = all_asked(frame.text.typed) or party_of(frame.text)
    return bool(topics or told) or HEALTH in (frame.intent, answer.intent)
