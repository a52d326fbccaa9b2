"""`brie out since 7, it's 10 now`: whether food that stood out is kept or binned, by the clock alone.

Two hours, one above 90 °F (32 °C): USDA FSIS, as ontology/evening/clock.toml has it; local codes come first.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from assistant.after.binned import back_again, binned, left_of, only_asked
from assistant.after.heat import Heat, bound_in_words, heat_told, without_heat
from assistant.after.phrases import one_of, phrases, said
from assistant.after.telling import time_in_words, told
from assistant.after.times import celsius_said, minutes_out
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import caution
from assistant.answers.wording import capital, listed
from assistant.evening.facts import fact
from assistant.evening.leftovers import storage
from assistant.evening.outside import limit_minutes, rest_minutes
from assistant.evening.records import FoodLine
from assistant.language.sorting import EDIBLE

if TYPE_CHECKING:
    from assistant.pairing.dish import Dish
    from assistant.session import Session

CAUTIONS = ("caution/left-out", "caution/leftovers")
A_DAY = 24 * 60.0


def out_of_fridge(context: Context, session: Session) -> Answer:
    """Keep or bin, for the foods named; those that need no fridge are told apart."""
    context = as_it_lies(context)
    lines = [FoodLine(context.one_dish(dish), (dish,)) for dish in context.frame.dishes]
    spoiling = [line for line in lines if rest_minutes(line, context.knowledge) is not None]
    named = any(reading.kind in EDIBLE for reading in context.frame.text.readings)
    dry = [capital(said("outside", "dry", food=line.label)) for line in lines if line not in spoiling]
    if not spoiling and lines:
        return told(context, dry)
    found = [*_verdict(spoiling, context, session), *(dry if named else ())]
    records = tuple(caution(context, name) for name in CAUTIONS)
    sources = "; ".join(dict.fromkeys(record["source"] for record in records))
    found += [*(record["text"] for record in records), context.wording("line", "source", source=sources)]
    return replace(told(context, found), cautions=records)


def as_it_lies(context: Context) -> Context:
    """The same with foods uncooked, where a word of cooking tells how hot it is (`boiling out`)."""
    if not phrases().hot.stand_in(context.frame.text.stems):
        return context
    plain = (
        replace(dish, parts=tuple(replace(part, methods=()) for part in dish.parts))
        for dish in context.frame.dishes
    )
    return replace(context, frame=replace(context.frame, dishes=tuple(plain)))


def room(context: Context) -> float:
    """How warm it is in °C: as said, hot where a word says so, as told before or as the evening has it."""
    heard, heat = celsius_said(context.frame.text.typed), heat_of(context)
    if heard is not None:
        return heard
    if heat is not None:
        return heat.celsius
    if one_of(context.frame.text.stems, "hot"):
        return fact("clock", "pace", "hot_room").typical + 1
    evening = context.tonight.evening
    return evening.room_celsius if evening else fact("cooling", "limits", "room_celsius").typical


def heat_of(context: Context) -> Heat | None:
    """The heat told now, or else before."""
    return heat_told(context.frame) or context.tonight.heat


def _verdict(lines: list[FoodLine], context: Context, session: Session) -> list[str]:
    limit, dishes = limit_minutes(room(context)), tuple(dish for line in lines for dish in line.dishes)
    minutes, planned = _minutes(lines, context)
    if minutes is None and dishes == session.spoken.out:
        minutes = session.spoken.out_minutes
    session.spoken.out, session.spoken.out_minutes = dishes, minutes
    fields = {"food": _food(lines, context), "limit": time_in_words(limit)}
    if minutes is None:
        return _since_when(lines, context, fields)
    out, left = time_in_words(minutes), time_in_words(max(0.0, limit - minutes))
    kind = "keep" if minutes < limit else "now" if minutes == limit else "bin"
    found = [said("outside", kind, out=out, left=left, **fields)]
    if planned:
        found.append(said("outside", "counted", start=planned))
    if kind == "bin" and only_asked(context):
        return [said("outside", "too-long", out=capital(out), **fields)]
    if kind == "bin":
        return [*found, *binned(lines, context, session)]
    session.tonight = back_again(dishes, session.tonight)
    return [*found, *_rest(dishes, context), *_store(lines, context)]


def _rest(dishes: tuple[Dish, ...], context: Context) -> list[str]:
    """That the heat told counts for the other foods of the table that spoil."""
    others = [
        FoodLine(context.one_dish(dish), (dish,)) for dish in left_of(context.tonight.dishes, dishes, context)
    ]
    spoiling = [line.label for line in others if rest_minutes(line, context.knowledge) is not None]
    heard = heat_told(context.frame)
    return [said("outside", "rest", food=listed(spoiling))] if heard and spoiling else []


def _since_when(lines: list[FoodLine], context: Context, fields: dict[str, str]) -> list[str]:
    """The question since when, with the limit, in the degrees that the heat was told in."""
    heat = heat_of(context)
    kind = "unknown" if heat is None else "unknown-hot" if heat.over else "unknown-warm"
    if not lines:
        fields["food"] = said("outside", "unknown-any")
    degrees = bound_in_words(heat.unit if heat else "")
    return [capital(said("outside", kind, degrees=degrees, **fields)), said("outside", "unsure")]


def _food(lines: list[FoodLine], context: Context) -> str:
    all_of_it = len(lines) == len(context.frame.dishes)
    return context.dish_name() if all_of_it else listed([line.label for line in lines])


def _minutes(lines: list[FoodLine], context: Context) -> tuple[float | None, str]:
    """How long the foods are out, and since when where that is by the plan of the evening."""
    now, start = datetime.now(), context.tonight.start
    heard = minutes_out(without_heat(context.frame.text.typed), now)
    if heard is not None or start is None or not lines:
        return heard, ""
    rest = max(rest_minutes(line, context.knowledge) or 0.0 for line in lines)
    came = start - timedelta(minutes=rest)
    past = (now - came).total_seconds() / 60
    return (past, f"{came:%H:%M}") if 0 < past < A_DAY else (None, "")


def _store(lines: list[FoodLine], context: Context) -> list[str]:
    found = [(line.label, storage(line, context.knowledge)) for line in lines]
    return [capital(said("outside", "store", food=food, storage=how)) for food, how in found if how]
