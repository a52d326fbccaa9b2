"""`it's 95 out`, `a hundred degrees on the porch`: how warm the air is where the food stands, as told."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from assistant.after.phrases import one_of, phrases, said
from assistant.after.times import degrees_said
from assistant.evening.facts import fact
from assistant.language.clock import clock_words, numbers_in_digits
from assistant.language.frame import Frame
from assistant.language.quantities import numbers
from assistant.language.retold import either

if TYPE_CHECKING:
    from assistant.table.tonight import Tonight

WARMEST, COOLEST = 55.0, 24.0
"""°C between which a number told of the air is believed; a table in the shade is not meant below."""
FAHRENHEIT, CELSIUS = "f", "c"
LEAST_FAHRENHEIT = 75.0


@dataclass(frozen=True, slots=True)
class Heat:
    """How warm it is, in °C, and the unit it was told in; empty where none was."""

    celsius: float
    unit: str = ""

    @property
    def over(self) -> bool:
        """Whether food may stand out for the shorter time only."""
        return self.celsius > fact("clock", "pace", "hot_room").typical


def heat_told(frame: Frame) -> Heat | None:
    """The heat of the air, by degrees or in words; None where none is told, or of a wine or an oven."""
    text = frame.text
    placed = one_of(text.stems, "hot_place") or one_of(text.stems, "hot")
    if one_of(text.stems, "not_air") or (frame.wines and not placed):
        return None
    told = _degrees(text.typed)
    if told is None and phrases().hot.stand_in(text.stems):
        return Heat(fact("clock", "pace", "hot_room").typical + 1)
    return told if told and COOLEST <= told.celsius <= WARMEST else None


def heated(tonight: Tonight, frame: Frame) -> Tonight:
    """The table as warm as is told; what went in the bin and comes to it anew is fresh."""
    laid = {dish.main.food for dish in tonight.dishes}
    binned = tuple(dish for dish in tonight.binned if dish.main.food not in laid)
    return replace(tonight, heat=heat_told(frame) or tonight.heat, binned=binned)


def counts_degrees(frame: Frame) -> bool:
    """Whether the one number told is how warm it is (`it's 95 out, what wine`), and counts no guests."""
    return heat_told(frame) is not None and len(numbers(frame.text.stems)) == 1


def without_heat(typed: str) -> str:
    """The text without a bare number of degrees, which is no time of day."""
    return _bare().sub(" ", typed)


def bound_in_words(unit: str) -> str:
    """Above how many degrees food may stand out for the shorter time only, in the unit told or in both."""
    celsius = fact("clock", "pace", "hot_room").typical
    fields = {"celsius": f"{celsius:.0f}", "fahrenheit": f"{celsius * 9 / 5 + 32:.0f}"}
    return said("outside", f"degrees-{unit}" if unit else "degrees-both", **fields)


def _degrees(typed: str) -> Heat | None:
    digits = numbers_in_digits(typed.lower().replace("’", "'"))
    found = degrees_said(digits)
    if found is not None:
        return Heat(*found)
    bare = _bare().search(digits)
    if bare is None:
        return None
    value = float(bare[1] or bare[2])
    warm = value >= LEAST_FAHRENHEIT
    return Heat((value - 32) * 5 / 9 if warm else value, FAHRENHEIT if warm else CELSIUS)


@lru_cache(maxsize=1)
def _bare() -> re.Pattern[str]:
    """`it's 95 out`, `the thermometer says 92`: a number of two or three digits."""
    is_so, place, measured = (either(phrases().heat[name]) for name in ("is", "place", "measured"))
    about = rf"\s+(?:{clock_words().one_of('about')}\s+)?"
    at_place = rf"\b{is_so}{about}(\d{{2,3}})(?=\s+{place}\b(?!\s+(?:of|since|for)\b))"
    return re.compile(rf"{at_place}|\b{measured}{about}(\d{{2,3}})\b(?!\s*\w)", re.IGNORECASE)
