"""`There are walnuts in the quiche`: what a dish of the table holds besides, told and not asked."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.knowledge.store import Knowledge
from assistant.language.dish_edits import with_parts
from assistant.language.follow_lines import follow_lines, says
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE
from assistant.pairing.dish import single
from assistant.table.brought import SETS, TOLD

if TYPE_CHECKING:
    from assistant.table.tonight import Tonight

SAFETY = "safety"
HEARD = ("trouble", "note", "myth", "teach", "why")  # what alcohol in a dish may be taken for
ALCOHOL, HOLDS_ALCOHOL = "food/cooked-in-alcohol", "holds-alcohol"


def told_of_dish(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> Frame | None:
    """The frame that sets the table with more on one dish of it; None where nothing of the kind is told."""
    if not (tonight.dishes and _is_told(frame) and says(frame, "holds-told")):
        return None
    named = dict.fromkeys(reading.id for reading in frame.text.readings if reading.kind in EDIBLE)
    held = {dish.main.food: {part.food for part in dish.parts} for dish in tonight.dishes}
    dish = [main for main in held if main in named]
    dish = dish or [main for main, foods in held.items() if foods.intersection(named)]
    more = [name for name in named if name not in dish and not (dish and name in held[dish[0]])]
    more += [ALCOHOL] if says(frame, HOLDS_ALCOHOL) else []
    if len(dish) != 1 or not more:
        return None
    parts = [single(name).main for name in (*dish, *more)]
    dishes = with_parts(tonight.dishes, parts, knowledge)
    return replace(_without_drinks(frame), intent=SETS, wines=(), preferences=(), dishes=dishes, again="")


def _without_drinks(frame: Frame) -> Frame:
    """The frame with the drinks that were told of no longer among the words that are not known."""
    text = frame.text
    told = {text.words[i] for places in follow_lines()[HOLDS_ALCOHOL].find(text.stems) for i in places}
    return replace(frame, text=replace(text, left_out=tuple(w for w in text.left_out if w not in told)))


def _is_told(frame: Frame) -> bool:
    """Whether nothing is asked, and nobody is told to have eaten of it, which may be an emergency."""
    asks = says(frame, "table-questions") or any(follow_lines()["yes-no"].at(frame.text.stems, 0))
    eaten = says(frame, "guest-she") or says(frame, "guest-drank")
    told = (*TOLD, SAFETY, *(HEARD if says(frame, HOLDS_ALCOHOL) else ()))
    return frame.intent in told and not (asks or eaten)
