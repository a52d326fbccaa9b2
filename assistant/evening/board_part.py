"""The board of an evening: balance, bridges, gaps, traps, the best swap, and the order of eating."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from assistant.evening.board import Amounts, BoardItem, board_item, findings, traps
from assistant.evening.board_change import best_changes
from assistant.evening.board_words import told, wrong
from assistant.evening.care import stands
from assistant.evening.choose_task import Scores
from assistant.evening.coverage import bridges, coverage, friends
from assistant.evening.facts import wording
from assistant.evening.food_order import eating_order
from assistant.evening.needs import Need, understood
from assistant.evening.records import Evening
from assistant.evening.tasting import Tasting, rests
from assistant.knowledge.diets import Fit
from assistant.session import Session


def board(evening: Evening, tasting: Tasting | None, session: Session) -> dict[str, Any]:
    """The `board` of a plan: sentences under `balance`, labels under `gaps`, `bridges` and `traps`.

    `lonely` are wines with too few friends among the foods; `swap` and `add` are None where nothing helps.
    """
    if tasting is None:
        return {
            "balance": [],
            "gaps": [],
            "lonely": [],
            "bridges": [],
            "traps": [],
            "swap": None,
            "add": None,
        }
    items, grams = _items(evening, tasting, session)
    poured = [line.label for line in evening.wines]
    spans = bridges(tasting.every, poured, session.knowledge.constants) if poured else ()
    found = wrong(findings(items, session.knowledge, Amounts(tuple(grams), given=True)), session.knowledge)
    changes = _changes(items, evening, session)
    return {
        "balance": [told(finding, session.knowledge, session.wording) for finding in found],
        "gaps": list(coverage(tasting.tasted, poured).gaps) if poured else [],
        "lonely": _lonely(tasting.tasted, poured, session),
        "bridges": list(spans),
        "traps": list(dict.fromkeys(item.label for item in traps(items))),
        **changes,
    }


def _items(evening: Evening, tasting: Tasting, session: Session) -> tuple[list[BoardItem], list[float]]:
    """The things on the board and the grams of each for one guest."""
    named = [(line, dish) for line in evening.foods for dish in line.dishes]
    items = [board_item(line.label, dish, session.engine) for line, dish in named]
    return items, [tasting.grams[line.label] / len(line.dishes) for line, _ in named]


def _lonely(scores: Scores, poured: Sequence[str], session: Session) -> list[str]:
    """The wines with fewer friends than a wine should have."""
    least = min(session.knowledge.constants["choice-friends"], len(scores.foods))
    return [wine for wine in poured if len(friends(scores, wine)) < least]


def _changes(items: Sequence[BoardItem], evening: Evening, session: Session) -> dict[str, Any]:
    """The best swap and addition, never of what a guest with an allergy may not be near."""
    needs = [n for guest in evening.needs for said in guest.needs for n in understood(said, session)]
    allergies = [need for need in needs if need.allergy]
    wines = list(dict.fromkeys(line.wine for line in evening.wines))
    found = best_changes(items, session.engine, wines, suits=lambda f: _suits(f, allergies, session))
    swaps = [{"out": change.out.label, "into": change.into.label} for change in found if change.out]
    adds = [{"into": change.into.label} for change in found if not change.out]
    return {"swap": next(iter(swaps), None), "add": next(iter(adds), None)}


def _suits(food: str, needs: Sequence[Need], session: Session) -> bool:
    return all(stands(food, need, session.knowledge) is not Fit.NO for need in needs)


def food_order(evening: Evening, session: Session) -> list[dict[str, str]]:
    """The `food_order` of a plan: `{food, reason}`, the quiet before the loud, the sweet last.

    Plain bread and crackers stand at the end: they belong between the others.
    """
    engine = session.engine
    resting = [line for line in evening.foods if rests(line, engine)]
    tasted = [line for line in evening.foods if line not in resting]
    steps = eating_order([engine.plate(line.dishes[0]) for line in tasted], session.knowledge.constants)
    names = [(tasted[step.food].label, step.reason) for step in steps[:-1]]
    names += [(tasted[step.food].label, f"last-{step.reason}") for step in steps[-1:]]
    names += [(line.label, "rest") for line in resting]
    return [{"food": food, "reason": wording()("eat", name)} for food, name in names]
