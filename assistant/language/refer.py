"""What a turn refers to in the one before: `the second one`, `that`, `them`."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.knowledge.store import Knowledge
from assistant.language.follow_lines import opens, says
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Text
from assistant.pairing.dish import Dish

if TYPE_CHECKING:
    from assistant.language.standing import Talk

WINES = ("wine/", "drink/")
OF_ANY = ("quantity", "foods-for-wine")  # a kind is any of it there (`which cheese with Rioja`)
PLACED = ("unclear", "wines-for-food", "foods-for-wine", "define", "pour-order")


def place(text: Text) -> int | None:
    """The place in the last list that is meant, from 1 (-1: the last), or None."""
    words = follow_words()
    for at, word in enumerate(text.stems):
        behind = text.stems[at + 1] if at + 1 < len(text.stems) else "?"
        if word in words.places and behind in words.place_after:
            return words.places[word]
    return None


def refers(text: Text) -> bool:
    """Whether a word of the text stands for what was said before."""
    return bool(follow_words().it.intersection(text.stems))


def placed(frame: Frame, picks: tuple[str, ...]) -> Frame:
    """The frame with the wine that is meant by its place in the last list."""
    at = place(frame.text)
    wines = tuple(i for i in picks if i.startswith(WINES))
    if at is None or frame.wines or not -len(wines) <= at <= len(wines) or not wines:
        return frame
    wine = wines[at - 1 if at > 0 else at]
    plain = "judge-pair" if frame.dishes else "describe"
    return replace(frame, wines=(wine,), intent=plain if frame.intent in PLACED else frame.intent)


def same_food(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame:
    """`the cheese` is the goat's cheese spoken of before, where only its kind is named; of several, all."""
    kinds = all(dish.main.food.startswith("kind/") for dish in frame.dishes)
    if frame.intent in OF_ANY or not frame.dishes or not kinds:
        return frame
    met = [_of_kind(dish.main.food, talk, knowledge) or (dish,) for dish in frame.dishes]
    return replace(frame, dishes=tuple(dish for dishes in met for dish in dishes))


def _of_kind(kind: str, talk: Talk | None, knowledge: Knowledge) -> tuple[Dish, ...]:
    """The dishes of this kind that stood last."""
    while talk is not None:
        found = tuple(d for d in talk.frame.dishes if kind in knowledge.broader(d.main.food))
        if found:
            return found
        talk = talk.before
    return ()


def lays_it(frame: Frame) -> bool:
    """Whether what stands is said to come to the table (`put that on the table`), and no table asked for."""
    asks = says(frame, "table-asked") or says(frame, "table-questions") or opens(frame, "save")
    return refers(frame.text) and not asks
