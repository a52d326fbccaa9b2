"""Hot dishes of the table: when they go in the oven is asked, and when they are eaten is told."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time
from typing import TYPE_CHECKING

from assistant.evening.hot import hot_row
from assistant.knowledge.store import Knowledge
from assistant.language.clock import clock_in_digits
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.guests import guest_words
from assistant.language.sorting import EDIBLE
from assistant.language.starting import day_of, time_of
from assistant.pairing.dish import Dish

if TYPE_CHECKING:
    from assistant.table.tonight import Tonight

SETS = "set-table"
# As what a line on warming a dish, or on when it is eaten, is read else.
TAKEN_FOR = (
    "service", "unclear", "what-if", "note", "plan", "quantity", "wines-for-food", "smalltalk", "trouble",
    "describe", SETS,
)  # fmt: skip


def heats(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> bool:
    """Whether it is asked when a hot dish goes in, or told when it is to be on the table."""
    if frame.topics or frame.intent not in TAKEN_FOR or any(r.type == "Wine" for r in frame.text.readings):
        return False
    asked = says(frame, "oven-asked") and bool(hot_meant(frame, tonight, knowledge))
    return asked or bool(served_then(frame, tonight, knowledge))


def hot_meant(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> tuple[Dish, ...]:
    """The hot dishes a line speaks of, with those of the table made hot alike; else all of the table."""
    laid = tuple(dish for dish in tonight.dishes if hot_row(dish, knowledge))
    named = _named(frame, knowledge)
    ways = [row["id"] for dish in named if (row := hot_row(dish, knowledge))]
    alike = tuple(d for d in laid if (row := hot_row(d, knowledge)) and row["id"] in ways)
    return alike or named or (() if _eaten(frame) else laid)


def _named(frame: Frame, knowledge: Knowledge) -> tuple[Dish, ...]:
    return tuple(d for d in frame.dishes if hot_row(d, knowledge)) if _eaten(frame) else ()


def _eaten(frame: Frame) -> bool:
    return any(reading.kind in EDIBLE for reading in frame.text.readings)


def served_then(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> dict[str, time]:
    """The hot dishes of the table a line names, with the time at which they are told to be on it.

    One that is not there yet only where it is asked of the oven as well: else the evening begins then.
    """
    named, laid = _named(frame, knowledge), {dish.main.food for dish in tonight.dishes}
    there = [d.main.food for d in named if d.main.food in laid or says(frame, "oven-asked")]
    said = _time_behind(frame) if there and frame.intent in TAKEN_FOR else None
    return dict.fromkeys(there, said) if said else {}


def _time_behind(frame: Frame) -> time | None:
    """The time told behind the foods (`lasagne at half eight`), or before them (`at nine serve the pie`)."""
    eaten = [reading for reading in frame.text.readings if reading.kind in EDIBLE]
    at = frame.text.stems[eaten[-1].end : eaten[-1].end + 1]
    said = says(frame, "dish-at")
    if not (said or guest_words().at & set(at)):
        return None
    behind = time_of(clock_in_digits(" ".join(frame.text.words[eaten[0].start :])))
    before = said and day_of(frame.text.typed, date.today()) is None
    return behind or (time_of(clock_in_digits(frame.text.typed)) if before else None)


def served(before: Tonight, after: Tonight, frame: Frame, knowledge: Knowledge) -> Tonight:
    """The table with the time at which hot dishes are told to be eaten, which is no start."""
    found = served_then(frame, before, knowledge)
    if not found:
        return after
    starts = says(frame, "starts-at") or day_of(frame.text.typed, date.today()) is not None
    start = after.start if starts else before.start
    return replace(after, start=start, served=tuple({**dict(after.served), **found}.items()))


def time_served(dish: Dish, tonight: Tonight, knowledge: Knowledge) -> time | None:
    """When a dish is told to be on the table, itself or one that is made hot alike."""
    row, told = hot_row(dish, knowledge), dict(tonight.served)
    alike = [d.main.food for d in tonight.dishes if row and hot_row(d, knowledge) == row]
    return next((told[food] for food in (dish.main.food, *alike) if food in told), None)
