"""A question answered as one about a saying or trouble, whatever its words speak for."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.builders import BUILDERS
from assistant.session import Session


def told(session: Session, intent: str, question: str) -> Answer:
    """The answer that the builder of this intent gives to a question with nothing said before."""
    session.new_conversation()
    frame = session.parser.entries.told(replace(session.parser.parse(question), intent=intent))
    context = Context(frame, session.engine, session.wording, session.parser.topics.by_id, 3)
    return BUILDERS[intent](context)
