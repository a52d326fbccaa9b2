"""`Helen's bringing a walnut loaf, is that ok`, `anything with walnuts in`: asked for all guests."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.by_talk import evening_of
from assistant.evening.care import GuestCare, care
from assistant.evening.records import FoodLine, GuestNeeds
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE
from assistant.session import Session

SAFETY = "safety"
PARTS = (("guest-no", "keep_away"), ("guest-ask", "check_label"), ("guest-yes", "may_have"))
HELD = (("held-in", "keep_away"), ("held-perhaps", "check_label"))


def brought_asked(frame: Frame, session: Session) -> Callable[[Context, Session], Answer | None] | None:
    """What answers whether a dish may come, or what of the table holds a food; None for any other text."""
    foods = [reading for reading in frame.text.readings if reading.kind in EDIBLE]
    if not foods or len(foods) < len(frame.text.readings):
        return None
    if says(frame, "brings-asked") and frame.dishes:
        return _may_come
    laid = bool(session.tonight.dishes) and len(foods) == 1
    return partial(_held, foods[0].text) if laid and says(frame, "anything-in") else None


def _may_come(context: Context, session: Session) -> Answer:
    """For each guest with needs whether the dish is for that one; where it harms, it is best left."""
    named = {reading.id for reading in context.frame.text.readings}
    dishes = [dish for dish in context.frame.dishes if named & {part.food for part in dish.parts}]
    foods = tuple(FoodLine(context.one_dish(dish), (dish,)) for dish in dishes)
    rows = care(replace(evening_of(context), foods=foods, wines=()), session)
    rows.sort(key=lambda row: (not row.allergy, not row.keep_away))
    first = [row for row in rows if row.keep_away or row.check_label] or rows
    lines = _lines(first, PARTS[:2] if first != rows else PARTS, context) or _lines(rows, PARTS, context)
    if any(row.allergy and row.keep_away for row in rows):
        lines.append(context.wording("plan", "best-left"))
    return _answer([*lines, context.wording("plan", "guest-label")], context)


def _held(food: str, context: Context, session: Session) -> Answer:
    """The dishes of the table that hold the food or may hold it, and whom it harms."""
    evening = replace(evening_of(context), wines=())
    asked = (GuestNeeds("", (context.wording("plan", "allergic-to", food=food),)),)
    row = care(replace(evening, needs=asked), session)[0]
    found = [(name, listed(list(getattr(row, part)))) for name, part in HELD if getattr(row, part)]
    lines = [context.wording("plan", name, food=food, things=things) for name, things in found]
    lines = lines or [context.wording("plan", "held-none", food=food)]
    held = {*row.keep_away, *row.check_label}
    harmed = [one for one in care(evening, session) if one.allergy and held.intersection(one.keep_away)]
    lines += _lines(harmed, PARTS[:1], context)
    return _answer([*lines, context.wording("plan", "guest-label")], context)


def _lines(rows: Sequence[GuestCare], parts: Sequence[tuple[str, str]], context: Context) -> list[str]:
    return [
        context.wording("plan", name, guest=row.guest, things=listed(list(getattr(row, part))))
        for row in rows
        for name, part in parts
        if getattr(row, part)
    ]


def _answer(lines: Sequence[str], context: Context) -> Answer:
    return replace(compose(context.all_used(), lines[0], list(lines)), dish=None, intent=SAFETY)
