"""`buy less bread?`, `so next time how many bottles`: what is counted next time, by what was left before."""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.after.corrections import WINE, factor_of, shares_of
from assistant.after.evening import evening_after
from assistant.after.left import ML, in_words
from assistant.after.opened import wines_meant
from assistant.after.phrases import one_of, said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.bottles import needed, usable_ml
from assistant.evening.facts import amount, fact, rows
from assistant.evening.portions import class_of
from assistant.language.quantities import quantities

if TYPE_CHECKING:
    from assistant.session import Session

GRAMS, TASTING = "g", "tasting"
HARDLY = 0.02


def buying(context: Context, session: Session) -> Answer:
    """More, less or the same of what is named; of nothing named, what changes at all."""
    stems = context.frame.text.stems
    if context.frame.dishes:
        return _of_food(context, session)
    if wines_meant(context) or one_of(stems, "wine") or one_of(stems, "bottles"):
        return _of_bottles(context, session)
    return _of_all(context, session)


def _of_food(context: Context, session: Session) -> Answer:
    food = context.frame.dishes[0].main.food
    row, name = class_of(food, context.knowledge), context.knowledge.label(food)
    shares = shares_of(session).get(str(row["id"]))
    if not shares:
        return told(context, [said("amounts", "buy-none", thing=name)])
    evening = evening_after(context)
    book = amount(row[evening.meal if evening else TASTING]).typical
    factor = factor_of(shares)
    new, old = in_words(book * factor, GRAMS), in_words(book, GRAMS)
    lines = [said("amounts", f"buy-{_way(factor)}", thing=row["label"], new=new, old=old)]
    if evening and evening.guests:
        lines.append(
            said("amounts", "all", guests=evening.guests, grams=f"{book * factor * evening.guests:.0f}")
        )
    return told(context, [*lines, _evenings(len(shares))])


def _of_bottles(context: Context, session: Session) -> Answer:
    evening, counted = evening_after(context), quantities(context.frame.text)
    people = evening.drinkers if evening else round(counted.people or 0.0)
    if not people:
        return told(context, [said("cost", "no-guests")], understood=False)
    poured = len(wines_meant(context)) or (evening.choose or len(evening.wines) if evening else 0)
    wines = poured or round(fact("amounts", "flight", "wines").typical)
    planned = evening.pour_ml if evening else fact("amounts", "bottle", "pour_ml").typical
    shares = shares_of(session).get(WINE, [])
    usable = usable_ml(counted.bottle_ml)
    ml = round(planned * factor_of(shares))
    each, book = needed(people, ml, usable), needed(people, planned, usable)
    lines = [said("amounts", "bottles", all=each * wines, each=each, wines=wines, people=people)]
    if not shares:
        return told(context, [*lines, said("amounts", "bottles-plain")])
    told_ = {"new": in_words(ml, ML), "old": in_words(planned, ML)}
    lines += [said("amounts", "poured", **told_), said("amounts", "bottles-was", all=book * wines)]
    return told(context, [*lines, _evenings(len(shares))])


def _of_all(context: Context, session: Session) -> Answer:
    """What is to be counted otherwise, by class."""
    labels = {str(row["id"]): str(row["label"]) for row in rows("amounts", "class")} | {
        WINE: said("amounts", "wine")
    }
    ways = {name: _way(factor_of(shares)) for name, shares in shares_of(session).items()}
    less, more = ([labels[n] for n, way in ways.items() if way == wanted] for wanted in ("less", "more"))
    if not less and not more:
        return told(context, [said("amounts", "which")], understood=False)
    kind = "buy-any" if less and more else "buy-only-less" if less else "buy-only-more"
    return told(context, [said("amounts", kind, less=listed(less), more=listed(more))])


def _way(factor: float) -> str:
    return "same" if abs(factor - 1) <= HARDLY else "less" if factor < 1 else "more"


def _evenings(count: int) -> str:
    return said("amounts", "by-evening" if count == 1 else "by-evenings", count=count)
