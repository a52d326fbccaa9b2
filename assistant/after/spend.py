"""`with 140 what else should I buy`, `make it cheaper`, `what to buy next time under 20`: by talk alone."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.after.bill import bill_lines, filed, spendable, total
from assistant.after.phrases import one_of, said
from assistant.after.telling import told
from assistant.answers.choose import at_hand
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed, price_told
from assistant.evening.money_by_talk import bought
from assistant.language.party import money_said
from assistant.pairing.choose import picks
from assistant.pairing.dish import Dish, table_of
from assistant.pairing.match import Match
from assistant.pairing.score import LIKED

if TYPE_CHECKING:
    from assistant.session import Session

STYLES = 2  # named for another time


def more_bought(context: Context, session: Session) -> Answer | None:
    """What is missing for the foods of the table, and what the money leaves for it."""
    if (dinner := bought(context)) is not None:
        return dinner
    if filed(context) or not (context.tonight.wines and context.tonight.dishes):
        return None
    gaps, money = _gaps(context), money_said(context.frame.text.stems) or context.tonight.budget
    wines = list(dict.fromkeys(wine for dish in gaps for wine in _easy([dish], 1, context)))
    names = listed([context.knowledge.label(wine) for wine in wines])
    foods = listed([context.one_dish(dish) for dish in gaps])
    say = said("bill", "buy" if gaps else "buy-none", things=names, foods=foods)
    return told(context, [say, *_left(money, len(wines), context)])


def _gaps(context: Context) -> list[Dish]:
    """The foods with which no wine of the table does even fairly."""
    dishes = context.tonight.dishes
    rows = _ranked(context)
    served = [any(match.verdict in LIKED for match in row) for row in rows]
    return [dish for dish, well in zip(dishes, served, strict=True) if not well]


def _ranked(context: Context) -> Sequence[list[Match]]:
    """For each food of the table how its wines do."""
    tables = [table_of([dish]) for dish in context.tonight.dishes]
    return context.engine.rank_each(tables, context.tonight.wines)


def _easy(dishes: Sequence[Dish], count: int, context: Context) -> list[str]:
    """So many wines for these dishes that are easy to buy and not on the table."""
    asked = replace(
        context.frame,
        dishes=tuple(dishes),
        wines=(),
        anywhere=True,
        named_before=context.tonight.wines,
        preferences=(),
    )
    free = replace(context, frame=asked)
    ranked = context.engine.rank(free.table(), at_hand(free, count))
    foods = frozenset(dish.main.food for dish in dishes)
    return [match.wine for match in picks(ranked, count, context.knowledge, foods)]


def _left(money: float | None, styles: int, context: Context) -> list[str]:
    """What the money leaves for the bottles that are missing, once what is there is paid."""
    lines = bill_lines(context)
    if money is None:
        return []
    if not any(line.price is not None for line in lines):
        return spendable(replace(context, tonight=replace(context.tonight, budget=money)))
    short = [line.label for line in lines if line.price is None]
    fields = {
        "money": price_told(money),
        "sum": price_told(total(lines)),
        "left": price_told(money - total(lines)),
    }
    kind = "left" if money > total(lines) else "left-none"
    told_ = [said("bill", kind, **fields)]
    return [*told_, *([said("bill", "unpriced", things=listed(short), first=short[0])] if short else [])]


def leave_out(context: Context, session: Session) -> Answer | None:
    """The bottle that is missed least, the dearest of such, and what that saves."""
    table = context.tonight
    if filed(context) or not table.wines:
        return None
    if len(table.wines) == 1 or not table.dishes:
        return told(context, [said("bill", "plainer")])
    lines = {line.label: line for line in bill_lines(context)}
    missed = {wine: _missed(wine, context) for wine in table.wines}
    saved = {wine: _saved(wine, lines[context.knowledge.label(wine)].price) for wine in table.wines}
    wine = min(table.wines, key=lambda one: (len(missed[one]), -saved[one]))
    name, foods = context.knowledge.label(wine), listed([context.one_dish(dish) for dish in missed[wine]])
    say = said("bill", "leave-out-for" if foods else "leave-out", wine=name, foods=foods)
    rest = total(list(lines.values())) - saved[wine]
    money = (
        [said("bill", "saves", money=price_told(saved[wine]), rest=price_told(rest))] if saved[wine] else []
    )
    there = [said("bill", "keep-shut", wine=name)] if dict(table.owned).get(wine) else []
    return told(context, [say, *money, *there, said("bill", "plainer")])


def _saved(wine: str, price: float | None) -> float:
    return price or 0.0


def _missed(wine: str, context: Context) -> list[Dish]:
    """The foods with which no other wine of the table does as well, by their verdicts."""
    found = []
    for dish, row in zip(context.tonight.dishes, _ranked(context), strict=True):
        others = [match for match in row if match.wine != wine]
        best, left = (max(these, key=lambda match: match.score) for these in (row, others))
        found += [dish] if best.verdict != left.verdict else []
    return found


def next_bought(context: Context, session: Session) -> Answer | None:
    """A style or two for the foods of the table that are easy to buy and not poured now."""
    table = context.tonight
    if not table.dishes:
        return None
    wines = _easy(table.dishes, STYLES, context)
    say = said("bill", "next", things=listed([context.knowledge.label(wine) for wine in wines]))
    return told(context, [say, context.wording("line", "no-shop-prices"), *_meant(context)])


def _meant(context: Context) -> list[str]:
    """Whether the money is taken for one bottle or for all, where money is named."""
    stems, money = context.frame.text.stems, money_said(context.frame.text.stems)
    kind = "money-total" if one_of(stems, "total") else "money-bottle"
    return [said("bill", kind, money=price_told(money))] if money else []


def total_or_each(context: Context, session: Session) -> Answer:
    """How money that is named without more is taken."""
    return told(context, [said("bill", "total-or-each")])
