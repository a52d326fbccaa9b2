"""How a table is laid by the way: a menu told in courses, the wines that were chosen, what stands when it is planned."""

from __future__ import annotations

from dataclasses import replace

from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.standing import Talk
from assistant.tonight import SETS, Tonight

CHOOSES = ("choose-wines", "one-bottle")
# What a menu or a choice is taken for where nobody looks at what is being prepared.
MENUS = ("wines-for-food", "unclear", "note", "check-board", "judge-pair", "pour-order", "smalltalk", "describe")
NAMED = ("Wine", "Food", "Drink")
TAKES = ("unclear", "compare", "note", "smalltalk", "set-table", "wines-for-food", "plan", "define", "quantity", "undo")


def as_laid(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame:
    """The frame as one that sets the table, where a menu is told or the wines chosen are taken."""
    if _is_menu(frame, tonight):
        return replace(frame, intent=SETS, wines=(), preferences=(), again="")
    if any(reading.type in NAMED for reading in frame.text.readings) or frame.intent not in TAKES:
        return frame
    if tonight.dishes and says(frame, "wines-asked"):
        return replace(frame, intent=CHOOSES[0], dishes=tonight.dishes, wines=(), again="")
    chosen = talk is not None and talk.frame.intent in CHOOSES and talk.picks
    if talk is None or not chosen or not says(frame, "take-those"):
        return frame
    dishes = () if all(dish in tonight.dishes for dish in talk.frame.dishes) else talk.frame.dishes
    return replace(frame, intent=SETS, wines=talk.picks, dishes=dishes, preferences=(), again="")


def _is_menu(frame: Frame, tonight: Tonight) -> bool:
    """Whether foods are told for an evening that is being prepared, and nothing is asked."""
    prepared = bool(tonight.guests or tonight.wines or tonight.dishes)
    eaten = any(reading.type == "Food" for reading in frame.text.readings)
    told = says(frame, "menu") or says(frame, "menu-course")
    return prepared and eaten and told and frame.intent in MENUS and not (frame.topics or says(frame, "menu-asks"))


def with_standing(tonight: Tonight, frame: Frame, talk: Talk | None) -> Tonight:
    """The table with the dishes that stand, and the wines chosen for them, where it has none of its own."""
    dishes = tonight.dishes or frame.dishes
    chosen = talk.picks if talk is not None and talk.frame.intent in CHOOSES else ()
    return replace(tonight, dishes=dishes, wines=tonight.wines or chosen)
