"""`brie out since 7, it's 10 now`: whether food that stood out is kept or binned, by the clock alone.

Two hours, one above 90 °F (32 °C): USDA FSIS, as ontology/evening/clock.toml has it; local codes come first.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from assistant.after.phrases import one_of, said
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

if TYPE_CHECKING:
    from assistant.session import Session

CAUTIONS = ("caution/left-out", "caution/leftovers")
A_DAY = 24 * 60.0


def out_of_fridge(context: Context, session: Session) -> Answer:
    """Keep or bin, for the foods named; those that need no fridge are told apart."""
    lines = [FoodLine(context.one_dish(dish), (dish,)) for dish in context.frame.dishes]
    spoiling = [line for line in lines if rest_minutes(line, context.knowledge) is not None]
    dry = [capital(said("outside", "dry", food=line.label)) for line in lines if line not in spoiling]
    if not spoiling:
        return told(context, dry)
    found = [*_verdict(spoiling, context), *dry]
    records = tuple(caution(context, name) for name in CAUTIONS)
    sources = "; ".join(dict.fromkeys(record["source"] for record in records))
    found += [*(record["text"] for record in records), context.wording("line", "source", source=sources)]
    return replace(told(context, found), cautions=records)


def room(context: Context) -> float:
    """How warm it is in °C: as said, hot where a word says so, else as the evening has it."""
    heard = celsius_said(context.frame.text.typed)
    if heard is not None:
        return heard
    if one_of(context.frame.text.stems, "hot"):
        return fact("clock", "pace", "hot_room").typical + 1
    evening = context.tonight.evening
    return evening.room_celsius if evening else fact("cooling", "limits", "room_celsius").typical


def _verdict(lines: list[FoodLine], context: Context) -> list[str]:
    food = (
        context.dish_name() if len(lines) == len(context.frame.dishes) else listed([n.label for n in lines])
    )
    limit = limit_minutes(room(context))
    minutes, planned = _minutes(lines, context)
    fields = {"food": food, "limit": time_in_words(limit)}
    if minutes is None:
        return [said("outside", "unknown", **fields), said("outside", "unsure")]
    out, left = time_in_words(minutes), time_in_words(max(0.0, limit - minutes))
    kind = "keep" if minutes < limit else "now" if minutes == limit else "bin"
    found = [said("outside", kind, out=out, left=left, **fields)]
    if planned:
        found.append(said("outside", "counted", start=planned))
    return [*found, *(_store(lines, context) if kind != "bin" else [])]


def _minutes(lines: list[FoodLine], context: Context) -> tuple[float | None, str]:
    """How long the foods are out, and since when where that is by the plan of the evening."""
    now, start = datetime.now(), context.tonight.start
    heard = minutes_out(context.frame.text.typed, now)
    if heard is not None or start is None:
        return heard, ""
    rest = max(rest_minutes(line, context.knowledge) or 0.0 for line in lines)
    came = start - timedelta(minutes=rest)
    past = (now - came).total_seconds() / 60
    return (past, f"{came:%H:%M}") if 0 < past < A_DAY else (None, "")


def _store(lines: list[FoodLine], context: Context) -> list[str]:
    found = [(line.label, storage(line, context.knowledge)) for line in lines]
    return [capital(said("outside", "store", food=food, storage=how)) for food, how in found if how]
