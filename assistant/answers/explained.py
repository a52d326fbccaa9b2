"""What is behind something guests notice, do or wonder about."""

from __future__ import annotations

from assistant.answers.context import Context
from assistant.answers.judge import called, forces, judged, repairs
from assistant.answers.notes import note_lines, noted, rule_lines
from assistant.answers.record import Answer
from assistant.answers.wording import capital
from assistant.knowledge.concepts import first


def explained(context: Context) -> Answer:
    """The explanation asked for: a sentence to say, what is behind it, the pairing rules that rest on it."""
    entry = context.knowledge.entry(context.frame.entries[0])
    rules = rule_lines(context, entry.get("spokenFor", ()))
    lines = [str(first(entry, "behind")), *(_of_pair(context) or rules)]
    return noted(context, str(first(entry, "say")), [*lines, *note_lines(context, entry)], [entry])


def _of_pair(context: Context) -> list[str]:
    """What the book says of the pair named, and what would do better; empty where none is named."""
    frame = context.frame
    if not (frame.wines and frame.dishes):
        return []
    match = judged(context, frame.wines[0])
    named = {"wine": called(context, match.wine), "dish": context.dish_name(), "verdict": match.verdict}
    line = capital(context.wording("line", "book-pair", **named))
    others = [better for better in repairs(context, match) if called(context, match.wine) not in better]
    return [line, *forces(context, match), *others]
