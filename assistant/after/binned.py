"""What was told to be binned: it comes off the table, and whoever asks of it later is told where it went."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.after.phrases import one_of, said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import safety
from assistant.answers.wording import capital, listed
from assistant.evening.records import FoodLine
from assistant.language.frame import Reading
from assistant.language.sorting import EDIBLE
from assistant.table.taken_off import without_food

if TYPE_CHECKING:
    from assistant.language.frame import Frame
    from assistant.pairing.dish import Dish
    from assistant.session import Session
    from assistant.table.tonight import Tonight

SETS, SAFETY, OUTSIDE, POISONED = "set-table", "safety", "outside", "food-poisoning"
AT_REST = frozenset({"left-out", "leftovers", "anything-else", "cold-and-hot"})


def binned(lines: Sequence[FoodLine], context: Context, session: Session) -> list[str]:
    """Takes the foods that stood out too long off the table."""
    meant = tuple(dish for line in lines for dish in line.dishes)
    left = left_of(session.tonight.dishes, meant, context)
    off = tuple(dish for dish in session.tonight.dishes if dish not in left)
    kept = tuple(dish for dish in session.tonight.binned if dish not in (*off, *meant))
    session.tonight = replace(session.tonight, dishes=left, binned=(*kept, *(off or meant)))
    session.spoken.out, session.spoken.out_minutes = (), None
    names = listed([context.one_dish(dish) for dish in off])
    return [capital(said("outside", "off", food=names))] if off else []


def only_asked(context: Context) -> bool:
    """Whether food is not told to have stood out, but it is asked what would be."""
    stems = context.frame.text.stems
    asks = bool(_named(context)) and one_of(stems, "may_it") and not one_of(stems, "stood")
    return one_of(stems, "supposes") or asks


def back_again(dishes: Sequence[Dish], tonight: Tonight) -> Tonight:
    """The table with a dish that is there after all, or is fresh: it may be eaten again."""
    back = tuple(dish for dish in tonight.binned if dish in dishes)
    kept = tuple(dish for dish in tonight.binned if dish not in dishes)
    return replace(tonight, dishes=(*tonight.dishes, *back), binned=kept) if back else tonight


def binned_told(context: Context, session: Session, of_rest: Callable[[Frame], Answer]) -> Answer | None:
    """That what is asked about went in the bin; that somebody ate of it is a matter of health. Else None.

    `of_rest` answers what is asked of other foods too.
    """
    frame, named = context.frame, _named(context)
    gone = [reading for reading in named if _called(reading, context.tonight.binned, context)]
    if not gone or frame.intent == SETS or frame.after == OUTSIDE:
        return None
    if one_of(frame.text.stems, "fresh"):
        return _fresh(gone, context, session)
    if one_of(frame.text.stems, "eaten"):
        ill = replace(frame, intent=SAFETY, topics=(POISONED, *(t for t in frame.topics if t != POISONED)))
        return replace(safety(replace(context, frame=ill)), intent=SAFETY)
    line = said("outside", "gone", food=listed(list(dict.fromkeys(reading.label for reading in gone))))
    if len(gone) < len(named):
        answer = of_rest(_without(gone, frame))
        return replace(answer, text=f"{answer.text}\n{line}")
    return told(context, [line]) if AT_REST.issuperset(frame.topics) else None


def _fresh(gone: Sequence[Reading], context: Context, session: Session) -> Answer:
    """That another of what went in the bin is on the table."""
    back = [d for d in context.tonight.binned if any(_called(reading, (d,), context) for reading in gone)]
    session.tonight = back_again(back, session.tonight)
    return told(context, [said("outside", "back", food=listed([context.one_dish(dish) for dish in back]))])


def _without(gone: Sequence[Reading], frame: Frame) -> Frame:
    """The frame without these foods."""
    off = {reading.id for reading in gone}
    kept = tuple(reading for reading in frame.text.readings if reading not in gone)
    dishes = tuple(dish for dish in frame.dishes if dish.main.food not in off)
    return replace(frame, dishes=dishes, text=replace(frame.text, readings=kept))


def _named(context: Context) -> list[Reading]:
    return [reading for reading in context.frame.text.readings if reading.kind in EDIBLE]


def left_of(dishes: tuple[Dish, ...], meant: Sequence[Dish], context: Context) -> tuple[Dish, ...]:
    """The dishes without those named or meant; all of a kind, where that is (`the cheese`)."""
    label = context.knowledge.label
    names = {dish.main.food: label(dish.main.food) for dish in meant}
    readings = [Reading(name, "food", name, food, "Food", 0, 0) for food, name in names.items()]
    for reading in (*_named(context), *readings):
        whole = without_food(dishes, reading, context.knowledge)
        dishes = whole if len(whole) < len(dishes) else dishes
    return dishes


def _called(reading: Reading, dishes: tuple[Dish, ...], context: Context) -> bool:
    return len(without_food(dishes, reading, context.knowledge)) < len(dishes)
