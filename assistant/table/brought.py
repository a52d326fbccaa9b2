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
from assistant.table.bare_bottles import style_told, tastes_told
from assistant.table.put_on import foods_coming
from assistant.table.taken_off import drops, is_there

if TYPE_CHECKING:
    from assistant.table.tonight import Tonight

SETS, KIND, SAFETY, PAIRS = "set-table", "Kind", "safety", "wines-for-food"
# What is told of a table is taken for where nobody looks at what stands there.
TOLD = ("set-table", "wines-for-food", "foods-for-wine", "unclear", "smalltalk", "substitute",
        "choose-wines", "describe", "judge-pair", "quantity", "what-if")  # fmt: skip
MISSED = (*TOLD, "undo", "why-not", "note", "define", "help", "trouble")
ARRIVES = ("bottle-comes", "food-comes")


def told_of_table(frame: Frame) -> bool:
    """Whether nothing is asked, so that what is said of wines and dishes is told."""
    asks = says(frame, "table-questions") or opens(frame, "yes-no")
    return frame.intent in TOLD and not (asks or frame.topics)


def kinds_poured(frame: Frame) -> tuple[Reading, ...]:
    """The bottles that are called by their kind: `a rosé`, `two bottles of white`, not `I want red`.

    So is one of a list of bottles (`Merlot, dry rosé and port`).
    """
    banned = {one.wanted for one in frame.preferences if one.banned}
    missed = says(frame, "forgotten")
    kinds = [
        r for r in frame.text.readings if r.type == KIND and r.kind == "preference" and r.id not in banned
    ]
    lists = frame.intent == SETS and (bool(frame.wines) or len(kinds) > 1)
    return tuple(r for r in kinds if missed or _is_bottle(frame, r) or (lists and _is_listed(frame, r)))


def _is_bottle(frame: Frame, reading: Reading) -> bool:
    """Whether `a` or the like stands before the kind and what is said of it, or opens its name (`a red`)."""
    start = _starts(frame, reading)
    beside = frame.text.stems[max(0, start - 1) : start + 1]
    return bool(follow_words().bottle_before.intersection(beside))


def _is_listed(frame: Frame, reading: Reading) -> bool:
    """Whether the kind, with what is said of it, stands between stops or begins the list."""
    stems, stops, start = frame.text.stems, small_words()["list-stops"], _starts(frame, reading)
    behind = stems[reading.end : reading.end + 1]
    if reading is frame.text.readings[0] and stops.issuperset(behind) and behind:
        return True
    ends = stops | small_words()["wish-for"]  # `..., Chianti and dry rosé with Brie`
    return start > 0 and stems[start - 1] in stops and ends.issuperset(behind)


def _starts(frame: Frame, reading: Reading) -> int:
    """Where a kind starts with the words that tell what the bottle is like (`a really oaky white`)."""
    start, like = reading.start, follow_words().bottle_like | tastes_told()
    while start and frame.text.stems[start - 1] in like:
        start -= 1
    return start


def bottle_told(frame: Frame, reading: Reading) -> tuple[str, str]:
    """How a bottle is called that is told by its kind, and the kind, or the style that a taste tells."""
    words = slice(_starts(frame, reading), reading.start)
    style = style_told(reading.id, frame.text.stems[words])
    called = " ".join((*frame.text.words[words], reading.label)) if style else reading.label
    return called, style or reading.id


def with_kinds(frame: Frame) -> Frame:
    """The frame with bottles called by their kind among its wines, in the order said, and no limit."""
    kinds = kinds_poured(frame)
    if not kinds:
        return frame
    named = [bottle_told(frame, r)[1] if r in kinds else r.id for r in frame.text.readings
             if r in kinds or r.id in frame.wines]  # fmt: skip
    called = {r.id for r in kinds}
    limits = tuple(one for one in frame.preferences if one.wanted not in called)
    return replace(frame, wines=tuple(dict.fromkeys((*named, *frame.wines))), preferences=limits)


def arriving(frame: Frame, tonight: Tonight) -> Frame | None:
    """The frame that sets the table where a bottle or a dish is told to have come, or to be there."""
    frame = _unheeded(frame, tonight)
    if (missed := _missed(frame, tonight)) is not None:
        return missed
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


def _missed(frame: Frame, tonight: Tonight) -> Frame | None:
    """The frame that lays what was told before and is missed on the table (`you forgot the rosé`)."""
    told, there = with_kinds(frame), {dish.main.food for dish in tonight.dishes}
    wines = tuple(wine for wine in told.wines if wine not in tonight.wines)
    dishes = tuple(dish for dish in frame.dishes if dish.main.food not in there)
    asks = "?" in frame.text.typed or bool(frame.topics or frame.entries)
    laid = tonight.wines or tonight.dishes
    if (
        asks
        or not laid
        or frame.intent not in MISSED
        or not says(frame, "forgotten")
        or not (wines or dishes)
    ):
        return None
    wines, dishes = (*tonight.wines, *wines), (*tonight.dishes, *dishes)
    return replace(frame, intent=SETS, wines=wines, dishes=dishes, preferences=(), again="")


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
    off |= _eaten(frame) if drops(frame) or says(frame, "swaps-for") else set()
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
