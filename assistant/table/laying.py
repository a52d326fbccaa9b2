"""How a table is laid by the way: a menu told in courses, wines that were chosen, what stands at a plan."""

from __future__ import annotations

from dataclasses import replace

from assistant.asides import aside
from assistant.knowledge.store import Knowledge
from assistant.language.cautioned import FEWEST_LISTED, is_list
from assistant.language.clock import clock_in_digits
from assistant.language.dish_edits import POURED
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame, Reading
from assistant.language.guests import guest_words
from assistant.language.quantities import quantities
from assistant.language.small_words import small_words
from assistant.language.sorting import EDIBLE
from assistant.language.standing import Talk
from assistant.language.starting import clock_said
from assistant.language.turning import FOODS
from assistant.table.at_home import brings_food, owns, recounts
from assistant.table.brought import adds_bottles, arriving, fetched, told_of_table, with_kinds
from assistant.table.chosen import CHOOSES, chosen_anew, last_choice
from assistant.table.headcount import MOST_COUNTING, counts_drinkless
from assistant.table.prices_told import only_prices, without_prices
from assistant.table.put_on import goes_on_listing, has_headings, has_menu, is_spread
from assistant.table.supposed import only_supposed
from assistant.table.table_set import dressed, wines_opened, wines_refused
from assistant.table.taken_off import as_order, as_touched, clears, not_there
from assistant.table.time_and_money import budget_said
from assistant.table.told_of_dish import told_of_dish
from assistant.table.tonight import ORDERS, SETS, Tonight
from assistant.table.what_it_is import what_it_is

CUISINE = "cuisine"
# What a menu or a choice is taken for where nobody looks at what is being prepared.
PLANS, PAIRED = "plan", ("wines-for-food", "unclear")
MENUS = (
    "wines-for-food",
    "unclear",
    "note",
    "check-board",
    "judge-pair",
    "pour-order",
    "smalltalk",
    "describe",
    "one-bottle",
    "set-table",
)
ASKED_OF_CHOICE = ("wines-for-food", "one-bottle")
NAMED = ("Wine", "Food", "Drink")
OF_TABLE = ("set-table", "check-board", "plan", "quantity")
TELLS_OF_IT = ("plan", "set-table", "note", "unclear", "smalltalk")
BROUGHT = ("unclear", "note", "smalltalk", "set-table", "wines-for-food", "foods-for-wine", "undo")
TAKES = (
    "unclear",
    "compare",
    "note",
    "smalltalk",
    "set-table",
    "wines-for-food",
    "plan",
    "define",
    "quantity",
    "undo",
)


def as_laid(frame: Frame, talk: Talk | None, tonight: Tonight, knowledge: Knowledge) -> Frame:
    """The frame as one that sets the table, where a menu is told or the wines chosen are taken."""
    frame = as_touched(as_order(_without_event(frame), tonight), tonight)
    if only_supposed(frame):
        return chosen_anew(frame, talk)
    if _only_cuisine(frame) and frame.intent == SETS:
        return replace(frame, dishes=())
    if opened := wines_opened(frame, tonight, knowledge):
        return replace(frame, intent=SETS, wines=opened, dishes=(), preferences=(), again="")
    if clears(frame, tonight, knowledge) is not None or not_there(frame, tonight, knowledge):
        return replace(frame, intent=SETS, again="")
    if gone := wines_refused(frame, tonight, knowledge):
        return replace(frame, intent=SETS, wines=gone, dishes=(), preferences=(), again="")
    if only_prices(frame, tonight):
        frame = without_prices(frame, tonight)
        return replace(frame, intent=SETS, wines=(), dishes=(), preferences=(), again="")
    if recounts(frame, tonight) or _only_drinkless(frame, tonight):
        return replace(frame, intent=SETS, wines=(), dishes=(), preferences=(), again="")
    if brings_food(frame) and not frame.text.readings and frame.intent in BROUGHT:
        return replace(frame, intent=SETS, wines=(), dishes=(), preferences=(), again="")
    if has_headings(frame):
        return replace(with_kinds(replace(frame, intent=SETS)), preferences=(), again="")
    if owns(frame, tonight):
        frame = without_prices(frame, replace(tonight, wines=(*tonight.wines, *frame.wines)))
        return replace(with_kinds(replace(frame, intent=SETS)), dishes=(), preferences=(), again="")
    if (told := told_of_dish(frame, tonight, knowledge)) is not None:
        return told
    if fetched(frame, tonight):
        frame = without_prices(frame, replace(tonight, wines=(*tonight.wines, *frame.wines)))
        return replace(frame, intent=SETS, dishes=(), preferences=(), again="")
    if _more_poured(frame, talk, tonight):
        return replace(frame, intent=SETS, dishes=(), preferences=(), again="")
    if _added(frame, talk, tonight):
        return replace(frame, intent=SETS, preferences=(), again="")
    if frame.intent == SETS and not frame.wines and (dressed(frame, tonight) or _more(frame, tonight)):
        return replace(frame, again="")  # whatever dish stands
    if _is_menu(frame, tonight):
        return replace(frame, intent=SETS, preferences=(), again="")
    if (meant := aside(frame, talk, tonight)) is not frame:
        return meant
    if (settled := what_it_is(frame, talk)) is not None:
        return settled
    if (arrived := arriving(frame, tonight)) is not None:
        return arrived
    if _is_prepared(frame):
        return replace(frame, intent=PLANS, again="")
    if (anew := chosen_anew(frame, talk)) is not frame:
        return anew
    if budget_said(frame, tonight) is not None and frame.intent in TAKES:
        return replace(frame, intent="plan", again="")
    if any(reading.type in NAMED for reading in frame.text.readings) or frame.intent not in TAKES:
        return frame
    if tonight.dishes and says(frame, "wines-asked"):
        return replace(frame, intent=CHOOSES[0], dishes=tonight.dishes, wines=(), again="")
    choice = last_choice(talk)
    if choice is None or not says(frame, "take-those") or says(frame, "off-again"):
        return frame
    dishes = () if all(dish in tonight.dishes for dish in choice.frame.dishes) else choice.frame.dishes
    return replace(frame, intent=SETS, wines=choice.picks, dishes=dishes, preferences=(), again="")


def _only_drinkless(frame: Frame, tonight: Tonight) -> bool:
    """Whether no more is told than how many of the guests known drink no wine (`two of them drive`)."""
    stems = frame.text.stems
    asks = (
        (guest_words().asks - guest_words().in_allergy).intersection(stems)
        or "?" in frame.text.typed
        or says(frame, "supposing")
    )
    more = asks or frame.text.readings or frame.topics or frame.intent not in MENUS
    return bool(tonight.guests) and len(stems) <= MOST_COUNTING and not more and counts_drinkless(stems)


def _more(frame: Frame, tonight: Tonight) -> bool:
    """Whether foods named come to a table that is laid (`add Manchego and olives to the board`)."""
    return bool(tonight.dishes and frame.dishes and any(r.kind in EDIBLE for r in frame.text.readings))


def _added(frame: Frame, talk: Talk | None, tonight: Tonight) -> bool:
    """Whether something is put to the table itself (`add walnuts`), and to no dish that was spoken of."""
    asks = frame.topics or frame.wines or "?" in frame.text.typed or says(frame, "supposing")
    stands = [dish.main.food for dish in talk.frame.dishes] if talk else []
    other = any(dish.main.food not in stands for dish in dressed(frame, tonight))
    whole = talk is None or talk.frame.intent in OF_TABLE or len(stands) > 1 or other
    goes_on = talk is not None and talk.frame.intent == SETS and goes_on_listing(frame)
    return whole and _more(frame, tonight) and (opens(frame, "puts") or goes_on) and not asks


def _more_poured(frame: Frame, talk: Talk | None, tonight: Tonight) -> bool:
    """Whether bottles go on a line that put some on the table (`and a Moscato for the tart`)."""
    goes_on = talk is not None and talk.frame.intent == SETS and adds_bottles(talk.frame)
    new = {r.id for r in frame.text.readings if r.kind in POURED} & set(frame.wines) - set(tonight.wines)
    told = told_of_table(frame) and "?" not in frame.text.typed
    return goes_on and bool(new) and opens(frame, "and-more") and told


def _without_event(frame: Frame) -> Frame:
    """The frame without a kind of food that only names the evening (`a cheese and wine tasting`)."""
    if frame.intent not in TELLS_OF_IT:
        return frame
    events = {r.id for r in frame.text.readings if _heads_evening(r) and _names_event(frame, r)}
    dishes = tuple(dish for dish in frame.dishes if dish.main.food not in events or len(dish.parts) > 1)
    return frame if dishes == frame.dishes else replace(frame, dishes=dishes)


def _heads_evening(reading: Reading) -> bool:
    """Whether a name is one of many foods: a kind, or a spread (`tapas night`)."""
    return reading.type == "Kind" or is_spread(reading)


def _names_event(frame: Frame, reading: Reading) -> bool:
    """Whether a word for the evening follows a kind of food, at most behind `and wine` or a wine."""
    poured = {at for r in frame.text.readings if r.kind in POURED for at in range(r.start, r.end)}
    after = [stem for at, stem in enumerate(frame.text.stems) if at >= reading.end and at not in poured]
    behind = [stem for stem in after if stem not in small_words()["with-wine"]]
    return bool(behind) and behind[0] in small_words()["event"]


def _is_prepared(frame: Frame) -> bool:
    """Whether nothing is asked, and how many come is told beside the day, or when all sit down.

    `Saturday at 6, six neighbours`; `we eat at half seven`.
    """
    words = frame.text.typed.lower().replace(",", " ").split()
    day = any(word in guest_words().days or word in guest_words().soon for word in words)
    clock, asks = clock_said(clock_in_digits(frame.text.typed)), says(frame, "menu-asks")
    if clock and says(frame, "sits-at") and frame.intent in TAKES and not (frame.topics or asks):
        return True
    told = day and clock and quantities(frame.text).people is not None
    return told and frame.intent in PAIRED and not (frame.topics or asks)


def with_choice(tonight: Tonight, frame: Frame, talk: Talk | None) -> Tonight:
    """The table with the wines just chosen, where none are poured and one of their foods is asked about."""
    choice = last_choice(talk)
    if (
        tonight.wines
        or choice is None
        or choice.frame.intent != CHOOSES[0]
        or frame.intent not in ASKED_OF_CHOICE
    ):
        return tonight
    free = not (frame.wines or frame.preferences or frame.anywhere)
    of_it = bool(frame.dishes) and all(dish in choice.frame.dishes for dish in frame.dishes)
    return replace(tonight, wines=choice.picks) if free and of_it else tonight


def _is_menu(frame: Frame, tonight: Tonight) -> bool:
    """Whether foods are told for an evening that is being prepared, and nothing is asked."""
    laid = _is_headed(frame, tonight)
    prepared = laid or tonight != Tonight() or tonight.day is not None
    listed = is_list(frame) and not tonight.dishes
    eaten = any(reading.type == "Food" for reading in frame.text.readings)
    asks = "?" in frame.text.typed or says(frame, "menu-asks")
    listed = listed or has_menu(frame)
    told = (laid or listed or says(frame, "menu") or says(frame, "menu-course")) and not asks
    return prepared and eaten and told and frame.intent in MENUS and not frame.topics


def _is_headed(frame: Frame, tonight: Tonight) -> bool:
    """Whether foods are told to be on the table, or stand behind a heading (`cheeses: Brie, Gouda`)."""
    there = says(frame, "on-the-table") and not (tonight.dishes or opens(frame, "yes-no"))
    headed = says(frame, "menu-headed") and len(frame.dishes) >= FEWEST_LISTED
    headed = headed and not says(frame, "table-questions")  # `..., is that a bit much`
    return (there or headed) and not (says(frame, "wine-wanted") or frame.intent == ORDERS)


def with_standing(tonight: Tonight, frame: Frame, talk: Talk | None) -> Tonight:
    """The table with the dishes that stand, and the wines chosen for them, where it has none of its own."""
    choice = last_choice(talk)
    chosen = choice.picks if choice else ()
    named = () if _only_cuisine(frame) else frame.dishes
    dishes = tonight.dishes or named or (choice.frame.dishes if choice else ())
    return replace(tonight, dishes=dishes, wines=tonight.wines or chosen)


def _only_cuisine(frame: Frame) -> bool:
    """Whether a cuisine is named and no dish of it (`I'm cooking Indian`): its dishes are only examples."""
    kinds = {reading.kind for reading in frame.text.readings}
    return CUISINE in kinds and kinds.isdisjoint(FOODS)
