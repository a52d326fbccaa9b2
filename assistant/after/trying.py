"""One thing for a guest to try next: a wine near to those liked that does well with foods this guest eats."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.after.liking import Liking
from assistant.after.names import plain
from assistant.after.next_wines import in_shops
from assistant.after.phrases import said
from assistant.answers.context import Context
from assistant.evening.by_talk import evening_of
from assistant.evening.care import GuestCare, care
from assistant.evening.records import GuestNeeds
from assistant.pairing.dish import Dish, single, table_of
from assistant.pairing.likeness import alike_foods, alike_wines
from assistant.pairing.score import LIKED

if TYPE_CHECKING:
    from assistant.session import Session

NEAR = 12


def next_wine(guest: str, liked: Sequence[Liking], context: Context, session: Session) -> str | None:
    """The nearest wine that is easy to buy and at least fair with a food they eat, in a sentence.

    None where they liked no wine or take none.
    """
    known = context.knowledge
    wines = [known.style(one.thing) for one in liked if known.styles_of(one.thing)]
    cares = cares_of(guest, context, session)
    if not wines or any(one.sober for one in cares):
        return None
    had = {*context.tonight.wines, *wines}
    near = [w for w in alike_wines(wines[0], in_shops(known), context.engine) if w not in had][:NEAR]
    named = {"liked": known.label(wines[0])}
    for wine in near:
        best = _best(wine, eaten_by(cares, context), context)
        if best and best[1] in LIKED:
            told = {"wine": known.label(wine), "food": best[0], "verdict": said("message", best[1])}
            return said("message", "try", **told, **named)
    return said("message", "try-plain", wine=known.label(near[0]), **named) if near and not cares else None


def next_bite(guest: str, liked: Sequence[Liking], context: Context, session: Session) -> str | None:
    """The food most like one they liked that they surely may have, in a sentence."""
    foods = [one.thing for one in liked if one.thing.startswith("food/")]
    needs = _needs(guest, context)
    for food in foods[:1]:
        near = alike_foods(food, context.engine)[:NEAR]
        table = replace(context.tonight, dishes=tuple(single(one) for one in near), wines=())
        evening = replace(evening_of(replace(context, tonight=table)), needs=needs)
        cares = care(evening, session)
        may = [line for line in evening.foods if all(line.label in one.may_have for one in cares)]
        if may:
            named = {"food": context.one_dish(may[0].dishes[0]), "liked": context.knowledge.label(food)}
            return said("message", "try-food", **named)
    return None


def cares_of(guest: str, context: Context, session: Session) -> list[GuestCare]:
    """What is known of what the guest may have of tonight's table; empty where nothing was asked for."""
    needs = _needs(guest, context)
    return care(replace(evening_of(context), needs=needs), session) if needs else []


def eaten_by(cares: Sequence[GuestCare], context: Context) -> list[Dish]:
    """The dishes of the table that the guest surely may have."""
    lines = evening_of(context).foods  # an evening file may call a food otherwise than the table does
    safe = (line for line in lines if all(line.label in one.may_have for one in cares))
    return [dish for line in safe for dish in line.dishes]


def _needs(guest: str, context: Context) -> tuple[GuestNeeds, ...]:
    asked = [n for n in context.tonight.needs if plain(n.guest) == plain(guest)]
    return tuple(GuestNeeds(n.guest, (n.need,)) for n in asked)


def _best(wine: str, dishes: Sequence[Dish], context: Context) -> tuple[str, str] | None:
    """The dish a wine does best with, and the verdict."""
    judged = [(context.engine.judge(table_of([dish]), wine), dish) for dish in dishes]
    match, dish = max(judged, key=lambda pair: pair[0].score, default=(None, None))
    return (context.one_dish(dish), match.verdict) if match and dish else None
