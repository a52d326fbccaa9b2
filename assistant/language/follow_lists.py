"""Follow-ups that ask for another list: foods that somebody eats, another wine, which of those spoken of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language.follow_lines import opens, says
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame
from assistant.language.standing import JUDGING, Talk, joined, last_wine, short, wines_of
from assistant.pairing.dish import Dish

TOGETHER = ("one-bottle", "wines-for-food", "unclear", "compare", "choose-wines")
MOST_TOGETHER = 6
ASKED_OF_FOOD = ("wines-for-food", "judge-pair", "describe", "why", "why-not", "compare")
SPOKEN = (*JUDGING, "what-if", "foods-for-wine")
FREED = ("unclear", "undo", "wines-for-food", "smalltalk", "choose-wines", "note", "help")
OF_A_WINE = ("describe", "service")
OPEN = ("unclear", "substitute", "define", "help", "service")


def eaten(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`vegetarian`, `not fish` after a list of foods: the list again, kept to that."""
    if talk.asked != "foods-for-wine" or frame.wines or not (frame.diets or frame.barred):
        return None
    if any(d.main.food not in frame.barred for d in frame.dishes):
        return None
    old = talk.frame
    diets, barred = (*old.diets, *frame.diets), (*old.barred, *frame.barred)
    left = () if frame.diets else frame.text.left_out
    return replace(old, text=replace(frame.text, left_out=left), diets=diets, barred=barred)


def freed(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`any colour`, `forget the limit`: what was asked, asked again within no limit."""
    named = frame.dishes or frame.wines or frame.topics
    if named or frame.intent not in FREED or not talk.frame.dishes or not says(frame, "limit-off"):
        return None
    return replace(talk.frame, text=frame.text, preferences=())


def otherwise(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what would be better then`: another wine for the dish that stands than those spoken of."""
    if frame.intent not in OPEN or frame.wines or frame.dishes or not talk.frame.dishes:
        return None
    if frame.intent == "help" and "help" in frame.text.cues:
        return None  # `what else can you do`
    if frame.text.left_out or not says(frame, "otherwise"):
        return None
    limits = joined(talk.frame.preferences, frame.preferences)
    before = (*talk.frame.named_before, *talk.frame.wines)
    return replace(
        frame, intent="wines-for-food", dishes=talk.frame.dishes, preferences=limits, named_before=before
    )


def between(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`which of the two?` compares the wines spoken of, or the first two picked."""
    asks = follow_words().several.intersection(frame.text.stems) or says(frame, "between")
    if not asks or frame.intent not in ("unclear", "compare") or frame.wines or frame.preferences:
        return None
    wines = spoken_of(talk)
    wines = wines if len(wines) > 1 else wines_of(talk.picks[:2])
    if len(wines) < 2:
        return None
    return replace(frame, intent="compare", wines=wines, dishes=frame.dishes or talk.frame.dishes)


def order_asked(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`which one should they try last` asks for the order of what is poured."""
    if not says(frame, "order-asked") or frame.wines or frame.dishes or frame.topics:
        return None
    return replace(frame, intent="pour-order", dishes=talk.frame.dishes)


def in_order(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`put the Riesling first then?`, `and where comes the Cava`: all wines of the order that stands."""
    if not (frame.intent == talk.frame.intent == "pour-order") or frame.dishes or not frame.wines:
        return None
    wines = tuple(dict.fromkeys((*talk.frame.wines, *frame.wines)))
    return replace(frame, wines=wines) if len(talk.frame.wines) > 1 else None


def of_another(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`and the Chianti?` after `what's the alcohol in the Barbera`: the same asked of another wine."""
    asks = frame.intent in ("foods-for-wine", "unclear", "describe") and opens(frame, "guest-on")
    if not asks or len(frame.wines) != 1 or frame.dishes or not short(frame):
        return None
    old, text = talk.frame, frame.text
    if old.intent not in OF_A_WINE or not old.wines or old.dishes:
        return None
    stems, words = (*text.stems, *old.text.stems), (*text.words, *old.text.words)
    return replace(old, text=replace(text, stems=stems, words=words), wines=frame.wines)


def described(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`is it a sweet wine?`, `and dry or sweet?`: what the wine that stands is like."""
    wines = last_wine(talk)
    if frame.dishes or frame.wines or not wines or frame.intent not in ("unclear", "wines-for-food"):
        return None
    if frame.text.left_out or not says(frame, "like") or "why" in frame.text.cues or says(frame, "shop"):
        return None  # `is a dessert wine worth buying` asks of no wine that stands
    return replace(frame, intent="describe", wines=wines, dishes=talk.frame.dishes, preferences=())


def together(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`one bottle for both`: all foods spoken of one after another, not only the last."""
    if frame.intent not in TOGETHER or frame.dishes or not says(frame, "together"):
        return None
    spoken = dishes_spoken_of(talk)
    dishes = spoken[-2:] if "both" in frame.text.stems else spoken
    if len(dishes) < 2:
        return None
    limits = joined(talk.frame.preferences, frame.preferences)
    intent = frame.intent if frame.intent == "choose-wines" else "one-bottle"
    return replace(frame, intent=intent, dishes=dishes, preferences=limits)


def dishes_spoken_of(talk: Talk) -> tuple[Dish, ...]:
    """The dishes that stood one after another, the first one first, each as it is now."""
    found: list[Dish] = []
    now: Talk | None = talk
    while now is not None and len(found) < MOST_TOGETHER:
        found = [*(d for d in now.frame.dishes if not _same_main(d, found)), *found]
        now = now.before
    return tuple(found)


def _same_main(dish: Dish, others: Sequence[Dish]) -> bool:
    return any(dish.main.food == other.main.food for other in others)


def spoken_of(talk: Talk) -> tuple[str, ...]:
    """The wines that were judged one after another with what stands, the first one first."""
    found: list[str] = []
    now: Talk | None = talk
    while now is not None and now.asked in SPOKEN and _of_same(now, talk):
        found = [*now.frame.wines, *found]
        now = now.before
    return tuple(dict.fromkeys(found))


def _of_same(earlier: Talk, talk: Talk) -> bool:
    """Whether an earlier turn was about the same dishes, whatever came onto them since."""
    mains = [[dish.main.food for dish in turn.frame.dishes] for turn in (earlier, talk)]
    return mains[0] == mains[1]


def solved(frame: Frame, puzzle: Frame | None) -> Frame:
    """`it's a mild creamy cheese` after a name that was not known: the question before, of that food."""
    if puzzle is None or frame.intent in ("safety", "myth") or not frame.dishes or frame.wines:
        return frame
    if puzzle.dishes or not says(frame, "it-is"):
        return frame
    told = dict.fromkeys((*puzzle.text.left_out, *frame.text.left_out))
    text = replace(frame.text, left_out=tuple(told))
    plain = "judge-pair" if puzzle.wines else "wines-for-food"
    intent = puzzle.intent if puzzle.intent in ASKED_OF_FOOD else plain
    return replace(frame, intent=intent, text=text, wines=puzzle.wines, preferences=puzzle.preferences)
