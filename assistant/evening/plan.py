"""The plan of an evening, as the contract has it: which wines, with what, and all that follows from them."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from assistant.evening.alcohol_free import alcohol_free_drinks, drinks_for
from assistant.evening.board_part import board, food_order
from assistant.evening.care import stands
from assistant.evening.chosen_part import chosen
from assistant.evening.flight_rows import flight, pour_rows
from assistant.evening.leftovers import allergens_of, food_facts
from assistant.evening.needs import understood
from assistant.evening.numbers import numbers
from assistant.evening.records import Evening
from assistant.evening.savings import savings
from assistant.evening.selecting import select
from assistant.evening.tasting import Tasting, taste
from assistant.evening.why_chosen import Why
from assistant.knowledge.diets import Fit
from assistant.session import Session
from assistant.taught.in_plan import with_hosts
from assistant.waiting import Told, silent

FEW_DRINKS = 3
Rows = list[dict[str, Any]]


def plan(
    evening: Evening, session: Session, now: datetime | None = None, told: Told = silent
) -> dict[str, Any]:
    """Every field of the contract, ready for JSON; `now` in local time (see `numbers.local`) gives `rescue`;
    `told` hears how far the tasting is.

    Beside them `title`, `start`, `guests` and the like, `why_chosen`, `flight`, `food_order`, `board`,
    `foods`, `if_more` and `rescue`; plan.schema.json describes them. `from_list` is
    for who filled the evening out of a list of bottles (`assistant.stock.evening`).
    """
    engine = session.engine
    tasting = taste(evening, engine, told)
    selection = select(evening, tasting, engine)
    poured = evening.pouring(selection.poured)
    drinks = _without_alcohol(poured, tasting, session)
    told_of = chosen(poured, tasting, selection, engine)
    found = numbers(poured, session, now, [why.wine for why in drinks], selection.problems)
    return {
        **_head(evening),
        **told_of,
        "pairings": with_hosts(told_of["pairings"], poured, tasting, session.taught),
        "pour_order": pour_rows(poured, session),
        "flight": flight(poured, tasting, session),
        "food_order": food_order(poured, session),
        "board": board(poured, tasting, session),
        "alcohol_free": [_drink_row(why, session) for why in drinks],
        **found,
        "from_list": [],
        "savings": savings(poured, tasting, selection, engine),
        "foods": _joined(found["foods"], food_facts(poured, session.engine)),
    }


def _head(evening: Evening) -> dict[str, Any]:
    """What the file says of the evening as a whole."""
    start = evening.start.isoformat(timespec="minutes") if evening.start else None
    counts = {"guests": evening.guests, "drinkers": evening.drinkers, "pour_ml": evening.pour_ml}
    return {"title": evening.title or None, "start": start, "meal": evening.meal, **counts}


def _without_alcohol(poured: Evening, tasting: Tasting | None, session: Session) -> list[Why]:
    """A flight without alcohol, as many drinks as wines; none that a guest may not have."""
    if tasting is None:
        return []
    scores, engine = tasting.tasted, session.engine
    plates = [tasting.plates[food] for food in scores.foods]
    needs = [n for g in poured.needs for said in g.needs for n in understood(said, session)]
    banned = [
        drink
        for drink in alcohol_free_drinks(engine)
        if any(stands(drink, need, session.knowledge) is Fit.NO for need in needs)
    ]
    count = len(poured.wines) or FEW_DRINKS
    return drinks_for(plates, scores.foods, scores.weights, engine, count, banned)


def _drink_row(why: Why, session: Session) -> dict[str, Any]:
    """A row of the contract's `alcohol_free`: `food` is what it suits best, `foods` all it serves best."""
    told = {"food": why.own.food, "verdict": why.own.verdict, "foods": list(why.foods)}
    return {"drink": session.knowledge.label(why.wine), **told, **allergens_of([why.wine], session.knowledge)}


def _joined(rows: Rows, more: Rows) -> Rows:
    """Rows about the same foods, in the same order, as one."""
    return [row | other for row, other in zip(rows, more, strict=True)]
