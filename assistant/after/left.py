"""`we had 300 g cheddar left`: noted, with what was eaten a head, for what is counted next time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from assistant.after.amounts import BOTTLES, GRAMS, Amount, amount_said, amounts_of_each
from assistant.after.corrections import ALL_WINES, LEFT, PLANNED, QUANTITY, USED, new_factor, unit
from assistant.after.evening import evening_after
from assistant.after.opened import wines_meant
from assistant.after.phrases import one_of, said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.sanitise import safe
from assistant.answers.wording import listed
from assistant.evening.bottles import bottles, drinkers_of, usable_ml
from assistant.evening.facts import fact
from assistant.evening.portions import portions
from assistant.evening.records import Evening
from assistant.language.frame import Frame, Reading
from assistant.language.sorting import EDIBLE
from assistant.notebook import Stated, stated
from assistant.pairing.dish import Dish
from assistant.taught.keeper import AUTHOR
from assistant.taught.telling import not_kept

if TYPE_CHECKING:
    from assistant.session import Session

ML = "ml"


@dataclass(frozen=True, slots=True)
class Rest:
    """What was left of a thing: `used` and `planned` for each of `people`, in `of`, None where not known."""

    thing: str
    label: str
    amount: Amount
    of: str
    people: int = 0
    had: float | None = None
    used: float | None = None
    planned: float | None = None


def left(context: Context, session: Session) -> Answer:
    """Keeps what was left and says what it changes; without a notebook, that nothing was kept."""
    rests = rests_of(context)
    if not rests:
        return told(context, [said("amounts", "which")], understood=False)
    if not session.taught.keeps:
        return told(context, [said("amounts", "no-notebook")], understood=False)
    problems = session.taught.keep(*(one for rest in rests for one in _statements(rest, context)))
    if problems:
        return not_kept(context, problems)
    lines = dict.fromkeys(line for rest in rests for line in _lines(rest))
    say = [rests_said(rests)] if len(rests) > 1 else []
    bare = _without_amount(context)
    more = [said("amounts", "no-amount", things=listed(bare))] if bare else []
    return told(context, [*say, *lines, *more])


def _without_amount(context: Context) -> list[str]:
    """What is named beside other things and has no amount of its own."""
    things = _left_things(context)
    amounts = amounts_of_each(context.frame.text, things) if len(things) > 1 else []
    return [thing.label for thing, amount in zip(things, amounts, strict=False) if not amount]


def _left_things(context: Context) -> list[Reading]:
    known = context.knowledge
    return [r for r in context.frame.text.readings if r.kind in EDIBLE or known.styles_of(r.id)]


def rests_said(rests: Sequence[Rest]) -> str:
    """What was left of several things, in a sentence."""
    each = [f"{in_words(rest.amount.left, rest.amount.unit)} {rest.label}" for rest in rests]
    return said("amounts", "left-each", things=listed(each))


def rests_of(context: Context) -> list[Rest]:
    """What was left of each thing that is told with an amount of its own; else of the one that is named."""
    things = _left_things(context)
    amounts = amounts_of_each(context.frame.text, things) if len(things) > 1 else []
    if not amounts:
        rest = _rest(amount_said(context.frame), context)
        return [rest] if rest else []
    each = [
        _rest(amount, replace(context, frame=_of_one(context.frame, thing)))
        for thing, amount in zip(things, amounts, strict=True)
        if amount
    ]
    return [rest for rest in each if rest]


def _of_one(frame: Frame, thing: Reading) -> Frame:
    """The frame as if only this had been named."""
    stems = frame.text.stems[thing.start : thing.end]
    dishes = tuple(Dish((part,)) for dish in frame.dishes for part in dish.parts if part.food == thing.id)
    wines = () if thing.kind in EDIBLE else (thing.id,)
    text = replace(frame.text, readings=(thing,), stems=stems)
    return replace(frame, text=text, dishes=dishes[:1], wines=wines, preferences=())


def _rest(amount: Amount | None, context: Context) -> Rest | None:
    """What was left, held against the evening on the table where it is of it."""
    evening = evening_after(context)
    if amount is None:
        return None
    foods = [dish.main.food for dish in context.frame.dishes]
    wines = wines_meant(context)
    if amount.unit == GRAMS and foods:
        return _of_food(foods[0], amount, evening, context)
    spoken = one_of(context.frame.text.stems, "wine") or one_of(context.frame.text.stems, "bottles")
    if amount.unit == BOTTLES and (wines or (spoken and not foods)):
        return _of_wine(wines[0] if wines else ALL_WINES, amount, evening, context)
    return None


def _of_food(food: str, amount: Amount, evening: Evening | None, context: Context) -> Rest:
    label = context.knowledge.label(food)
    line = next((one for one in evening.foods if one.food == food), None) if evening else None
    guests = evening.guests if evening else 0
    if evening is None or line is None or not guests:
        return Rest(food, label, amount, GRAMS, had=amount.had)
    portion = next(p for p in portions(evening, context.knowledge) if p.food == line.label)
    had = amount.had or (line.grams or 0.0) + portion.to_buy
    if amount.left > had:  # more was bought than is known of
        return Rest(food, label, amount, GRAMS)
    used = (had - amount.left) / guests
    return Rest(food, label, amount, GRAMS, guests, had, used, portion.per_guest)


def _of_wine(wine: str, amount: Amount, evening: Evening | None, context: Context) -> Rest:
    """Bottles of one wine or of all, as millilitres for each who drinks."""
    label = said("amounts", "wine") if wine == ALL_WINES else context.knowledge.label(wine)
    lines = [one for one in evening.wines if wine in (one.wine, ALL_WINES)] if evening else []
    if evening is None or not lines or not evening.drinkers:
        return Rest(wine, label, amount, BOTTLES, had=amount.had)
    poured = evening.pouring(tuple(one.label for one in lines))
    counted = bottles(poured, context.knowledge)
    had = amount.had or float(sum(max(b.needed, one.owned) for b, one in zip(counted, lines, strict=True)))
    usable = sum(usable_ml(line.bottle_ml) for line in lines) / len(lines)
    people = sum(drinkers_of(one, evening, context.knowledge) for one in lines) // len(lines)
    if amount.left > had:
        return Rest(wine, label, amount, BOTTLES)
    used = (had - amount.left) * usable / people
    return Rest(wine, label, amount, ML, people, had, used, evening.pour_ml * len(lines))


def _statements(rest: Rest, context: Context) -> list[Stated]:
    sorts = {LEFT: (rest.amount.left, rest.amount.unit)}
    if rest.used is not None and rest.planned is not None:
        sorts |= {USED: (round(rest.used, 1), rest.of), PLANNED: (round(rest.planned, 1), rest.of)}
    people = {"people": rest.people} if rest.people else {}
    return [
        stated(
            QUANTITY, safe(context.frame.text.typed), AUTHOR, about=(rest.thing,),
            value={"amount": float(value), "unit": unit(sort, of), **people},
            evening=context.tonight.title[:200] or None,
        )
        for sort, (value, of) in sorts.items()
    ]  # fmt: skip


def _lines(rest: Rest) -> list[str]:
    amount = in_words(rest.amount.left, rest.amount.unit)
    if rest.used is None or rest.planned is None:
        return [said("amounts", "no-guests", amount=amount, thing=rest.label)]
    had, used = in_words(rest.had or 0.0, rest.amount.unit), in_words(rest.used, rest.of)
    kind = "left-of" if rest.of == GRAMS else "left-wine"
    new = new_factor(rest.planned, rest.used * rest.people, rest.people)
    told_ = {"new": in_words(new, rest.of), "old": in_words(rest.planned, rest.of)}
    share = fact("after", "amounts", "old")
    parts = {"old_share": 10 * share.typical, "new_share": 10 * (1 - share.typical), "basis": share.basis}
    return [
        said("amounts", kind, amount=amount, had=had, used=used, thing=rest.label),
        said("amounts", "new" if told_["new"] != told_["old"] else "same", **told_),
        said("amounts", "formula", **parts),
    ]


def in_words(value: float, of: str) -> str:
    """`300 g`, `2 bottles`, `0.5 of a bottle`."""
    if of != BOTTLES:
        return said("amounts", "g" if of == GRAMS else "ml", count=round(value))
    if value == 1:
        return said("amounts", "of-bottle-one")
    return said(
        "amounts", "of-bottle" if value > 1 else "of-bottle-part", count=f"{value:g}", part=f"{value:g}"
    )
