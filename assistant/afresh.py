"""What is said alone, whatever stands: help asked for, a new evening, an evening saved under a name."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.help import help_alone
from assistant.answers.record import Answer
from assistant.language.corrected import corrected
from assistant.language.fold import fold
from assistant.language.follow_lines import behind, opens, says, says_only
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame
from assistant.language.guests import Asked

if TYPE_CHECKING:
    from assistant.session import Session

HELP, TALKS, UNHEARD = "help", "smalltalk", "unclear"


def said_alone(frame: Frame, needs: Sequence[Asked] = ()) -> str | None:
    """The intent of a line that asks for help, begins anew, names what is saved or takes a guest off."""
    if names_evening(frame) or names_kept(frame):
        return UNHEARD  # a name tells of no food, no guest and no day
    if needs and corrected(frame.text, needs):
        return UNHEARD  # `forget Ann` takes back no step, `he's getting a cab` brings no wine
    if help_alone(frame.text.stems, HELP in frame.text.cues):
        return HELP
    return TALKS if begins_anew(frame) else None


def begins_anew(frame: Frame) -> bool:
    """Whether nothing is said but that a new evening begins (`start over`, `a new evening please`)."""
    return says_only(frame, "afresh")


def names_evening(frame: Frame) -> bool:
    """Whether the table is saved under a name, which may be made of foods (`save it as tapas night`)."""
    named = opens(frame, "names-evening") and not says(frame, "names-lesson")
    return named and bool(behind(frame, "names-evening"))


def names_kept(frame: Frame) -> bool:
    """Whether an evening that is kept is called by its whole name (`load tapas night`)."""
    return bool(kept_meant(frame))


def kept_meant(frame: Frame) -> str:
    """The evening kept that a line takes up (`open bookclub`, `bring book club back`); empty for most."""
    line = next((line for line in ("load", "load-kept") if opens(frame, line)), "")
    if not line:
        return ""
    from assistant.evening.kept import called

    words = behind(frame, line).split()
    while words and not called(" ".join(words)) and fold(words[-1]) in follow_words().load_behind:
        words.pop()
    return called(" ".join(words)) if words else ""


def afresh(context: Context, session: Session) -> Answer:
    """Forgets what stands and what was put on the table by talk; `undo` brings it back."""
    session.new_conversation()
    given = bool(session.tonight.wines or session.tonight.dishes)
    say = context.wording("say", "afresh-given" if given else "afresh")
    return replace(compose(context.all_used(), say, [say]), dish=None)
