"""`not so stiff`, `more casual`: the text last written once more, in another manner."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.after.message import message, message_for_all, messages
from assistant.after.phrases import one_of, said
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.taught.telling import plain

if TYPE_CHECKING:
    from assistant.session import Session

WRITERS = {"message": message, "message-all": messages, "message-one": message_for_all}


def in_manner(context: Context, session: Session) -> Answer:
    """The last text anew, warmer, or stiffer where that is asked for; the texts after it are so too."""
    if session.written is None:
        return plain(context, said("message", "manner-none"), understood=False)
    stems = context.frame.text.stems
    session.warm_texts = not one_of(stems, "stiff") or one_of(stems, "less_of")
    written = session.written
    return WRITERS[written.after](replace(context, frame=written), session)
