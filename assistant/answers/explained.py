"""What is behind something guests notice, do or wonder about."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from assistant.answers.context import Context
from assistant.answers.judge import called, forces, judged, repairs
from assistant.answers.notes import note_lines, noted, rule_lines
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.knowledge.concepts import first
from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data

EXPLAINED = "explained"


def explained(context: Context) -> Answer:
    """The explanation asked for: a sentence to say, what is behind it, the pairing rules that rest on it."""
    entry = context.knowledge.entry(context.frame.entries[0])
    rules = rule_lines(context, entry.get("spokenFor", ()))
    lines = [*_suspected(context), str(first(entry, "behind")), *(_of_pair(context) or rules)]
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


def _suspected(context: Context) -> list[str]:
    """The foods of the table that may be behind it, if any are known to be."""
    kinds = _suspects().get(context.frame.entries[0], frozenset())
    broader, dishes = context.knowledge.broader, context.tonight.dishes
    found = [one for one in dishes if any(kinds.intersection((p.food, *broader(p.food))) for p in one.parts)]
    names = listed([context.one_dish(one) for one in found])
    return [context.wording("line", "suspects", foods=names)] if found else []


@lru_cache(maxsize=1)
def _suspects() -> Mapping[str, frozenset[str]]:
    """The kinds of food that may be behind what is explained, by its entry."""
    return read_data(
        corpus_dir() / "language" / "explanations.toml",
        lambda tables: {
            f"{EXPLAINED}/{name}": frozenset(row.get("suspects", ()))
            for name, row in tables[EXPLAINED].items()
        },
    )
