"""The places in the order of pouring that are told behind names: `the Rioja first, the port last`."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.language.follow_lines import says
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Text

TWO, ORDERS = 2, "pour-order"


def places_told(text: Text) -> list[tuple[str, int]]:
    """Each wine or food that has a place right behind it, with the place from 1; -1 is the last."""
    places, stems = follow_words().places, (*text.stems, "")
    told = ((reading.id, places.get(stems[reading.end], 0)) for reading in text.readings)
    return [(name, place) for name, place in told if place]


def places_swapped(frame: Frame, poured: Sequence[str]) -> tuple[str, str] | None:
    """The two wines of the table that are to change places (`swap the Rioja and the port`)."""
    named = tuple(dict.fromkeys(r.id for r in frame.text.readings if r.id in poured))
    linked = len(named) == TWO and says(frame, "places-swapped")
    return (named[0], named[1]) if linked else None


def as_order(frame: Frame, poured: Sequence[str]) -> Frame:
    """The frame as one of the order of all that is poured, where two are to change places."""
    swaps = places_swapped(frame, poured) is not None
    return replace(frame, intent=ORDERS, wines=tuple(poured), preferences=()) if swaps else frame


def among_all(frame: Frame, poured: Sequence[str]) -> bool:
    """Whether a wine of the table, or several with a place each, are asked for among all that is poured."""
    few = len(frame.wines) == 1 or len(places_told(frame.text)) > 1
    return few and set(frame.wines) <= set(poured)
