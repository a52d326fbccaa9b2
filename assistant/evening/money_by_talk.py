"""`what should I buy with the 120`: how many bottles the money buys, and how many a dinner takes."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, floor

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.facts import HAIR, fact
from assistant.language.follow_lines import follow_lines
from assistant.language.party import money_said
from assistant.language.quantities import numbers
from assistant.pairing.dish import table_of

MOST_NAMED, REACH = 2, 2


def bought(context: Context) -> Answer | None:
    """What the money buys for the dinner of tonight; None where no money, or no dinner, is meant."""
    tonight, price = context.tonight, _price(context)
    money = _money(context, price)
    if money is None or not (tonight.meal and tonight.guests):
        return None
    if price:
        count = f"{floor(money / price + HAIR):g}"
        lines = [context.wording("plan", "money-buys", money=f"{money:g}", count=count, price=f"{price:g}")]
    else:
        lines = []
    lines += [*_for_dinner(context), *_best(context)]
    lines += [] if price else [context.wording("plan", "money-price", money=f"{money:g}")]
    lines += [context.wording("plan", "food-brought")] if tonight.food_brought else []
    say = " ".join(lines[:2])
    return replace(compose(context.of_evening().all_used(), say, lines), dish=None, intent="plan")


def _price(context: Context) -> float | None:
    """What a bottle costs (`at like 15 each`), or None."""
    stems, lines = context.frame.text.stems, follow_lines()["price-each"]
    starts = {places[0] for places in lines.find(stems)}
    return next((n for _, end, n in numbers(stems) if starts & set(range(end, end + REACH))), None)


def _money(context: Context, price: float | None) -> float | None:
    """What there is to spend, where the text speaks of it."""
    stems, budget = context.frame.text.stems, context.tonight.budget
    said = [number for _, _, number in numbers(stems)]
    return money_said(stems) or (budget if price or budget in said else None)


def _for_dinner(context: Context) -> list[str]:
    """The bottles that a dinner takes, those that are there, and how many are short."""
    tonight = context.tonight
    drinkers = max(0.0, (tonight.guests or 0.0) - tonight.non_drinkers)
    each, owned = fact("amounts", "dinner", "bottles"), sum(count for _, count in tonight.owned)
    low, high = (ceil(drinkers * share - HAIR) for share in (each.low, each.high))
    fields = {"people": f"{drinkers:g}", "low": low, "high": high, "owned": owned}
    lines = [context.wording("plan", "dinner-bottles", **fields)]
    if owned >= high:
        return [*lines, context.wording("plan", "dinner-enough")]
    few, many = max(0, low - owned), high - owned
    more = f"{many}" if few in (0, many) else f"{few} to {many}"
    return [*lines, context.wording("plan", "dinner-short" if few else "dinner-almost", more=more)]


def _best(context: Context) -> list[str]:
    """The wines of the table that do best with its foods, all taken together."""
    tonight, engine = context.tonight, context.engine
    wines = [wine for wine in tonight.wines if wine in engine.glasses]
    if not (wines and tonight.dishes):
        return []
    found = engine.rank_each([table_of([dish]) for dish in tonight.dishes], wines)
    sums = {wine: sum(m.score for row in found for m in row if m.wine == wine) for wine in wines}
    best = sorted(wines, key=lambda wine: -sums[wine])[:MOST_NAMED]
    return [
        context.wording(
            "plan", "dinner-more-of", wines=listed([context.knowledge.label(wine) for wine in best])
        )
    ]
