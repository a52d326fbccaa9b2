"""What is behind something guests notice, do or wonder about."""

from __future__ import annotations

from assistant.answers.context import Context
from assistant.answers.notes import note_lines, noted, rule_lines
from assistant.answers.record import Answer
from assistant.knowledge.concepts import first


def explained(context: Context) -> Answer:
    """The explanation asked for: a sentence to say, what is behind it, the pairing rules that rest on it."""
    entry = context.knowledge.entry(context.frame.entries[0])
    lines = [str(first(entry, "behind")), *rule_lines(context, entry.get("spokenFor", ()))]
    return noted(context, str(first(entry, "say")), [*lines, *note_lines(context, entry)], [entry])
