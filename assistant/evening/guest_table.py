"""What is asked of a guest, on tonight's table or not: `the brie`, `nuts in the salami`, what is drunk."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.compose import EDIBLE
from assistant.answers.context import Context
from assistant.evening.guest_kinds import of_kinds
from assistant.evening.needs import WINE
from assistant.evening.records import Evening, FoodLine, WineLine
from assistant.language.dish_edits import POURED, called
from assistant.language.follow_lines import ends_of, says
from assistant.language.frame import Frame, Reading
from assistant.pairing.dish import BASE, Dish
from assistant.table.table_set import styles


def of_asked(context: Context, evening: Evening, poured: Sequence[str] = ()) -> Evening:
    """The evening with no more on its table than what is asked about; all of it where nothing is named.

    `poured`: the wines that stand beside what `it` means.
    """
    kinds = {reading.kind for reading in context.frame.text.readings}
    of_all = says(context.frame, "guest-which") or says(context.frame, "guest-all")
    it = says(context.frame, "guest-it") and not of_all
    dishes = _holding(context.frame) if it or kinds & set(EDIBLE) else ()
    wines = _wines_named(context) if kinds & set(POURED) else styles(poured, context.knowledge) if it else ()
    if it and len(dishes) > 1 and dishes == context.tonight.dishes:
        return evening  # all that is on the table stands, its wines among it
    label = context.knowledge.label
    if not dishes and not wines:
        return _of_table(context, evening)
    dishes = tuple(_as_laid(dish, context) for dish in dishes)
    dishes = dishes if says(context.frame, "guest-drank") else of_kinds(dishes, context)
    foods = tuple(FoodLine(context.one_dish(dish), (dish,)) for dish in dishes)
    return replace(evening, foods=foods, wines=tuple(WineLine(label(wine), wine) for wine in wines))


def _as_laid(dish: Dish, context: Context) -> Dish:
    """The dish as it is on the table, all that is on it with it: `the crostini` are those with pesto.

    So `the chicken` is the coronation chicken, where no other dish of the table is called so.
    """
    if len(dish.parts) > 1:
        return dish
    same = [one for one in context.tonight.dishes if one.main.food == dish.main.food]
    named = [r for r in context.frame.text.readings if r.id == dish.main.food]
    short = [one for one in context.tonight.dishes if any(_is_called(one, r, context) for r in named)]
    laid = same or short
    return laid[0] if len(laid) == 1 else dish


def _is_called(dish: Dish, reading: Reading, context: Context) -> bool:
    return called(dish.main.food, reading, context.knowledge)


def _wines_named(context: Context) -> tuple[str, ...]:
    """The styles named, and where none is the kinds of wine (`the rosé`)."""
    named = (r.id for r in context.frame.text.readings if r.kind in POURED)
    kinds = (name for name in named if context.knowledge.styles_of(name))
    return styles(context.frame.wines, context.knowledge) or tuple(dict.fromkeys(kinds))


def _of_table(context: Context, evening: Evening) -> Evening:
    """The evening with its wines alone where only what is drunk is asked of."""
    if not says(context.frame, "guest-sip") or says(context.frame, "guest-eats"):
        return evening
    wine = WineLine(context.knowledge.label(WINE), WINE)
    return replace(evening, foods=(), wines=evening.wines or (wine,))


def _holding(frame: Frame) -> tuple[Dish, ...]:
    """The dishes asked of; of `nuts in the salami` the salami alone, nuts being asked about in it."""
    at = ends_of(frame, "holds-in")
    foods = {r.id for r in frame.text.readings if at and r.start >= at[0] and r.kind in EDIBLE}
    at = ends_of(frame, "contains")
    foods |= {r.id for r in frame.text.readings if at and r.end <= at[0] and r.kind in EDIBLE}
    parts = [p for dish in frame.dishes for p in dish.parts if p.food in foods]
    return tuple(Dish((replace(part, role=BASE),)) for part in parts) or frame.dishes
