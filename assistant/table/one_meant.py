"""`the garlic one`: which dish is meant by one thing that is said of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language.dish_edits import one_of
from assistant.language.follow_lines import says
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE
from assistant.pairing.dish import Dish

MOST_SAID = 8


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


def other_meant(
    frame: Frame, asked: Sequence[Dish], dishes: Sequence[Dish], knowledge: Knowledge
) -> Frame | None:
    """The frame of `and the other one?` with the one dish of the table called as the one asked about."""
    named = any(reading.kind not in EDIBLE for reading in frame.text.readings)
    if named or len(asked) != 1 or not says(frame, "other-one") or len(frame.text.stems) > MOST_SAID:
        return None
    ends = _last_words(asked[0], knowledge)
    others = [d for d in dishes if d.main.food != asked[0].main.food and ends & _last_words(d, knowledge)]
    alike = len(others) == 1 and any(d.main.food == asked[0].main.food for d in dishes)
    return replace(frame, intent="wines-for-food", dishes=tuple(others), again="") if alike else None


def _last_words(dish: Dish, knowledge: Knowledge) -> set[str]:
    """What a dish is called at last (`lasagne`)."""
    return {name.split()[-1] for name in (dish.called, knowledge.label(dish.main.food)) if name}
