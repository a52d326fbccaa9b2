"""`The curry`, `the dessert`, `the fondant`: a dish of the table, before anything else of that name."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language.dish_edits import called
from assistant.language.fold import key
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Reading
from assistant.language.lexicon import Lexicon
from assistant.language.sorting import EDIBLE
from assistant.language.standing import PLAIN, Talk, anew
from assistant.language.talk import follow
from assistant.pairing.dish import Dish
from assistant.table.one_meant import one_meant, other_meant
from assistant.table.table_set import once
from assistant.table.tonight import Tonight

ASKED = ("wines-for-food", "judge-pair", "why", "why-not", "unclear", "compare", "one-bottle", "describe")
LOOKS_BACK, LOOKS_FAR = 6, 60
THE = "the"


def menu_of(tonight: Tonight, talk: Talk | None) -> tuple[Dish, ...]:
    """The dishes on the table, or else those of the last turn about several, or those of the last turns."""
    if tonight.dishes:
        return tonight.dishes
    named: list[Dish] = []
    for _ in range(LOOKS_BACK):
        if talk is None or len(talk.frame.dishes) > 1:
            break
        named, talk = [*talk.frame.dishes, *named], talk.before
    several = talk.frame.dishes if talk and len(talk.frame.dishes) > 1 else once(named)
    return several if len(several) > 1 else ()


def short_names(
    tonight: Tonight, talk: Talk | None, knowledge: Knowledge, lexicon: Lexicon
) -> Mapping[str, str]:
    """`the fondant` for the chocolate fondant, where one dish ends so and nothing to eat is called that.

    A food may have been called otherwise than it is labelled: a tart is known as a pie.
    """
    said, ends = as_said(talk), defaultdict[str, dict[str, str]](dict)
    for food in (dish.main.food for dish in menu_of(tonight, talk)):
        for name in (said.get(food, "").lower(), knowledge.label(food).lower()):
            if " " in name:
                ends[name.split()[-1]][food] = name
    alone = ((end, *names.values()) for end, names in ends.items() if len(names) == 1 and end.isalpha())
    return {f"{THE} {end}": f"{THE} {name}" for end, name in alone if not _eaten(end, lexicon)}


def as_said(talk: Talk | None) -> dict[str, str]:
    """What the foods of the talk were called, by id, the last name first."""
    names: dict[str, str] = {}
    for _ in range(LOOKS_FAR):
        if talk is None:
            break
        for reading in talk.frame.text.readings:
            names.setdefault(reading.id, reading.text)
        talk = talk.before
    return names


def _eaten(word: str, lexicon: Lexicon) -> bool:
    found = lexicon.longest(key(word), 0)
    return found is not None and any(name.kind in EDIBLE for name in found[1])


def followed(frame: Frame, talk: Talk | None, tonight: Tonight, knowledge: Knowledge) -> Frame:
    """The frame completed from what stands; `the garlic one` is the food on the table, if one is."""
    frame = own_dishes(frame, menu_of(tonight, talk), knowledge)
    named = talk.frame.dishes if talk else ()
    if other := other_meant(frame, named, tonight.dishes, knowledge):
        return other
    meant = one_meant(frame, tonight.dishes or named, knowledge)
    if meant is None or meant.wines:
        return follow(meant or frame, talk, knowledge)
    return replace(anew(meant, talk), dishes=meant.dishes) if talk and meant.intent in PLAIN else meant


def own_dishes(frame: Frame, dishes: tuple[Dish, ...], knowledge: Knowledge) -> Frame:
    """The frame about dishes of the table as they are there, where each food is called as one of them."""
    readings = [reading for reading in frame.text.readings if reading.kind in EDIBLE]
    if frame.intent not in ASKED or not dishes or len(readings) != len(frame.dishes):
        return frame
    if not all(_led(frame, reading) for reading in readings):
        return frame
    met = [
        _meant(reading, dishes, knowledge) or (dish,)
        for reading, dish in zip(readings, frame.dishes, strict=True)
    ]
    return replace(frame, dishes=once(dish for row in met for dish in row))


def _led(frame: Frame, reading: Reading) -> bool:
    """Whether `the` or the like stands before a name, and no `one` behind it (`the garlic one`)."""
    before, behind = (
        frame.text.stems[max(0, reading.start - 1) : reading.start],
        frame.text.stems[reading.end :],
    )
    words = follow_words()
    return bool(words.own_before.intersection(before)) and not words.one.intersection(behind[:1])


def _meant(reading: Reading, dishes: tuple[Dish, ...], knowledge: Knowledge) -> tuple[Dish, ...]:
    """The dishes of which this is the main food; else a part; else those of that name or kind."""
    return next(filter(None, _ways(reading, dishes, knowledge)), ())


def _ways(reading: Reading, dishes: tuple[Dish, ...], knowledge: Knowledge) -> Iterator[tuple[Dish, ...]]:
    yield tuple(dish for dish in dishes if dish.main.food == reading.id)
    yield tuple(dish for dish in dishes if any(part.food == reading.id for part in dish.parts))
    kinds = {reading.id, *reading.others}
    yield tuple(
        dish
        for dish in dishes
        if kinds.intersection(knowledge.broader(dish.main.food))
        or any(called(part.food, reading, knowledge) for part in dish.parts)
    )
