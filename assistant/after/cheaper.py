"""`cheaper version for 20`: the same table for less a head, its wines chosen exactly within a budget."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.after.phrases import said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.bottles import bottles
from assistant.evening.facts import fact
from assistant.evening.portions import portions
from assistant.evening.records import Evening, FoodLine
from assistant.evening.selecting import food_cost, select
from assistant.evening.tasting import taste
from assistant.table.tonight import Tonight

if TYPE_CHECKING:
    from assistant.session import Session


def cheaper(evening: Evening, context: Context, session: Session) -> Answer:
    """As many of the wines as keep to a smaller sum a head, and what is left out."""
    if not any(line.price is not None for line in evening.wines):
        return told(context, [said("next", "no-prices")], understood=False)
    before, guests = _before(evening, context), max(1, evening.guests)
    old = afresh(before, before.guests, context)
    was = _total(_chosen(old, session) or old, context) / max(1, before.guests)
    budget = fact("after", "next", "cheaper").typical * was * guests
    new = replace(afresh(before, evening.guests, context), budget=budget, non_drinkers=evening.non_drinkers)
    found = _within(new, session)
    if found is None:
        return told(
            context, [said("next", "too-tight", count=new.choose or len(new.wines))], understood=False
        )
    session.proposed = _proposal(found)
    return told(context, _lines(found, old, was, context))


def _before(evening: Evening, context: Context) -> Evening:
    """The evening for as many guests as it had."""
    table = context.tonight
    if not table.guests:
        return evening
    return replace(evening, guests=round(table.guests), non_drinkers=round(table.non_drinkers))


def afresh(evening: Evening, guests: int, context: Context) -> Evening:
    """The evening for so many guests with nothing at hand: every bottle and gram is bought."""
    scale = guests / max(1, evening.guests)
    plain = replace(evening, guests=guests, foods=tuple(replace(line, grams=None) for line in evening.foods))
    needed = {p.food: p.to_buy for p in portions(plain, context.knowledge)}
    foods = tuple(_priced(line, needed[line.label], scale) for line in evening.foods)
    return replace(
        plain, foods=foods, wines=tuple(replace(line, owned=0, must=False) for line in evening.wines)
    )


def _priced(line: FoodLine, needed: float, scale: float) -> FoodLine:
    """The food with what all of it costs."""
    if line.price is None:
        return replace(line, grams=None)
    price = line.price * needed / line.grams if line.grams else line.price * scale
    return replace(line, grams=None, price=round(price, 2))


def _chosen(evening: Evening, session: Session) -> Evening | None:
    """The evening with the wines the chooser pours; None where none keep to the budget."""
    evening = replace(evening, choose=evening.choose or len(evening.wines))
    selection = select(evening, taste(evening, session.engine), session.engine)
    return evening.pouring(selection.poured) if selection.poured else None


def _within(evening: Evening, session: Session) -> Evening | None:
    """With as many wines as before or, within the budget, as few fewer as may be."""
    count = evening.choose or len(evening.wines)
    tried = (_chosen(replace(evening, choose=n), session) for n in range(count, 0, -1))
    return next((found for found in tried if found), None)


def _total(evening: Evening, context: Context) -> float:
    prices = {line.label: line.price or 0.0 for line in evening.wines}
    wine = sum(prices[b.wine] * b.to_buy for b in bottles(evening, context.knowledge))
    return wine + food_cost(evening, context.knowledge)


def _lines(found: Evening, old: Evening, was: float, context: Context) -> list[str]:
    each = _total(found, context) / max(1, found.guests)
    wines, foods = [line.label for line in found.wines], [line.label for line in found.foods]
    gone = [line.label for line in old.wines if line.label not in wines]
    kept = [said("next", "same-foods"), said("next", "pour", ml=f"{found.pour_ml:g}")]
    return [
        said("next", "say", wines=listed(wines)),
        said("next", "with", foods=listed(foods)),
        said("next", "cheaper", each=found.money(each), old=found.money(was)),
        *([said("next", "dropped", things=listed(gone))] if gone else []),
        said("next", "kept", kept=listed([said("next", "guests", count=found.guests), *kept])),
        said("next", "take"),
    ]


def _proposal(found: Evening) -> Tonight:
    dishes = [dish for line in found.foods for dish in line.dishes]
    wines = tuple(line.wine for line in found.wines)
    table = Tonight(wines, (), float(found.guests), float(found.non_drinkers), evening=found)
    return replace(table, dishes=tuple(dishes))
