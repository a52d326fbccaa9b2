"""`the garlic one`: which dish is meant by one thing that is said of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language.dish_edits import one_of
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE
from assistant.pairing.dish import Dish


def one_meant(frame: Frame, dishes: Sequence[Dish], knowledge: Knowledge) -> Frame | None:
    """The frame of `the garlic one` with the one of these dishes, laid or just named, that is meant."""
    stems, ones = (*frame.text.stems, ""), follow_words().one
    one = any(stems[r.end] in ones for r in frame.text.readings if r.kind in EDIBLE)
    at = one_of(tuple(dishes), frame, knowledge) if one and frame.dishes else None
    return None if at is None else _named(frame, dishes[at], knowledge)


def _named(frame: Frame, dish: Dish, knowledge: Knowledge) -> Frame:
    """The frame about this dish, which stands as read in place of the word it was called by."""
    food, stems = dish.main.food, (*frame.text.stems, "")
    meant = tuple(
        replace(r, id=food, label=knowledge.label(food)) if stems[r.end] in follow_words().one else r
        for r in frame.text.readings
    )
    return replace(frame, dishes=(dish,), text=replace(frame.text, readings=meant))
