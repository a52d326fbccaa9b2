"""`Say that again` and `shorter please`: the answer before once more, whole or in its first sentence."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.record import Answer
from assistant.language.follow_lines import wants_again, wants_shorter


def told_again(typed: str, last: Answer) -> Answer | None:
    """The answer before as it is asked for; None where anything else is asked."""
    if wants_again(typed, "" if last.verdict else last.intent):
        return replace(last, question=typed)
    return replace(last, question=typed, text=last.say) if wants_shorter(typed) else None
