"""`what do I do with the leftovers`: how and how long each thing on the table keeps."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from assistant.after.opened import wines_meant
from assistant.after.outside import CAUTIONS, room
from assistant.after.phrases import said
from assistant.after.telling import time_in_words, told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import caution
from assistant.answers.wording import capital
from assistant.evening.leftovers import keeps, storage
from assistant.evening.outside import limit_minutes, rest_minutes
from assistant.evening.records import FoodLine

if TYPE_CHECKING:
    from assistant.session import Session


def left_over(context: Context, session: Session) -> Answer:
    """Every food named, or else on the table, what keeps least first; then the wines."""
    dishes = context.frame.dishes or context.tonight.dishes
    wines = wines_meant(context) or ([] if context.frame.dishes else list(context.tonight.wines))
    if not dishes and not wines:
        return told(context, [said("leftovers", "none")], understood=False)
    lines = [FoodLine(context.one_dish(dish), (dish,)) for dish in dishes]
    kept = sorted(lines, key=lambda line: _days(line, context))
    spoils = [line for line in kept if rest_minutes(line, context.knowledge) is not None]
    known = [line.label for line in spoils if storage(line, context.knowledge)]
    shown = [*_foods(kept, context), *_wines(wines, context)]
    head = [said("leftovers", "say", first=known[0])] if len(known) > 1 else []
    limit = time_in_words(limit_minutes(room(context)))
    caution_ = caution(context, CAUTIONS[-1])
    source = context.wording("line", "source", source=caution_["source"])
    return told(context, [*head, *shown, said("leftovers", "bin", limit=limit), caution_["text"], source])


def _days(line: FoodLine, context: Context) -> float:
    found = keeps(line, context.knowledge)
    return found.typical if found else float("inf")


def _foods(lines: list[FoodLine], context: Context) -> Iterator[str]:
    for line in lines:
        how = storage(line, context.knowledge)
        kind = "one" if how else "dry"
        yield capital(
            said("leftovers", kind, food=f"{line.label}:" if how else line.label, storage=f"{how}.")
        )


def _wines(wines: list[str], context: Context) -> Iterator[str]:
    for wine in wines:
        days = context.knowledge.keeps_open(wine)
        if days:
            fields = {"wine": context.knowledge.label(wine), "low": f"{days.low:g}", "high": f"{days.high:g}"}
            yield capital(said("leftovers", "wine", **fields))
