"""The places in the order of pouring that are told behind names: `the Rioja first, the port last`."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Text


def places_told(text: Text) -> list[tuple[str, int]]:
    """Each wine or food that has a place right behind it, with the place from 1; -1 is the last."""
    places, stems = follow_words().places, (*text.stems, "")
    told = ((reading.id, places.get(stems[reading.end], 0)) for reading in text.readings)
    return [(name, place) for name, place in told if place]


def among_all(frame: Frame, poured: Sequence[str]) -> bool:
    """Whether a wine of the table, or several with a place each, are asked for among all that is poured."""
    few = len(frame.wines) == 1 or len(places_told(frame.text)) > 1
    return few and set(frame.wines) <= set(poured)
