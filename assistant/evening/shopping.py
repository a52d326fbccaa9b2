"""The shopping list in shop units with what it costs, and whether the budget holds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil
from typing import Any

from assistant.answers.wording import listed
from assistant.evening.bottles import Bottles
from assistant.evening.facts import fact, wording
from assistant.evening.portions import Portion, class_of, staple, staple_food
from assistant.evening.records import Evening, FoodLine
from assistant.knowledge.store import Knowledge
from assistant.pairing.dish import single

STAPLE = "bread"


@dataclass(frozen=True, slots=True)
class Purchase:
    """A line of the list; `cost` is None where no price is known."""

    item: str
    amount: float
    unit: str
    cost: float | None


def shopping(
    evening: Evening,
    wines: Sequence[Bottles],
    foods: Sequence[Portion],
    ice: int,
    knowledge: Knowledge,
    apart: Sequence[str] = (),
) -> list[Purchase]:
    """What is still to be bought; `ice` in kilograms. `apart`: guests who may not have the plain bread."""
    prices = {line.label: line.price for line in evening.wines}
    bottles = [_bottle(b, prices[b.wine]) for b in wines if b.to_buy]
    lines = zip(evening.foods, foods, strict=True)
    bought = [_food(line, portion) for line, portion in lines if portion.to_buy]
    return [*bottles, *bought, *_staples(evening, ice, knowledge), *_apart(evening, apart)]


def bought_bread(evening: Evening, knowledge: Knowledge) -> tuple[FoodLine, ...]:
    """The plain bread that is bought because none is on the table; empty where some is, or all is brought."""
    bread = FoodLine(wording()("shop", "bread"), (single(staple_food(STAPLE)),))
    brought = any(line.brought for line in evening.foods)
    return () if brought or bread_of(evening, knowledge) else (bread,)


def bread_of(evening: Evening, knowledge: Knowledge) -> tuple[FoodLine, ...]:
    """The bread and crackers on the table."""
    return tuple(line for line in evening.foods if class_of(line.food, knowledge)["id"] == STAPLE)


def _apart(evening: Evening, guests: Sequence[str]) -> list[Purchase]:
    """Bread of their own for guests who may not have the plain one."""
    if not guests:
        return []
    grams = staple(STAPLE, replace(evening, guests=len(guests)))
    return [Purchase(wording()("shop", "bread-apart", guests=listed(list(guests))), grams, "g", None)]


def cost(evening: Evening, purchases: Sequence[Purchase]) -> dict[str, Any]:
    """The contract's `cost`: what is still to be spent; what has no price is named under `unpriced`."""
    total = round(sum(p.cost or 0.0 for p in purchases), 2)
    return {
        "total": total,
        "per_head": round(total / evening.guests, 2) if evening.guests else None,
        "currency": evening.currency,
        "within_budget": None if evening.budget is None else total <= evening.budget,
        "left": None if evening.budget is None else round(evening.budget - total, 2),
        "unpriced": [p.item for p in purchases if p.cost is None],
    }


def _bottle(wine: Bottles, price: float | None) -> Purchase:
    return Purchase(
        wine.wine, wine.to_buy, "bottle", None if price is None else round(price * wine.to_buy, 2)
    )


def _food(line: FoodLine, portion: Portion) -> Purchase:
    """A price for the grams named holds for every gram; else it is what the food costs in all."""
    price = line.price
    if price is not None and line.grams:
        price = round(price * portion.to_buy / line.grams, 2)
    return Purchase(line.label, portion.to_buy, "g", price)


def _staples(evening: Evening, ice: int, knowledge: Knowledge) -> list[Purchase]:
    """Water, ice and, where none is on the table, bread; all of them without a price."""
    litres = ceil(fact("amounts", "water", evening.meal).typical * evening.guests)
    bread = staple(STAPLE, evening) if bought_bread(evening, knowledge) else 0.0
    wanted = (("water", litres, "l"), ("ice", ice, "kg"), ("bread", bread, "g"))
    return [Purchase(wording()("shop", name), amount, unit, None) for name, amount, unit in wanted if amount]
