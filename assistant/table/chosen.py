"""What is asked of wines that were chosen together: why one, in which order, and the choice made again."""

from __future__ import annotations

from dataclasses import replace

from assistant.evening.choose_make import scores_of
from assistant.evening.main_bites import wanting_wine
from assistant.evening.why_chosen import whys
from assistant.language.counting import bottles
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.quantities import quantities
from assistant.language.refer import place, placed
from assistant.language.standing import Talk
from assistant.pairing.dish import Dish, table_of
from assistant.pairing.engine import Engine
from assistant.table.tonight import ORDERS, Tonight

CHOOSES = ("choose-wines", "one-bottle")
WHY, LOOKS_BACK = ("why", "why-not"), 4
SUPPOSED = ("what-if", "check-board", "help", "unclear", "choose-wines", "describe", "undo", "service")
LEFT = "left"  # in the numbers of a frame: how many bottles are left of a choice


def last_choice(talk: Talk | None) -> Talk | None:
    """The last of the turns just before in which several wines were chosen, or None."""
    for _ in range(LOOKS_BACK):
        if talk is None or (talk.frame.intent in CHOOSES and talk.picks):
            return talk
        talk = talk.before
    return None


def _together(talk: Talk | None) -> Talk | None:
    choice = last_choice(talk)
    return choice if choice and choice.frame.intent == CHOOSES[0] else None


def chosen_anew(frame: Frame, talk: Talk | None) -> Frame:
    """The frame that chooses again where a choice of fewer or more is supposed (`what if we had two`)."""
    choice = _together(talk)
    supposes = says(frame, "supposing") and frame.intent in SUPPOSED
    others = frame.dishes or not set(frame.wines) <= set(choice.picks if choice else ())
    if choice is None or not supposes or others or quantities(frame.text).people:
        return frame
    gone = placed(frame, choice.picks).wines if "left-off" in frame.text.cues else ()
    if frame.wines and not gone:
        return frame
    again = replace(choice.frame, text=frame.text, again="", follows=True)
    if gone:
        return _without(again, choice.picks, gone)
    count = None if place(frame.text) else bottles(frame.text).total
    return frame if count is None else replace(again, numbers={LEFT: float(count)})


def _without(again: Frame, picks: tuple[str, ...], gone: tuple[str, ...]) -> Frame:
    """The same choice of the other wines; where one only is left, of all wines but the one that goes."""
    rest = tuple(wine for wine in picks if wine not in gone)
    numbers = {LEFT: float(max(1, len(rest)))}
    before = (*again.named_before, *gone)
    return replace(again, wines=rest if len(rest) > 1 else (), named_before=before, numbers=numbers)


def of_choice(frame: Frame, talk: Talk | None, tonight: Tonight, engine: Engine) -> Frame:
    """The frame about the wines chosen together, where it asks why one of them or in which order."""
    choice = _together(talk)
    if choice is None:
        return frame
    if frame.intent == ORDERS:
        return _in_order(frame, choice, tonight)
    eaten = any(reading.type == "Food" for reading in frame.text.readings)
    if frame.intent not in WHY or len(frame.wines) != 1 or frame.wines[0] not in choice.picks:
        return frame
    if eaten:
        return _with_dish(frame, choice, engine)
    of_it = len(frame.dishes) > 1 and all(dish in choice.frame.dishes for dish in frame.dishes)
    return replace(frame, dishes=_chosen_for(frame, choice, engine)) if of_it else frame


def _in_order(frame: Frame, choice: Talk, tonight: Tonight) -> Frame:
    """All wines chosen, where none is named and none stands on the table."""
    named = any(reading.type in ("Wine", "Drink", "Kind") for reading in frame.text.readings)
    eats = says(frame, "foods-order")
    if named or eats or tonight.wines or not set(frame.wines) <= set(choice.picks):
        return frame
    return replace(frame, wines=choice.picks, dishes=choice.frame.dishes)


def _with_dish(frame: Frame, choice: Talk, engine: Engine) -> Frame:
    """`why that one with the cod`: where none is named, the wine chosen that does best with it."""
    named = any(reading.type in ("Wine", "Drink", "Kind") for reading in frame.text.readings)
    if named or place(frame.text) or not all(dish in choice.frame.dishes for dish in frame.dishes):
        return frame
    table = table_of(list(frame.dishes))
    return replace(frame, wines=(max(choice.picks, key=lambda wine: engine.judge(table, wine).score),))


def _chosen_for(frame: Frame, choice: Talk, engine: Engine) -> tuple[Dish, ...]:
    """The dishes that the wine was chosen for, or else the one that it does best with."""
    dishes = choice.frame.dishes
    wanting = wanting_wine([[dish] for dish in dishes], engine)
    table = table_of([dishes[at] for at in wanting])
    scores = scores_of(table, [str(at) for at in wanting], choice.picks, engine)
    found = next(why for why in whys(scores, choice.picks) if why.wine == frame.wines[0])
    return tuple(dishes[int(at)] for at in found.foods or (found.own.food,))
