"""What guests claim of a wine or ask of its name: what it is made of, whether it is chilled, or a grape."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.language.dish_edits import POURED
from assistant.language.follow_lines import follow_lines, opens, says
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE
from assistant.language.standing import Talk, dishes_of, last_wine, wines_of

if TYPE_CHECKING:
    from assistant.table.tonight import Tonight

DESCRIBES, SERVICE, SMALLTALK, COMPARES = "describe", "service", "smalltalk", "compare"
CLAIMED = ("pour-order", "compare", "judge-pair", "foods-for-wine", "describe", "unclear", "smalltalk",
           "wines-for-food", "set-table", "note", "myth", "define")  # fmt: skip
COUNTED = (
    "quantity",
    "smalltalk",
    "unclear",
    "note",
    "compare",
    "wines-for-food",
    "choose-wines",
    "judge-pair",
)
GRAPE = "grape/"


def what_it_is(frame: Frame, talk: Talk | None) -> Frame | None:
    """The frame that settles what is claimed or asked of one wine; None where nothing is."""
    if any(reading.kind in EDIBLE for reading in frame.text.readings):
        return None
    if not frame.text.readings and frame.intent in COUNTED and says(frame, "points"):
        return replace(frame, intent=SMALLTALK, dishes=(), wines=(), again="")
    if frame.entries:
        return None
    if (apart := _is_not(frame)) is not None or frame.intent not in CLAIMED:
        return apart
    return _made_of(frame) or _chilled(frame) or _is_grape(frame, talk)


def _is_not(frame: Frame) -> Frame | None:
    """`why isn't crémant Champagne`: where each of the two comes from."""
    named, word = [r for r in frame.text.readings if r.kind in POURED], follow_lines()["isnt-between"]
    if len(frame.wines) != 2 or len(named) != 2:
        return None
    beside = frame.text.stems[named[0].end : named[1].start]
    two = all(word.stand_in([stem]) for stem in beside)  # `why isn't Rioja as good as Malbec` compares
    asks = two and frame.intent in ("why", "why-not", *CLAIMED) and says(frame, "isnt-other")
    return replace(frame, intent=DESCRIBES, dishes=(), preferences=(), again="") if asks else None


def _made_of(frame: Frame) -> Frame | None:
    """`Rioja has to be Tempranillo`: what the wine is made of."""
    named = [r for r in frame.text.readings if r.kind in POURED]
    if len(named) != 2 or not any(one.startswith(GRAPE) for one in (named[1].id, *named[1].others)):
        return None
    between = frame.text.stems[named[0].end : named[1].start]
    wine = next((one for one in (named[0].id, *named[0].others) if one.startswith("wine/")), None)
    if wine is None or not follow_lines()["must-be"].stand_in(between):
        return None
    return replace(frame, intent=DESCRIBES, wines=(wine,), dishes=(), preferences=(), again="")


def _chilled(frame: Frame) -> Frame | None:
    """`Beaujolais is best chilled, no, room temp`: how cold the wine is poured."""
    one = len(frame.wines) == 1 and says(frame, "chilled-or-warm")
    return replace(frame, intent=SERVICE, dishes=(), preferences=(), again="") if one else None


def _is_grape(frame: Frame, talk: Talk | None) -> Frame | None:
    """`is it a grape?`, `is Beaujolais a grape or a region`: what the name of the wine is that of."""
    read = frame.text.readings
    stands = last_wine(talk) if says(frame, "guest-it") else ()
    named = frame.wines or wines_of(tuple(i for reading in read for i in (reading.id, *reading.others)))
    wines = named[:1] or stands
    asks = says(frame, "is-grape") or (bool(named) and says(frame, "is-grape-named"))
    if not wines or not asks or frame.terms:
        return None
    return replace(frame, intent=DESCRIBES, wines=wines, dishes=(), preferences=(), again="")


def rated(frame: Frame, tonight: Tonight) -> Frame:
    """`rate the four with the Brie out of ten` asks how good each is and is no vote; any other as it is."""
    eaten = [r for r in frame.text.readings if r.kind in EDIBLE]
    asks = opens(frame, "rates") and len(tonight.wines) > 1 and len(eaten) == 1
    if not asks or any(r.type == "Wine" for r in frame.text.readings):
        return frame
    return replace(frame, intent=COMPARES, wines=tonight.wines, dishes=dishes_of((eaten[0].id,)))
