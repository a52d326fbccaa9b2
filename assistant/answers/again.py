"""`Say that again` and `shorter please`: the answer before once more, whole or in its first sentence."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.record import Answer
from assistant.language.follow_lines import wants_again, wants_deeper, wants_shorter

WHY = "why"


def told_again(typed: str, last: Answer) -> Answer | None:
    """The answer before as it is asked for; None where anything else is asked.

    A bare `why` after something was explained wants what is behind it, and nothing of the pair that stands.
    """
    if wants_again(typed, "" if last.verdict else last.intent):
        return replace(last, question=typed)
    _, *behind = last.text.splitlines() or [""]
    if last.intent == WHY and not last.verdict and behind and wants_deeper(typed):
        return replace(last, question=typed, say=behind[0], text="\n".join(behind))
    return replace(last, question=typed, text=last.say) if wants_shorter(typed) else None
