"""What comes to a table that is told of and not asked about: bottles and dishes."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.language.dish_edits import POURED, dropped, swapped
from assistant.language.fold import fold
from assistant.language.follow_lines import opens, says
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Reading
from assistant.language.guests import guest_words
from assistant.language.small_words import small_words
from assistant.language.sorting import EDIBLE
from assistant.pairing.dish import Dish
from assistant.table.put_on import foods_coming
from assistant.table.taken_off import is_there

if TYPE_CHECKING:
    from assistant.table.tonight import Tonight

SETS, KIND, SAFETY, PAIRS = "set-table", "Kind", "safety", "wines-for-food"
# What is told of a table is taken for where nobody looks at what stands there.
TOLD = ("set-table", "wines-for-food", "foods-for-wine", "unclear", "smalltalk", "substitute",
        "choose-wines", "describe", "judge-pair", "quantity", "what-if")  # fmt: skip
ARRIVES = ("bottle-comes", "food-comes")


def told_of_table(frame: Frame) -> bool:
    """Whether nothing is asked, so that what is said of wines and dishes is told."""
    asks = says(frame, "table-questions") or opens(frame, "yes-no")
    return frame.intent in TOLD and not (asks or frame.topics)


def kinds_poured(frame: Frame) -> tuple[Reading, ...]:
    """The bottles that are called by their kind alone: `a rosé`, `two bottles of white`, not `I want red`."""
    banned = {one.wanted for one in frame.preferences if one.banned}
    return tuple(
        r for r in frame.text.readings
        if r.type == KIND and r.kind == "preference" and r.id not in banned and _is_bottle(frame, r)
    )  # fmt: skip


def _is_bottle(frame: Frame, reading: Reading) -> bool:
    """Whether `a` or the like stands before the kind, or opens its name (`a red`)."""
    beside = frame.text.stems[max(0, reading.start - 1) : reading.start + 1]
    return bool(follow_words().bottle_before.intersection(beside))


def with_kinds(frame: Frame) -> Frame:
    """The frame with bottles called by their kind among its wines, in the order said, and no limit."""
    kinds = kinds_poured(frame)
    if not kinds:
        return frame
    named = [r.id for r in frame.text.readings if r in kinds or r.id in frame.wines]
    called = {r.id for r in kinds}
    limits = tuple(one for one in frame.preferences if one.wanted not in called)
    return replace(frame, wines=tuple(dict.fromkeys((*named, *frame.wines))), preferences=limits)


def arriving(frame: Frame, tonight: Tonight) -> Frame | None:
    """The frame that sets the table where a bottle or a dish is told to have come, or to be there."""
    frame = _unheeded(frame, tonight)
    if not told_of_table(frame):
        return None
    told, laid = with_kinds(frame), bool(tonight.wines or tonight.dishes)
    comes = bool(laid and told.wines) and says(frame, "bottle-comes")
    kinds = told is not frame and frame.intent == SETS
    dishes = bool(laid and _eaten(frame)) and (says(frame, "food-comes") or puts_there(frame))
    if not (comes or kinds or dishes or dishes_after_swap(frame, tonight) is not None):
        return None
    bottles = comes or kinds
    kept = told.wines if bottles else ()
    return replace(without_bringer(told), intent=SETS, wines=kept, preferences=(), again="")


def _unheeded(frame: Frame, tonight: Tonight) -> Frame:
    """The frame without what was only heeded of the line before, where the guests it is of are known."""
    if not tonight.needs or frame.text.topics or not frame.topics:
        return frame
    return replace(frame, topics=(), intent=PAIRS if frame.intent == SAFETY else frame.intent)


def adds_bottles(frame: Frame) -> bool:
    """Whether a frame put bottles on the table beside those there (`add a Cava`, `and a Moscato`)."""
    named = any(reading.kind in POURED for reading in frame.text.readings)
    return named and (opens(frame, "puts") or opens(frame, "and-more") or says(frame, "bottle-comes"))


def fetched(frame: Frame, tonight: Tonight) -> bool:
    """Whether a bottle is told to be got for a table that is laid (`get a Moscato for Carol, £8`)."""
    new = {r.id for r in frame.text.readings if r.kind in POURED} & set(frame.wines) - set(tonight.wines)
    asks = says(frame, "table-questions") or opens(frame, "yes-no") or "?" in frame.text.typed
    laid = bool(tonight.wines or tonight.dishes)
    return laid and bool(new) and opens(frame, "fetches") and not (asks or frame.topics or _eaten(frame))


def puts_there(frame: Frame) -> bool:
    """Whether foods are put on the table or back, however many (`add Brie, Comté and figs to the board`)."""
    return opens(frame, "puts") and says(frame, "puts-there")


def without_bringer(frame: Frame) -> Frame:
    """The frame without the name of whoever brings it among the words that are not known."""
    folded = [fold(word) for word in frame.text.words]
    does = {folded[at] for at in range(len(folded) - 1) if folded[at + 1] in guest_words().does}
    gives = {
        folded[at + 1] for at in range(len(folded) - 1) if folded[at] in small_words()["before-a-bringer"]
    }
    left = tuple(w for w in frame.text.left_out if fold(w) not in does | gives)
    return replace(frame, text=replace(frame.text, left_out=left))


def dishes_after_swap(frame: Frame, tonight: Tonight) -> tuple[Dish, ...] | None:
    """The dishes after `no halloumi, I got feta`, `chips instead of salad`; None where none goes for one.

    What comes stands where the other stood.
    """
    if not tonight.dishes or not told_of_table(frame) or foods_coming(frame):
        return None
    gone = _going(frame, tonight)
    there = {dish.main.food for dish in tonight.dishes}
    new = _coming(frame) - there - {dish.main.food for dish in gone}
    comes = [dish for dish in frame.dishes if dish.main.food in new]
    if not gone or not comes:
        return None
    at = tonight.dishes.index(gone[0])
    left = [dish for dish in tonight.dishes if dish not in gone]
    return (*left[:at], *comes, *left[at:])


def _going(frame: Frame, tonight: Tonight) -> list[Dish]:
    """The dishes of the table that are said to be left off or not to be had."""
    pair = swapped(frame.text)
    off = {reading.id for reading in dropped(frame.text)} | set(frame.barred)
    off |= {pair[0].id} if pair else set()
    off |= _eaten(frame) if says(frame, "table-drops") or says(frame, "swaps-for") else set()
    return [dish for dish in tonight.dishes if dish.main.food in off]


def _coming(frame: Frame) -> set[str]:
    """The foods that may go for another: where none is said to be swapped, those that are there now."""
    if swapped(frame.text) or says(frame, "swaps-for"):
        return _eaten(frame)
    if dropped(frame.text) and _told_now(frame):
        return _eaten(frame)
    return {r.id for r in frame.text.readings if r.kind in EDIBLE and is_there(frame, r)}


def _told_now(frame: Frame) -> bool:
    """Whether something is told to be so by now (`no tart, it's a mousse now`)."""
    return not follow_words().by_now.isdisjoint(frame.text.stems) or says(frame, "its-now")


def _eaten(frame: Frame) -> set[str]:
    return {reading.id for reading in frame.text.readings if reading.kind in EDIBLE}
