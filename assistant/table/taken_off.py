"""What is taken off the table: foods by name, all of a kind, or everything there is to eat or to pour."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.knowledge.kinds_meant import kinds_meant
from assistant.knowledge.store import Knowledge
from assistant.language.dish_edits import called
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame, Reading
from assistant.language.not_brought import not_brought
from assistant.language.small_words import small_words
from assistant.language.sorting import EDIBLE
from assistant.pairing.dish import BASE, Dish, single
from assistant.table.put_on import dishes_coming, foods_coming

if TYPE_CHECKING:
    from assistant.language.standing import Talk
    from assistant.table.tonight import Tonight

SETS, REACH = "set-table", 3
SAFETY, CONTACT, TROUBLE = "safety", "cross-contact", "trouble"
AILS = (TROUBLE, "service")
DROPPED = (
    "set-table",
    "wines-for-food",
    "unclear",
    "note",
    "smalltalk",
    "substitute",
    "describe",
    "quantity",
    "undo",
)
LOOKED_FOR = ("set-table", "unclear", "note", "smalltalk")
FOODS_OFF, WINES_OFF, ALL_OFF = "clears-foods", "clears-wines", "clears-table"


def drops(frame: Frame) -> bool:
    """Whether something is said to come off; `a drop of the Riesling` is a measure."""
    return says(frame, "table-drops") and not says(frame, "a-drop")


def clears(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> Frame | None:
    """The frame that takes foods off, clears the table or a half of it; None for any other text."""
    if (apart := set_apart(frame, tonight, knowledge)) is not None:
        return apart
    if missed := not_brought(frame):
        return _without_missed(frame, missed, tonight, knowledge)
    asks = bool(frame.topics) or says(frame, "table-questions")
    if not asks and says(frame, ALL_OFF) and not frame.text.readings:
        return _set(frame, tonight, (), (), tonight.dishes)
    if not asks and says(frame, FOODS_OFF):
        return _set(frame, tonight, (), tonight.wines, tonight.dishes)
    left, new = foods_left(frame, tonight, knowledge), _coming(frame, tonight, knowledge)
    if left is not None or new:
        left = tonight.dishes if left is None else left
        gone = (*tonight.dishes, *_parts_off(tonight.dishes, left))
        return _set(frame, tonight, (*left, *new), tonight.wines, gone)
    return _set(frame, tonight, tonight.dishes, (), ()) if not asks and says(frame, WINES_OFF) else None


def _without_missed(frame: Frame, missed: list[Reading], tonight: Tonight, knowledge: Knowledge) -> Frame:
    """The frame that sets the table without what did not come, and with what is told to have come."""
    left, off = tonight.dishes, {reading.id for reading in missed}
    for reading in missed:
        left = without_food(left, reading, knowledge) if reading.kind in EDIBLE else left
    there = {dish.main.food for dish in left}
    new = [dish for dish in frame.dishes if dish.main.food not in off | there]
    wines = tuple(wine for wine in tonight.wines if wine not in off)
    return _set(frame, tonight, (*left, *new), wines, tonight.dishes)


def as_order(frame: Frame, tonight: Tonight) -> Frame:
    """The frame of a host who has whole dishes of the table taken off, which is no question of health.

    `take the walnuts off` may be asked of a guest's plate: only what lies by itself goes so.
    """
    named = {reading.id for reading in frame.text.readings if reading.kind in EDIBLE}
    alone = bool(named) and named <= {dish.main.food for dish in tonight.dishes}
    asks = says(frame, "table-questions") or says(frame, "menu-asks") or opens(frame, "yes-no")
    told = frame.intent == SAFETY and set(frame.topics) == {CONTACT} and drops(frame)
    return replace(frame, intent=SETS, topics=(), again="") if told and alone and not asks else frame


def as_touched(frame: Frame, tonight: Tonight) -> Frame:
    """The frame of a host who tells that a tool went from one food to another, which lays no new table."""
    foods = {reading.id for reading in frame.text.readings if reading.kind in EDIBLE}
    told = frame.intent in (*DROPPED, TROUBLE) and len(foods) > 1 and bool(tonight.dishes)
    if not told or frame.topics or frame.entries or frame.wines or not says(frame, "tool-touches"):
        return frame
    return replace(frame, intent=SAFETY, topics=(CONTACT,), again="")


def _set(
    frame: Frame, tonight: Tonight, dishes: Sequence[Dish], wines: tuple[str, ...], gone: Sequence[Dish]
) -> Frame:
    off = tuple(dish for dish in gone if dish.main.food not in {one.main.food for one in dishes})
    return replace(
        frame, intent=SETS, wines=wines, dishes=tuple(dishes), before=off, preferences=(), again=""
    )


def set_apart(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> Frame | None:
    """The frame where what lay on a food of the table lies by itself (`the chutney isn't with the Gouda`)."""
    named = [reading for reading in frame.text.readings if reading.kind in EDIBLE]
    ids, mains = {r.id for r in named}, {dish.main.food for dish in tonight.dishes}
    on_others = {p.food for dish in tonight.dishes for p in dish.parts if p.role != BASE} & ids
    told = on_others or (len(ids) > 1 and mains & ids)
    if not told or not says(frame, "lies-apart"):
        return None
    dishes = tonight.dishes
    for reading in named:
        dishes = tuple(_less(dish, reading, knowledge) for dish in dishes)
    alone = (single(knowledge.food(r.id).served_as or r.id) for r in named if r.id not in mains)
    return _set(frame, tonight, (*dishes, *alone), tonight.wines, ())


def foods_left(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> tuple[Dish, ...] | None:
    """The dishes left when those named are said to come off or to be eaten up; None where none goes."""
    asks = _asks(frame) or opens(frame, "yes-no") or says(frame, "out-of-the-cold")
    thrown = says(frame, "thrown-out") and not (frame.topics or frame.entries)
    told = frame.intent in DROPPED or (thrown and frame.intent in AILS)
    if not drops(frame) or not told or asks:
        return None
    kept = {reading.id for reading in frame.text.readings if not thrown and is_there(frame, reading)}
    kept |= {reading.id for reading in foods_coming(frame)}
    fixed = tuple(dish for dish in tonight.dishes if dish.main.food in kept)
    left = tuple(dish for dish in tonight.dishes if dish not in fixed)
    for reading in frame.text.readings:
        if reading.kind in EDIBLE and reading.id not in kept:
            left = without_food(left, reading, knowledge)
    now = tuple(one for dish in tonight.dishes for one in _now(dish, fixed, left))
    return None if now == tonight.dishes else now


def _asks(frame: Frame) -> bool:
    """Whether something is asked beside what comes off; `put on figs instead` tells what does come."""
    told = foods_coming(frame) and "?" not in frame.text.typed
    return says(frame, "menu-asks-what" if told else "menu-asks")


def _coming(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> tuple[Dish, ...]:
    """The dishes that are put on in a text that takes others off."""
    of_table = frame.intent == SETS or (frame.intent in DROPPED and bool(tonight.dishes))
    told = of_table and drops(frame) and not _asks(frame)
    return dishes_coming(frame, tonight.dishes, knowledge) if told else ()


def _parts_off(before: Sequence[Dish], after: Sequence[Dish]) -> list[Dish]:
    """What is no longer on a food that stays."""
    now = {dish.main: dish.parts for dish in after}
    return [single(p.food) for dish in before for p in dish.parts if p not in now.get(dish.main, dish.parts)]


def _now(dish: Dish, fixed: Sequence[Dish], left: Sequence[Dish]) -> list[Dish]:
    """A dish of the table as it is now: as it was, without a part, or not at all."""
    return [one for one in (*fixed, *left) if one.main == dish.main]


def is_there(frame: Frame, reading: Reading) -> bool:
    """Whether a food is said to be had, or to stay (`I only have dark chocolate`)."""
    before = frame.text.stems[max(0, reading.start - REACH) : reading.start]
    return not small_words()["stays"].isdisjoint(before)


def without_food(dishes: tuple[Dish, ...], reading: Reading, knowledge: Knowledge) -> tuple[Dish, ...]:
    """The dishes without the one of this name, else all of its kind, else what ends so, else that part."""
    kinds = set(kinds_meant(reading.id, knowledge))
    ways: tuple[Callable[[Dish], bool], ...] = (
        lambda dish: dish.main.food == reading.id,
        lambda dish: not kinds.isdisjoint(knowledge.broader(dish.main.food)),
        lambda dish: called(dish.main.food, reading, knowledge),
    )
    for is_meant in ways:
        left = tuple(dish for dish in dishes if not is_meant(dish))
        if left != dishes:
            return left
    return tuple(_less(dish, reading, knowledge) for dish in dishes)


def _less(dish: Dish, reading: Reading, knowledge: Knowledge) -> Dish:
    off = {reading.id, *kinds_meant(reading.id, knowledge)}
    kept = (p for p in dish.parts if p.role == BASE or off.isdisjoint((p.food, *knowledge.broader(p.food))))
    return replace(dish, parts=tuple(kept))


def not_there(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> list[Reading]:
    """What is said to come off a table where it does not lie; empty where something went."""
    gone = drops(frame) or bool(not_brought(frame))
    told = frame.intent in LOOKED_FOR and gone and not frame.topics
    asks = says(frame, "menu-asks") or says(frame, "table-instead")
    told = told and bool(tonight.dishes or frame.intent == SETS)
    named = [reading for reading in frame.text.readings if reading.kind in EDIBLE]
    others = len(named) < len(frame.text.readings) or foods_left(frame, tonight, knowledge) is not None
    return (
        []
        if asks or others or not told
        else [r for r in named if not is_there(frame, r) and r not in foods_coming(frame)]
    )


def off_what_was_asked(frame: Frame, talk: Talk | None, tonight: Tonight) -> bool:
    """Whether something comes off foods that a wine was asked for, and no table is laid."""
    asked = talk is not None and bool(talk.frame.dishes) and not (tonight.dishes or tonight.wines)
    return asked and frame.intent == SETS and bool(frame.dishes) and drops(frame)


def has_cleared(frame: Frame) -> bool:
    """Whether a text clears the table or a half of it."""
    return any(says(frame, line) for line in (ALL_OFF, FOODS_OFF, WINES_OFF))
