"""The table as a line leaves it: set anew, something put to it, swapped or taken off."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.knowledge.store import Knowledge
from assistant.language.dish_edits import POURED, swapped_wines
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame, Reading
from assistant.language.quantities import numbers
from assistant.language.small_words import small_words
from assistant.language.sorting import EDIBLE
from assistant.pairing.dish import Dish
from assistant.table.bare_bottles import style_of_kind
from assistant.table.brought import ARRIVES, SETS, bottle_told, dishes_after_swap, kinds_poured
from assistant.table.put_on import goes_on_listing, has_menu, only_spreads
from assistant.table.taken_off import DROPPED, clears, drops, not_there

if TYPE_CHECKING:
    from assistant.table.tonight import Tonight

ORDERS = "pour-order"
BY_SORT = ("Kind", "Grape")


def changes_table(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> bool:
    """Whether a frame sets the table, brings a wine to it, or swaps or drops what is on it."""
    pair = swapped_wines(frame.text)
    on_it = meant_of((*frame.wines, *(pair or ())), tonight.wines, knowledge)
    if clears(frame, tonight, knowledge) is not None or not_there(frame, tonight, knowledge):
        return True
    ails = bool(frame.entries) and not says(frame, "table-instead")  # trouble is told what to do about
    gone = drops(frame) and not (says(frame, "stains") or ails)
    places = pair is not None and frame.intent == ORDERS and set(pair) <= set(tonight.wines)
    changes = (pair is not None and not places) or gone
    brings = bool(tonight.wines and frame.wines) and says(frame, "table-brings")
    return frame.intent == SETS or brings or bool(on_it and changes)


def table_after(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> Frame:
    """The whole table as it stands after the frame."""
    swapped = dishes_after_swap(frame, tonight)
    if swapped is not None:
        gone = tuple(dish for dish in tonight.dishes if dish not in swapped)
        return replace(frame, intent=SETS, wines=tonight.wines, dishes=swapped, before=gone)
    if (cleared := clears(frame, tonight, knowledge)) is not None:
        return cleared
    if not_there(frame, tonight, knowledge):
        return replace(frame, intent=SETS, wines=tonight.wines, dishes=tonight.dishes)
    wines = _wines_after(frame, tonight, knowledge)
    changed = swapped_wines(frame.text) is not None or drops(frame)
    dishes = once(_dishes_after(frame, tonight, changed))
    text = replace(frame.text, readings=tuple(_taken(r, frame, knowledge) for r in frame.text.readings))
    return replace(frame, intent=SETS, text=text, wines=tuple(dict.fromkeys(wines)), dishes=dishes)


def _taken(reading: Reading, frame: Frame, knowledge: Knowledge) -> Reading:
    """A bottle called by its kind, with the style it is taken for among what it may be."""
    told = bottle_told(frame, reading)[1] if reading in kinds_poured(frame) else ""
    return replace(reading, others=(*reading.others, *styles((told,), knowledge))) if told else reading


def _wines_after(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> tuple[str, ...]:
    """The wines after the frame: one in the place of another, without some, with more, or others."""
    if opened := wines_opened(frame, tonight, knowledge):
        return opened
    wines, pair = styles(frame.wines, knowledge), swapped_wines(frame.text)
    if pair is not None:
        goes, comes = meant_of(pair[:1], tonight.wines, knowledge), styles(pair[1:], knowledge)
        return tuple(one for wine in tonight.wines for one in (comes if wine in goes else (wine,)))
    if drops(frame):
        off = meant_of(frame.wines, tonight.wines, knowledge)
        return tuple(wine for wine in tonight.wines if wine not in off)
    adds = _adds(frame) or not wines or _is_another(frame, wines, tonight)
    return (*tonight.wines, *wines) if adds else wines


def wines_opened(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> tuple[str, ...]:
    """The wines with one opened in the place of another (`no tawny, we opened a Malbec`); empty for none.

    Where no other is named, it comes to those that are there.
    """
    named = [r.id for r in frame.text.readings if r.kind in POURED and knowledge.styles_of(r.id)]
    eaten = any(reading.kind in EDIBLE for reading in frame.text.readings)
    rid = small_words()["gets-rid"].intersection(frame.text.stems[:1])  # `dump the Malbec, it turned out ...`
    asks = "?" in frame.text.typed or says(frame, "asks-what") or bool(frame.topics or rid)
    if asks or eaten or not tonight.wines or not says(frame, "opened-instead"):
        return ()
    new = {name for name in named if name in knowledge.wines and name not in tonight.wines}
    off = [name for name in named if name not in new and wines_called(name, tonight.wines, knowledge)]
    on = styles([name for name in named if name not in off], knowledge)
    if len(on) != 1 or len(off) > 1:
        return ()
    gone = wines_called(off[0], tonight.wines, knowledge)[:1] if off else []
    left = tuple(on[0] if wine in gone else wine for wine in tonight.wines)
    return left if gone else (*left, *on)


def _is_another(frame: Frame, wines: Sequence[str], tonight: Tonight) -> bool:
    """Whether one wine comes to several that are there: only `the wines are ...` begins them anew."""
    return len(wines) == 1 < len(tonight.wines) and not says(frame, "wines-anew")


def _dishes_after(frame: Frame, tonight: Tonight, changed: bool) -> tuple[Dish, ...]:
    """The dishes after a frame; where only wines are `changed`, what merely stands is no new table."""
    eaten = any(reading.kind in EDIBLE for reading in frame.text.readings)
    if changed and tonight.dishes and not eaten:
        return tonight.dishes
    if tonight.dishes and only_spreads(frame):
        return tonight.dishes  # `tapas` stands for what is there already
    if not (_adds(frame) or not frame.dishes):
        return frame.dishes
    new = {dish.main.food: dish for dish in dressed(frame, tonight)}
    there = {dish.main.food for dish in tonight.dishes}
    kept = (new.get(dish.main.food, dish) for dish in tonight.dishes)
    return (*kept, *(dish for dish in frame.dishes if dish.main.food not in there))


def dressed(frame: Frame, tonight: Tonight) -> tuple[Dish, ...]:
    """Dishes of the table with something put to them (`add honey to the Manchego`)."""
    laid = {dish.main.food for dish in tonight.dishes}
    return tuple(dish for dish in frame.dishes if len(dish.parts) > 1 and dish.main.food in laid)


def _adds(frame: Frame) -> bool:
    lines = ("table-adds", "table-brings", "menu-course", "owned-already", "still-on", *ARRIVES)
    return (
        opens(frame, "puts")
        or opens(frame, "fetches")
        or has_menu(frame)
        or goes_on_listing(frame)
        or any(says(frame, line) for line in lines)
    )


def once(dishes: Iterable[Dish]) -> tuple[Dish, ...]:
    """The dishes in order, each once."""
    found: list[Dish] = []
    for dish in dishes:
        found += [] if dish in found else [dish]
    return tuple(found)


def wines_refused(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> tuple[str, ...]:
    """The wines of the table that are said not to be there (`not the Burgundy, we don't have that`)."""
    asks = says(frame, "table-questions") or says(frame, "table-instead")
    if frame.intent not in DROPPED or asks or not drops(frame):
        return ()
    names = [limit.wanted for limit in frame.preferences if limit.banned and limit.wanted]
    return tuple(meant_of(names, tonight.wines, knowledge))


def meant_of(names: Sequence[str], wines: Sequence[str], knowledge: Knowledge) -> set[str]:
    """The wines that these names mean: those called just so, else those of that kind or grape."""
    return {wine for name in names for wine in wines_called(name, wines, knowledge)}


def wines_called(name: str, wines: Sequence[str], knowledge: Knowledge) -> list[str]:
    """Those of the wines that a name means; `Chardonnay` is the unoaked one where no other is there."""
    of, known = knowledge.styles_of(name), knowledge.wines
    just_so = [wine for wine in wines if wine == name]
    grapes = set(known[name].grapes) if name in known else {name}
    kind = [wine for wine in wines if wine in of]
    return just_so or kind or [wine for wine in wines if grapes & set(known[wine].grapes)]


def bottles_meant(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> Frame:
    """The frame whose kinds and grapes are read as the one wine of the table they mean (`the rosé is 9`)."""
    if not (numbers(frame.text.stems) or says(frame, "owns") or says(frame, "owned-already")):
        return frame
    wines = tuple(dict.fromkeys((*tonight.wines, *styles(frame.wines, knowledge))))
    meant = ((reading, wines_called(reading.id, wines, knowledge)) for reading in frame.text.readings)
    readings = tuple(
        replace(reading, id=found[0], type="Wine")
        if reading.type in BY_SORT and reading.id in frame.wines and len(found) == 1
        else reading
        for reading, found in meant
    )
    return replace(frame, text=replace(frame.text, readings=readings))


def styles(names: Sequence[str], knowledge: Knowledge) -> tuple[str, ...]:
    """The wine styles that these words stand for, each once; words that no style answers to are left out."""
    found = (knowledge.styles_of(name) for name in names)
    known = (name for name, of in zip(names, found, strict=True) if of)
    return tuple(
        dict.fromkeys(name if name in knowledge.wines else style_of_kind(name, knowledge) for name in known)
    )
