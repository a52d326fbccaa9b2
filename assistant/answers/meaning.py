"""What a word means: a term of the trade in one sentence, or what is named besides (`dessert wine`)."""

from __future__ import annotations

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.describe import describe
from assistant.answers.record import Answer
from assistant.answers.wording import capital
from assistant.language.frame import Frame

DEFINED = ("Kind", "Aroma", "Method")


def has_meaning(frame: Frame) -> bool:
    """Whether anything is named whose meaning can be told."""
    named = frame.terms or frame.wines or frame.dishes
    return bool(named) or any(reading.type in DEFINED for reading in frame.text.readings)


def meaning(context: Context) -> Answer:
    """The term, else the kind, smell or method, else what the wine or food is like."""
    frame = context.frame
    if frame.terms:
        return _term(context, frame.terms[0])
    named = [r.id for r in frame.text.readings if r.type in DEFINED]
    told = [i for i in named if context.knowledge.entry(i).get("definition")]
    if told and not frame.wines:
        return _thing(context, told[-1])
    return describe(context) if frame.wines or frame.dishes else _thing(context, named[-1])


def _term(context: Context, term: str) -> Answer:
    entry = context.knowledge.entry(term)
    definition = str(entry["definition"][0])
    say = str(entry.get("say", entry["definition"])[0])
    return compose(context, say, [say, definition] if say != definition else [say])


def _thing(context: Context, subject: str) -> Answer:
    entry, label = context.knowledge.entry(subject), capital(context.knowledge.label(subject))
    told = str(entry.get("definition", [label])[0])
    say = context.wording("say", "means", name=label, meaning=f"{told[:1].lower()}{told[1:]}")
    return compose(context, say, [say])
