"""What is said alone, whatever stands: that help is asked for, or that a new evening begins."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.help import help_alone
from assistant.answers.record import Answer
from assistant.language.follow_lines import says_only
from assistant.language.frame import Frame

if TYPE_CHECKING:
    from assistant.session import Session

HELP, TALKS = "help", "smalltalk"


def said_alone(frame: Frame) -> str | None:
    """The intent of a line that asks for help or begins anew, and says nothing else."""
    if help_alone(frame.text.stems, HELP in frame.text.cues):
        return HELP
    return TALKS if begins_anew(frame) else None


def begins_anew(frame: Frame) -> bool:
    """Whether nothing is said but that a new evening begins (`start over`, `a new evening please`)."""
    return says_only(frame, "afresh")


def afresh(context: Context, session: Session) -> Answer:
    """Forgets what stands and what was put on the table by talk; `undo` brings it back."""
    session.new_conversation()
    given = bool(session.tonight.wines or session.tonight.dishes)
    say = context.wording("say", "afresh-given" if given else "afresh")
    return replace(compose(context.all_used(), say, [say]), dish=None)
