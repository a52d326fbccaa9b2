"""What hosts said of the pairs of an evening, beside the book's verdicts in the rows of its plan."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from assistant.answers.sanitise import safe
from assistant.evening.records import Evening, FoodLine, WineLine
from assistant.evening.tasting import Tasting
from assistant.notebook import Statement
from assistant.taught.keeper import Keeper
from assistant.taught.pairs import HOST, apart, first_of, said_of, verdict_of

Row = dict[str, Any]


def with_hosts(rows: Sequence[Row], evening: Evening, tasting: Tasting | None, keeper: Keeper) -> list[Row]:
    """The rows of `pairings`, each with `host`: what a host said of the food with a wine poured.

    Of each: `wine`, `verdict`, `first` (whether it is told before the book's), the `book`'s verdict with its
    signed `score`, `apart` in steps (above the book: positive), `author`, `when`, and the words `said`.
    """
    if tasting is None or not keeper.overlay.pairings:
        return [{**row, "host": []} for row in rows]
    foods = {line.label: line for line in evening.foods}
    return [{**row, "host": _said(foods[row["food"]], evening, tasting, keeper)} for row in rows]


def _said(food: FoodLine, evening: Evening, tasting: Tasting, keeper: Keeper) -> list[Row]:
    found = []
    for wine in evening.wines:
        one = said_of(food.dishes[0], wine.wine, keeper) if len(food.dishes) == 1 else None
        if one is not None:
            found.append(_row(one, food, wine, tasting, keeper))
    return sorted(found, key=lambda row: not row["first"])


def _row(one: Statement, food: FoodLine, wine: WineLine, tasting: Tasting, keeper: Keeper) -> Row:
    book, host = tasting.matches[food.label][wine.label], verdict_of(one)
    return {
        "wine": wine.label,
        "verdict": host,
        "first": first_of(one.about, keeper) == HOST,
        "book": book.verdict,
        "score": round(book.score, 1),
        "apart": apart(host, book.verdict, keeper.knowledge),
        "author": safe(one.author),
        "when": one.when.isoformat(),
        "said": safe(one.said),
    }
