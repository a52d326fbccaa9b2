"""Follow-ups that ask on about what stands: why, more, the numbers, back, and what it is asked for next."""

from __future__ import annotations

from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language.eating import unkept
from assistant.language.follow_lines import says, says_only
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame
from assistant.language.preferences import wishes
from assistant.language.refer import lays_it, refers
from assistant.language.standing import FOR_ALL, WHYS, Talk, anew, dishes_of, joined, last_wine, wines_of

DEEPEST, MOST_DOUBTING = 3, 9
DOUBTED = (
    "wines-for-food",
    "foods-for-wine",
    "judge-pair",
    "compare",
    "one-bottle",
    "choose-wines",
    "pour-order",
    "what-if",
    "why",
    "why-not",
    "myth",
)
PLANS = ("safety", "note", "teach", "plan", "set-table", "foods-for-wine")
SETS = "set-table"
WHOLE_TABLE = ("one-bottle", "choose-wines", "check-board", "compare", "pour-order", "what-if", "judge-pair")


def numbers(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`why?` or `the numbers` after a description shows each value with its source."""
    asks = frame.intent == "why" or "deeper" in frame.text.cues
    if talk.frame.intent != "describe" or not asks or frame.wines or frame.dishes:
        return None
    return replace(talk.frame, text=frame.text, depth=DEEPEST)


def order_why(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`why`, `why not the red first` after an order of pouring: the order and its reasons."""
    if frame.intent not in WHYS or frame.dishes or talk.frame.intent != "pour-order":
        return None
    if says(frame, "order-why"):
        return replace(talk.frame, text=frame.text)
    return None if frame.wines else replace(talk.frame, text=frame.text, intent="why", again="pour-order")


def doubted(frame: Frame, talk: Talk | None, last: str) -> Frame:
    """`are you sure?`, `Rolf doesn't believe you` after an answer (of the intent `last`) asks why.

    Who wants proof is told the rules with their sources.
    """
    told = doubt_told(frame)
    if talk is None or last not in DOUBTED or not (told or frame.intent in ("unclear", "smalltalk", "why")):
        return frame
    wines, dishes = talk.frame.wines or wines_of(talk.picks), talk.frame.dishes or dishes_of(talk.picks)
    reasons = (wines and dishes) or talk.frame.intent == "pour-order"
    if not reasons or not (told or says_only(frame, "doubts")):
        return frame
    depth = DEEPEST if says(frame, "doubts-proof") else frame.depth
    return replace(frame, intent="why", preferences=(), depth=depth, text=replace(frame.text, left_out=()))


def doubt_told(frame: Frame) -> bool:
    """Whether somebody told of doubts an answer, or its ground is asked for, and nothing else is named."""
    named = frame.text.readings or frame.text.entries or frame.topics or frame.diets
    few = len(frame.text.stems) <= MOST_DOUBTING
    return few and not named and any(says(frame, line) for line in ("doubts-told", "doubts-proof"))


def back(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`go back` answers the turn before this one again."""
    asked = frame.intent == "undo" or says(frame, "off-again")
    if not asked or frame.wines or frame.dishes or talk.before is None:
        return None
    earlier = talk.before.frame
    return replace(earlier, text=frame.text, intent="undo", again=earlier.again or earlier.intent)


def beside(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`is it sweeter than port` holds the wine that stands against the one named."""
    wines = talk.frame.wines or wines_of(talk.picks[:1])
    if len(frame.wines) != 1 or frame.dishes or not wines or not says(frame, "than-it"):
        return None
    return replace(frame, intent="compare", wines=(wines[0], *frame.wines), preferences=())


def too_much(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`is the Nebbiolo too strong for it` asks whether it goes with the dish that stands."""
    if not frame.wines or frame.dishes or not talk.frame.dishes or not says(frame, "too-for-it"):
        return None
    return replace(frame, intent="judge-pair", dishes=talk.frame.dishes, preferences=())


def why(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`why?` explains the first pick, and again deeper."""
    asked_so = frame.intent == "unclear" and not (frame.wines or frame.dishes) and says(frame, "because")
    if (frame.intent != "why" and not asked_so) or _asks_partner(frame):
        return None
    frame = replace(frame, intent="why")
    goes_on = talk.frame.intent in WHYS and not (frame.wines or frame.dishes)  # another why begins anew
    deeper = talk.frame.depth + 1 if goes_on else frame.depth
    wines = frame.wines or (talk.frame.wines if talk.frame.wines else wines_of(talk.picks[:1]))
    dishes = frame.dishes or talk.frame.dishes or dishes_of(talk.picks[:1])
    depth = min(DEEPEST, max(frame.depth, deeper))
    return replace(frame, wines=wines, dishes=dishes, depth=depth)


def _asks_partner(frame: Frame) -> bool:
    return says(frame, "goes-with") and not (frame.wines or frame.dishes or "why" in frame.text.cues)


def partner(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what does it go with`: foods for the wine that was named, else wines for the dish that stands."""
    if frame.intent not in ("why", "unclear") or not _asks_partner(frame):
        return None
    if talk.frame.wines and talk.asked != "wines-for-food":
        return replace(frame, intent="foods-for-wine", wines=talk.frame.wines[-1:], dishes=())
    return (
        replace(frame, intent="wines-for-food", wines=(), dishes=talk.frame.dishes)
        if talk.frame.dishes
        else None
    )


def why_not(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    if frame.intent != "why-not":
        return None
    named = frame.wines or tuple(p.wanted for p in frame.preferences if p.wanted)
    wines = named or wines_of(talk.avoid[:1]) or talk.frame.wines
    dishes = frame.dishes or dishes_of(frame.barred) or talk.frame.dishes  # `why not the Stilton with that`
    return replace(frame, wines=wines, dishes=dishes, preferences=())


def more(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`anything else?` goes on down the same list."""
    other = says_only(frame, "the-other")
    more = (
        frame.another
        or other
        or (not frame.preferences and follow_words().more.intersection(frame.text.stems))
    )
    if not more or frame.dishes or frame.wines or frame.intent in ("help", "plan"):
        return None
    limits = joined(talk.frame.preferences, frame.preferences)
    before = _named_before(frame, talk)
    if talk.frame.intent == "foods-for-wine":
        return replace(talk.frame, text=frame.text, named_before=before)
    if not talk.frame.dishes:
        return None
    intent = "wines-for-food"
    return replace(
        talk.frame, text=frame.text, intent=intent, wines=(), preferences=limits, named_before=before
    )


def _named_before(frame: Frame, talk: Talk) -> tuple[str, ...]:
    """What is left out of the list that goes on: all that was named; `the other one` is the second."""
    named = talk.picks[:1] if says_only(frame, "the-other") else talk.picks
    return (*talk.frame.named_before, *named)


def kept_to(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`one of them is vegan`: what was asked, with the diet looked at on what stands."""
    if not frame.diets or frame.wines or frame.dishes or not talk.frame.dishes or frame.intent in PLANS:
        return None
    diets = tuple(dict.fromkeys((*talk.frame.diets, *frame.diets)))
    text = replace(frame.text, left_out=unkept(frame.text))
    return replace(anew(frame, talk), text=text, dishes=talk.frame.dishes, diets=diets)


def same(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`same but cheaper`, `under 12 dollars`: what stands, with the words no style answers to told."""
    asked = follow_words().cheaper.intersection(frame.text.stems)
    priced = frame.intent in ("unclear", "quantity") and wishes(frame.text)
    if not (asked or priced) or frame.wines or frame.dishes or not talk.frame.dishes:
        return None
    told = tuple(w for w, s in zip(frame.text.words, frame.text.stems, strict=True) if s in asked)
    text = replace(frame.text, left_out=tuple(dict.fromkeys((*frame.text.left_out, *told))))
    limits = joined(talk.frame.preferences, frame.preferences)
    kept = talk.asked in FOR_ALL or not (asked or talk.asked in ("what-if", "why", "why-not"))
    intent, wines = (talk.frame.intent, talk.frame.wines) if kept else ("wines-for-food", ())
    return replace(talk.frame, text=text, intent=intent, wines=wines, preferences=limits)


def still(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`same wine still?`: the wine that stands, judged with the dish as it is now."""
    wines = last_wine(talk)
    named = frame.wines or frame.dishes or frame.preferences or frame.text.left_out
    if named or not (wines and talk.frame.dishes and says(frame, "still")):
        return None
    return replace(frame, intent="judge-pair", wines=wines, dishes=talk.frame.dishes)


def more_foods(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what cheese would that go with`: other foods for the wine that stands."""
    kinds = all(d.main.food.startswith("kind/") for d in frame.dishes) and not _given(frame)
    asked = says(frame, "foods-asked")
    stands = talk.frame.intent == "foods-for-wine" or (asked and talk.frame.wines)
    if not (stands and kinds) or frame.wines or (frame.dishes and "judge" in frame.text.cues and not asked):
        return None
    if frame.intent not in ("wines-for-food", "foods-for-wine", "unclear") or frame.preferences:
        return None
    if not (frame.dishes or refers(frame.text) or frame.intent != "unclear"):
        return None
    before = _named_before(frame, talk)
    named = tuple(r.id for r in talk.frame.text.readings if r.id in talk.frame.wines)
    wines = named[-1:] if len(talk.frame.wines) > 1 else ()  # `Tomas brought an Amarone`, of a whole table
    return replace(frame, intent="foods-for-wine", wines=wines or talk.frame.wines, named_before=before)


def _given(frame: Frame) -> bool:
    """Whether a wine is asked for with a kind of food (`what goes with the blue`), which is not asked for."""
    words = follow_words()
    for reading in frame.text.readings:
        before = [w for w in frame.text.stems[: reading.start] if w not in words.own_before]
        if reading.type == "Kind" and before[-1:] == ["with"]:
            return True
    return False


def cautious(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`is it safe when pregnant`: the food and the wine that stand, since either may be meant."""
    if frame.intent != "safety" or frame.dishes or frame.wines or not refers(frame.text):
        return None
    wines = talk.frame.wines or wines_of(talk.picks[:1])
    return replace(frame, dishes=talk.frame.dishes or dishes_of(talk.picks[:1]), wines=wines)


def context(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """What is asked of that which stands: `one bottle for the lot`, `how cold do I serve that`."""
    if frame.dishes or frame.intent in ("unclear", "define", "help", "smalltalk", "safety"):
        return None
    if frame.intent == SETS and not lays_it(frame):
        return None
    if frame.wines:
        return replace(frame, dishes=talk.frame.dishes) if frame.intent in WHOLE_TABLE else None
    if frame.intent == "wines-for-food":  # `so what can I drink with it`
        return replace(anew(frame, talk), intent=frame.intent, wines=(), dishes=talk.frame.dishes)
    many = frame.intent in ("pour-order", "compare")
    wines = talk.frame.wines or wines_of(talk.picks if many else talk.picks[:1])
    if frame.intent in ("one-bottle", "choose-wines", "check-board"):  # chosen anew, within what was said
        limits = joined(talk.frame.preferences, frame.preferences)
        return replace(frame, wines=(), dishes=talk.frame.dishes, preferences=limits)
    return replace(frame, wines=wines, dishes=talk.frame.dishes)
