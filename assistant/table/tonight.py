"""What is on the table tonight: the wines and foods that every answer looks to first."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from datetime import date, datetime, time
from typing import TYPE_CHECKING

from assistant.knowledge.store import Knowledge
from assistant.language.dish_edits import POURED
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.guests import Asked, guest_words
from assistant.language.party import need_counts, only_told, opening_total, party_of
from assistant.language.pour_places import among_all, as_order
from assistant.language.quantities import quantities
from assistant.language.same_guests import with_need
from assistant.language.sorting import EDIBLE
from assistant.pairing.dish import Dish, single
from assistant.table.at_home import amount_asked, at_home, brings_food
from assistant.table.headcount import counted
from assistant.table.served import heats
from assistant.table.supposed import SUPPOSES, as_supposed, only_supposed
from assistant.table.table_set import changes_table, table_after
from assistant.table.taken_off import off_what_was_asked
from assistant.table.time_and_money import PREPARES, budgeted, dated

if TYPE_CHECKING:
    from assistant.after.heat import Heat
    from assistant.evening.records import Evening
    from assistant.language.standing import Talk

COUNTS = "quantity"
SERVICE = "service"
SETS, CHECKS, ORDERS, CHOOSES = "set-table", "check-board", "pour-order", "choose-wines"
SUPPOSED = ("help", "what-if", "unclear", "smalltalk", "note", "set-table", "define")
FEWEST_OF_A_BOARD = 3
PLACED = ("set-table", "unclear", "service", "describe", "pour-order", "plan", "foods-for-wine", "compare")
OF_ALL_FOODS = ("one-bottle", "check-board", "choose-wines", "safety")


@dataclass(frozen=True, slots=True)
class Tonight:
    """The table: ids of wine styles in the order named, and the dishes. Empty: all that is known is meant.

    `guests` and how many of them drink no wine, `start` in local time and `needs` of guests, as last said;
    `title` of the evening, if it has one, and `evening` as its file has it, with prices; `budget` in their
    money, as last said; `reserve`: styles of wines that its file lists and that are not poured; `day`: as
    said before any time was; `per_head`: the money where it was said for each guest; `owned`: bottles there
    already, by wine; `prices` of a bottle as told; `meal`: supper, where that was said; `guests_before`: how
    many they were before more came; `late`: who comes when; `food_brought`: guests bring
    what is eaten, so that none of it is bought; `heat` of the air, as told; `binned`: dishes that stood out
    too long and are served no more; `served`: when a hot dish is to be on the table.
    """

    wines: tuple[str, ...] = ()
    dishes: tuple[Dish, ...] = ()
    guests: float | None = None
    non_drinkers: float = 0.0
    start: datetime | None = None
    needs: tuple[Asked, ...] = ()
    title: str = ""
    evening: Evening | None = field(default=None, compare=False)
    budget: float | None = None
    per_head: float | None = None
    owned: tuple[tuple[str, int], ...] = ()
    prices: tuple[tuple[str, float], ...] = ()
    meal: str = ""
    reserve: tuple[str, ...] = ()
    day: date | None = field(default=None, compare=False)
    guests_before: float | None = field(default=None, compare=False)
    late: tuple[tuple[str, time | None], ...] = ()
    food_brought: bool = False
    heat: Heat | None = None
    binned: tuple[Dish, ...] = ()
    served: tuple[tuple[str, time], ...] = ()


def at_table(frame: Frame, tonight: Tonight, knowledge: Knowledge) -> Frame:
    """The frame with what the table adds: a table set or changed as a whole, and what is asked of all."""
    frame = as_order(amount_asked(frame), tonight.wines)
    if heats(frame, tonight, knowledge):
        return replace(frame, intent=SERVICE, wines=())
    if _asks_place(frame, tonight):
        return replace(frame, intent=ORDERS, wines=tonight.wines, dishes=())
    if frame.intent == SETS and frame.dishes and not frame.wines and says(frame, "board-check"):
        return replace(frame, intent=CHECKS)  # `my board is brie and olives, any gaps`
    if only_supposed(frame):
        frame = as_supposed(frame)
    elif changes_table(frame, tonight, knowledge):
        return table_after(frame, tonight, knowledge)
    if tonight.wines and tonight.dishes and says(frame, "overview") and not frame.topics:
        return replace(frame, intent=CHECKS, dishes=tonight.dishes)
    if frame.intent == "unclear" and tonight.dishes and says(frame, "board-check"):
        return replace(frame, intent=CHECKS, dishes=tonight.dishes)
    if frame.intent == "describe" and says(frame, "alcohol-in"):
        return replace(frame, intent=COUNTS)
    if frame.intent == "unclear" and says(frame, "plan-it"):
        return replace(frame, intent="plan")
    if tonight.guests and _asks_of_heads(frame) and quantities(frame.text).people:
        return replace(frame, intent=COUNTS, dishes=(), wines=())
    eaten = [r for r in frame.text.readings if r.kind in EDIBLE]
    alone = len(frame.dishes) == 1 and not frame.wines
    if alone and frame.intent == "compare" and len(eaten) == len(frame.dishes[0].parts) > 1:
        return replace(frame, dishes=tuple(single(part.food) for part in frame.dishes[0].parts))
    which = frame.intent == "compare" and not says(frame, "differs")
    if alone and (which or (frame.intent == "unclear" and tonight.wines)):
        return replace(frame, intent="wines-for-food")  # `which one for the brie`
    named = any(r.kind in POURED for r in frame.text.readings)
    of_all = says(frame, "together") or says(frame, "the-table") or not (frame.dishes or frame.wines)
    if frame.intent in OF_ALL_FOODS and tonight.dishes and of_all and not eaten:
        frame = replace(frame, dishes=tonight.dishes)
    if frame.intent == ORDERS and len(tonight.dishes) > 1 and not named and says(frame, "foods-order"):
        return replace(frame, wines=(), dishes=tonight.dishes)
    whole = not named or among_all(frame, tonight.wines)
    if frame.intent == ORDERS and len(tonight.wines) > 1 and whole:
        frame = replace(frame, wines=tonight.wines)
    if frame.intent == ORDERS and tonight.wines:  # `the Crémant first, not the Riesling` limits nothing
        frame = replace(frame, preferences=tuple(one for one in frame.preferences if not one.banned))
    return replace(frame, anywhere=says(frame, "shop"))


def _asks_place(frame: Frame, tonight: Tonight) -> bool:
    """Whether it is asked when a wine of the table is poured (`where does it go in the order`)."""
    named = {reading.id for reading in frame.text.readings}
    of_table = len(tonight.wines) > 1 and named <= set(tonight.wines)
    return of_table and frame.intent in PLACED and says(frame, "order-place")


def paired(frame: Frame, tonight: Tonight, talk: Talk | None) -> Frame:
    """`and the Gorgonzola with the PX?` judges two things of the table; what is on none comes off a plate."""
    if off_what_was_asked(frame, talk, tonight):
        return replace(frame, intent="wines-for-food")
    laid = {dish.main.food for dish in tonight.dishes}
    named = {dish.main.food for dish in frame.dishes}
    changes = "what-if" in frame.text.cues or len(frame.dishes) != 1
    of_table = frame.intent == SUPPOSES and named <= laid and set(frame.wines) & set(tonight.wines)
    return replace(frame, intent="judge-pair") if of_table and not changes else frame


def _asks_of_heads(frame: Frame) -> bool:
    """Whether more guests come, or a number of guests is only supposed."""
    supposes = says(frame, "supposing") and not (frame.dishes or frame.wines)
    return says(frame, "more-come") or (supposes and frame.intent in SUPPOSED)


def laid(frame: Frame, tonight: Tonight) -> Tonight:
    """The table after a frame: as it says where it sets the table or shows a board, else as it was."""
    if only_supposed(frame):
        return tonight
    if frame.intent == CHECKS and frame.dishes:
        return tonight if _looks_at_some(frame, tonight) else replace(tonight, dishes=frame.dishes)
    return replace(tonight, wines=frame.wines, dishes=frame.dishes) if frame.intent == SETS else tonight


def _looks_at_some(frame: Frame, tonight: Tonight) -> bool:
    """Whether some foods of a table that is laid are looked at, and no new board is told."""
    laid, named = ({dish.main.food for dish in dishes} for dishes in (tonight.dishes, frame.dishes))
    return bool(laid) and (named < laid or len(named) < FEWEST_OF_A_BOARD)


def after_said(frame: Frame, tonight: Tonight) -> Tonight:
    """The table after all that a frame says of it."""
    told = at_home(budgeted(dated(counted(laid(frame, tonight), frame), frame), frame), frame)
    return needed(replace(told, food_brought=told.food_brought or brings_food(frame)), frame)


def needed(tonight: Tonight, frame: Frame) -> Tonight:
    """The table with what so many of the guests ask to be spared, where the party is spoken of."""
    for asked in party_of(frame.text) if _tells_of_party(frame) else ():
        tonight = needing(tonight, asked)
    return tonight


def _tells_of_party(frame: Frame) -> bool:
    """Whether the party is told of: in a plan, in no question, or beside the number of all guests."""
    if only_told(frame):
        return True
    asks = guest_words().asks.intersection(frame.text.typed.lower().split())
    people = quantities(frame.text).people or opening_total(frame.text.stems)
    beside = people is not None and people not in need_counts(frame.text.stems)
    return beside or frame.intent in PREPARES or (frame.intent == "unclear" and not asks)


def needing(tonight: Tonight, asked: Asked) -> Tonight:
    """The table with what a guest asks to be spared, once."""
    return replace(tonight, needs=with_need(tonight.needs, asked))
