"""`what did that come to`, `are we under budget`: the bottles of the table by the prices told in talk."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from assistant.after.evening import evening_after
from assistant.after.phrases import one_of, said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed, price_told
from assistant.evening.bottles import bottles

if TYPE_CHECKING:
    from assistant.session import Session


@dataclass(frozen=True, slots=True)
class Line:
    """Bottles of one wine, those that are there and those still to buy, and what one costs, if known."""

    label: str
    count: int
    to_buy: int
    price: float | None


def filed(context: Context) -> bool:
    """Whether the evening is of a file, which has prices and a currency of its own."""
    return context.tonight.evening is not None


def bill_lines(context: Context) -> list[Line]:
    """Every wine of the table; one bottle of each where neither guests nor bottles are counted."""
    evening = evening_after(context)
    if evening is None:
        return []
    counts = bottles(evening, context.knowledge) if evening.guests else []
    short = {one.wine: one.to_buy for one in counts}
    rows = ((line, short.get(line.label, 0)) for line in evening.wines)
    return [Line(line.label, line.owned + more or 1, more, line.price) for line, more in rows]


def total(lines: list[Line]) -> float:
    """What the bottles cost whose price is known."""
    return sum(line.count * line.price for line in lines if line.price is not None)


def bill(context: Context, session: Session) -> Answer | None:
    """The sum, and how it stands against the budget; what is asked comes first. None for an evening file."""
    if filed(context):
        return None
    lines = bill_lines(context)
    priced = [line for line in lines if line.price is not None]
    if not priced:
        return told(context, [*_unpriced(lines), *spendable(context)], understood=False)
    stems, against = context.frame.text.stems, _against(lines, context)
    head = _head(total(lines), context)
    first = against if one_of(stems, "budget") else head if one_of(stems, "head") else []
    rest = [*_sum(lines, priced), *head, *against, *_unpriced(lines)]
    return told(context, list(dict.fromkeys([*first, *rest])))


def _sum(lines: list[Line], priced: list[Line]) -> list[str]:
    things = listed([f"{line.count} {line.label}" for line in priced])
    kind = "sum" if len(priced) == len(lines) else "sum-so-far"
    return [said("bill", kind, sum=price_told(total(priced)), things=things)]


def _head(money: float, context: Context) -> list[str]:
    guests = context.tonight.guests
    return [said("bill", "head", each=f"{money / guests:.2f}", guests=f"{guests:g}")] if guests else []


def _unpriced(lines: list[Line]) -> list[str]:
    """Which prices are wanted, and how they are told."""
    names = [line.label for line in lines if line.price is None]
    if not lines:
        return [said("bill", "nothing")]
    kind = "unpriced" if len(names) < len(lines) else "no-prices"
    return [said("bill", kind, things=listed(names), first=names[0])] if names else []


def _against(lines: list[Line], context: Context) -> list[str]:
    """Whether it is within the budget, as far as prices are known."""
    budget, spent = context.tonight.budget, total(lines)
    if budget is None:
        return [context.wording("plan", "budget-none")] if one_of(context.frame.text.stems, "budget") else []
    open_ = [line.label for line in lines if line.price is None]
    kind = "over" if spent > budget else "under-so-far" if open_ else "under"
    fields = {"sum": price_told(spent), "budget": price_told(budget), "left": price_told(abs(budget - spent))}
    return [said("bill", kind, things=listed(open_), **fields)]


def spendable(context: Context) -> list[str]:
    """What there is to spend, and for how much a bottle it lasts."""
    table = context.tonight
    if table.budget is None:
        return []
    count = sum(line.count for line in bill_lines(context))
    if not count:
        return [said("bill", "to-spend", budget=price_told(table.budget))]
    each = f"{table.budget / count:.0f}"
    kind = "lasts" if count > 1 else "lasts-one"
    return [said("bill", kind, budget=price_told(table.budget), count=count, each=each)]
