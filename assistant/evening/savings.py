"""How the evening costs less: smaller pours, fewer wines, or a cheaper wine that does nearly as well."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from assistant.answers.wording import listed
from assistant.evening.bottles import smaller_pours
from assistant.evening.choose_search import choose
from assistant.evening.choose_task import CLOSE, Scores, Task
from assistant.evening.coverage import cheapest_swap, coverage
from assistant.evening.facts import wording
from assistant.evening.records import Evening
from assistant.evening.selecting import MOST_STATES, Selection, prices_of
from assistant.evening.tasting import Tasting
from assistant.knowledge.store import Knowledge
from assistant.pairing.engine import Engine

NAMED = 4  # so many wines are named in a sentence
Row = dict[str, Any]


def savings(evening: Evening, tasting: Tasting | None, selection: Selection, engine: Engine) -> list[Row]:
    """What could be saved on the wines poured, the gentlest first: `{say, saved, pour_ml}`."""
    if tasting is None or selection.task is None or not evening.wines:
        return []
    known, prices = engine.knowledge, prices_of(evening, engine.knowledge)
    found = [
        *_pours(evening, prices, known),
        *_fewer(evening, tasting.tasted, prices, known),
        *_swap(evening, selection.task, known),
    ]
    return [row for row in found if row["saved"] > CLOSE]


def _pours(evening: Evening, prices: dict[str, float], knowledge: Knowledge) -> Iterator[Row]:
    """The first step down at which money is saved."""
    for ml in smaller_pours(evening, knowledge):
        after = prices_of(replace(evening, pour_ml=ml), knowledge)
        wines = [wine for wine in prices if after[wine] < prices[wine]]
        if wines:
            saved = sum(prices[wine] - after[wine] for wine in wines)
            yield _row("pour", evening, saved, wines=_named(wines), ml=ml)
            return


def _named(wines: list[str]) -> str:
    """The wines, or how many they are."""
    return listed(wines) if len(wines) <= NAMED else wording()("saving", "wines", count=len(wines))


def _fewer(evening: Evening, scores: Scores, prices: dict[str, float], knowledge: Knowledge) -> Iterator[Row]:
    """The fewest of the wines poured that serve the food nearly as well."""
    poured = [line.label for line in evening.wines]
    must = frozenset(line.label for line in evening.wines if line.must)
    for count in range(max(len(must), 1), len(poured)):
        choice = choose(Task(scores.among(poured), count, 0.0, must=must), MOST_STATES)
        if choice and _serves(scores, poured, choice.wines, knowledge):
            kept = [wine for wine in poured if wine in choice.wines]
            saved = sum(prices[wine] for wine in poured if wine not in kept)
            yield _row("fewer", evening, saved, wines=listed(kept))
            return


def _serves(scores: Scores, poured: list[str], kept: tuple[str, ...], knowledge: Knowledge) -> bool:
    """Whether some of the wines serve the food nearly as well as all, and leave nothing out."""
    lost = scores.mean(poured) - scores.mean(kept)
    gaps = len(coverage(scores, kept).gaps) - len(coverage(scores, poured).gaps)
    return lost < knowledge.constants["choice-saturated"] and gaps == 0


def _swap(evening: Evening, task: Task, knowledge: Knowledge) -> Iterator[Row]:
    """A wine of the list that costs less in place of one that is poured."""
    if len(evening.wines) != task.count:
        return
    swap = cheapest_swap(task, [line.label for line in evening.wines])
    if swap and swap.lost < knowledge.constants["choice-saturated"]:
        yield _row("swap", evening, swap.saved, into=swap.into, out=swap.out)


def _row(name: str, evening: Evening, saved: float, ml: float | None = None, **told: object) -> Row:
    say = wording()("saving", name, saved=evening.money(saved), ml=ml, **told)
    return {"say": say, "saved": round(saved, 2), "pour_ml": ml}
