"""`what did it cost per head`: by the prices of the evening file and what the plan says to buy."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from assistant.after.bill import bill
from assistant.after.evening import evening_after
from assistant.after.phrases import said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.plan import plan
from assistant.evening.records import Evening
from assistant.language.party import money_said
from assistant.language.quantities import numbers, quantities

if TYPE_CHECKING:
    from assistant.session import Session

WINE = "bottle"


def cost(context: Context, session: Session) -> Answer:
    """What it cost for each guest, wine and food apart, and what is not counted."""
    if context.tonight.wines and (by_talk := bill(context, session)) is not None:
        return by_talk
    evening = evening_after(context)
    missing = _missing(evening)
    if evening is None or missing:
        return told(context, [said("cost", missing)], understood=False)
    record = plan(evening, session)
    total = record["cost"]["total"]
    if not total:
        return told(context, [said("cost", "none")], understood=False)
    each = evening.money(total / evening.guests)
    lines = [said("cost", "say", each=each, total=evening.money(total), guests=evening.guests)]
    return told(context, [*lines, *_parts(evening, record), *_budget(evening, total), said("cost", "basis")])


def cost_said(context: Context, session: Session) -> Answer:
    """The sum said, shared by the guests said or known; where none is said, what the plan costs."""
    people = quantities(context.frame.text).people or context.tonight.guests
    every = sorted((number for _, _, number in numbers(context.frame.text.stems)), reverse=True)
    named = money_said(context.frame.text.stems)
    found = every if named is None else [named, *(number for number in every if number != named)]
    if not found:
        return cost(context, session)
    if found[0] == context.tonight.budget and (held := bill(context, session)) is not None:
        return held  # `what is left of the hundred`
    shared = people or (found[-1] if len(found) > 1 else None)
    if not shared:
        return told(context, [said("cost", "said-guests", sum=f"{found[0]:g}")], understood=False)
    each = f"{found[0] / shared:.2f}"
    return told(context, [said("cost", "said", each=each, sum=f"{found[0]:g}", guests=f"{shared:g}")])


def _missing(evening: Evening | None) -> str:
    if evening is None:
        return "no-evening"
    prices = [line.price for line in evening.wines] + [line.price for line in evening.foods]
    priced = any(price is not None for price in prices)
    return "none" if not priced else "no-guests" if not evening.guests else ""


def _parts(evening: Evening, record: dict[str, Any]) -> list[str]:
    bought = record["shopping"]
    wine = sum(row["cost"] or 0.0 for row in bought if row["unit"] == WINE)
    food = record["cost"]["total"] - wine
    lines = [said("cost", "kinds", wine=evening.money(wine), food=evening.money(food))]
    owned = [line.label for line in evening.wines if line.owned]
    lines += [said("cost", "owned", things=listed(owned))] if owned else []
    unpriced = record["cost"]["unpriced"]
    return [*lines, *([said("cost", "unpriced", things=listed(unpriced))] if unpriced else [])]


def _budget(evening: Evening, total: float) -> list[str]:
    if evening.budget is None:
        return []
    kind = "budget-in" if total <= evening.budget else "budget-over"
    return [said("cost", kind, left=evening.money(abs(evening.budget - total)))]
