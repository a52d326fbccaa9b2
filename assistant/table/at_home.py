"""What is told of the evening in passing: bottles there already, what they cost, whether it is a supper."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.language.follow_lines import ends_of, says
from assistant.language.frame import Frame, Reading
from assistant.language.quantities import numbers, quantities
from assistant.language.sorting import EDIBLE
from assistant.table.prices_told import priced

if TYPE_CHECKING:
    from assistant.table.tonight import Tonight

BEGINS = ("a", "an", ":", ",")  # one bottle, or a list, begins
SUPPER, QUANTITY = "supper", "quantity"
TELLS = ("set-table", "plan", "note", "unclear", "smalltalk", "quantity", "pour-order", "wines-for-food")
UNHEARD, OF_WINE = ("note", "unclear", "smalltalk"), ("foods-for-wine", "describe", "why-not", "choose-wines")
RECOUNTS = (*UNHEARD, *TELLS, *OF_WINE, "judge-pair", "one-bottle")
ASKED = ("wines-for-food", "unclear", "describe", "judge-pair")


def at_home(tonight: Tonight, frame: Frame) -> Tonight:
    """The table with the bottles that are said to be there already, their prices, and the meal it is."""
    tonight = priced(tonight, frame)
    if frame.topics or frame.intent not in TELLS:
        return tonight
    named = says(frame, "supper-named") and quantities(frame.text).people is not None
    meal = SUPPER if named or says(frame, "supper-told") else tonight.meal
    meal = "" if says(frame, "tasting-told") else meal
    told = says(frame, "owned-already") or (says(frame, "owns") and not quantities(frame.text).people)
    told = told or recounts(frame, tonight)
    owned = {**dict(tonight.owned), **_owned(frame, tonight)} if told else dict(tonight.owned)
    there = tuple((wine, count) for wine, count in owned.items() if wine in tonight.wines)
    return replace(tonight, meal=meal, owned=there)


def owns(frame: Frame, tonight: Tonight) -> bool:
    """Whether bottles are told to be there already while an evening is prepared, and nothing is asked."""
    prepared = tonight.guests or tonight.wines or tonight.dishes or tonight.needs
    asks = "?" in frame.text.typed or says(frame, "menu-asks-what") or frame.topics
    told = says(frame, "owns") and (frame.intent in UNHEARD or says(frame, "owned-already"))
    return bool(
        prepared and frame.wines and told and frame.intent in (*UNHEARD, *TELLS, *OF_WINE) and not asks
    )


def brings_food(frame: Frame) -> bool:
    """Whether the guests are told to bring what is eaten (`it's a potluck`)."""
    asks = "?" in frame.text.typed or says(frame, "menu-asks-what") or bool(frame.topics)
    return says(frame, "food-brought") and not (asks or says(frame, "supposing"))


def recounts(frame: Frame, tonight: Tonight) -> bool:
    """Whether bottles that are there already are counted anew (`I only have one Cava`, `one of each`)."""
    asks = "?" in frame.text.typed or says(frame, "table-questions") or says(frame, "by-the-glass")
    if (
        asks
        or frame.topics
        or frame.intent not in RECOUNTS
        or not tonight.owned
        or not numbers(frame.text.stems)
    ):
        return False
    named = [reading for reading in frame.text.readings if reading.id in dict(tonight.owned)]
    counted = any(_number(frame, reading) for reading in named)
    return says(frame, "recounted") and counted if frame.text.readings else says(frame, "of-each")


def _owned(frame: Frame, tonight: Tonight) -> dict[str, int]:
    """So many bottles of each wine named that is on the table; one where no number stands before it.

    Where none is named and `one of each` is said, so many of all.
    """
    if not frame.text.readings and says(frame, "of-each"):
        return {wine: max(1, int(numbers(frame.text.stems)[0][-1])) for wine in tonight.wines}
    there = ((_of_table(reading, tonight), reading) for reading in frame.text.readings)
    return {wine: _number(frame, reading) or 1 for wine, reading in there if wine}


def _of_table(reading: Reading, tonight: Tonight) -> str:
    """The wine of the table that is named, or that a kind was taken for; empty where there is none."""
    return next((name for name in (reading.id, *reading.others) if name in tonight.wines), "")


def _number(frame: Frame, reading: Reading) -> int:
    """The number between the name before and this one (`two bottles of Barbera`), 0 where there is none.

    What stands before `a Cava` or a stop counts all that follows (`six bottles: a Cava, ...`).
    """
    start = max((r.end for r in frame.text.readings if r.end <= reading.start), default=0)
    begins = (at + 1 for at in range(start, reading.start) if frame.text.stems[at] in BEGINS)
    start = max(begins, default=start)
    found = [number for at, end, number in numbers(frame.text.stems) if start <= at and end <= reading.start]
    return int(found[-1]) if found else 0


def amount_asked(frame: Frame) -> Frame:
    """The frame as one that asks how much of a food is needed (`so how much lamb`), where it does."""
    foods = {r.start for r in frame.text.readings if r.kind in EDIBLE}
    asks = frame.intent in ASKED and bool(foods.intersection(ends_of(frame, "amount-of")))
    return replace(frame, intent=QUANTITY, wines=(), again="") if asks and frame.dishes else frame
