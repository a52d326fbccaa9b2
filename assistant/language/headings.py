"""`tapas night: prawns and chorizo`: a spread that heads what is named beside it is no dish of its own."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.language.fold import key
from assistant.language.frame import Reading, Text
from assistant.language.small_words import small_words
from assistant.pairing.dish import Dish


def without_headings(dishes: Sequence[Dish], text: Text) -> list[Dish]:
    """The dishes without those that only head the others; all of them where nothing else is named."""
    heads = {reading.id for reading in text.readings if _heads(reading, text)}
    left = [dish for dish in dishes if not (len(dish.parts) == 1 and dish.main.food in heads)]
    return left or list(dishes)


def _heads(reading: Reading, text: Text) -> bool:
    """Whether a spread is named and an occasion, or a colon, stands behind it."""
    said, behind = " ".join(key(reading.text)), text.stems[reading.end : reading.end + 1]
    words = small_words()
    return said in words["spread"] and not words["occasion"].isdisjoint(behind)
