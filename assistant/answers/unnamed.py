"""A saying or trouble that is not known: said so, with the nearest that are known."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import safety
from assistant.answers.wording import listed


def unnamed(context: Context, say: str, ask: str) -> Answer:
    """Says by the named templates that nothing is known and asks back; safety topics are answered instead."""
    if context.frame.topics:
        return safety(context)
    said, asked = context.wording("say", say), context.wording("line", ask)
    names = [f"“{context.knowledge.label(name)}”" for name in context.frame.nearest]
    near = [context.wording("line", "nearest", names=listed(names))] if names else []
    answer = compose(context, said, [said, *near, asked])
    return replace(answer, dish=None, clarify=asked, understood=False)
