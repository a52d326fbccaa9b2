"""A wine and a food told together ask for a verdict; a pair said to be better is held against the other."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.language.dish_edits import called
from assistant.language.follow_lines import says
from assistant.language.frame import Frame, Reading
from assistant.language.small_words import small_words
from assistant.language.sorting import EDIBLE
from assistant.language.standing import Talk, dishes_of, last_wine, wines_of
from assistant.pairing.dish import Dish, single
from assistant.table.liked_again import liked_again
from assistant.table.table_set import once, wines_opened

if TYPE_CHECKING:
    from assistant.session import Session

JUDGES, COMPARES, SETS, SMALLTALK = "judge-pair", "compare", "set-table", "smalltalk"
TAKEN_FOR = (
    "note",
    "pour-order",
    "unclear",
    "set-table",
    "what-if",
    "describe",
    "smalltalk",
    "teach",
    "foods-for-wine",
)
CLAIMED = (*TAKEN_FOR, "compare", "judge-pair", "wines-for-food", "undo", "why-not", "myth", "substitute")
KEPT, SEEKS, KIND = ("teach", "note"), "foods-for-wine", "kind/"
MOST, MOST_TASTING = 2, 14


def told_at_table(frame: Frame, session: Session) -> Frame:
    """What is told over the table and waits for an answer: a dislike taken back, a pair."""
    if wines_opened(frame, session.tonight, session.knowledge):
        return replace(frame, intent=SETS, entries=(), again="")
    if (tasted := _tasted(frame, session)) is not None:
        return tasted
    free = liked_again(frame, session.talk)
    return pair_told(frame, session) if free is frame else free


def _tasted(frame: Frame, session: Session) -> Frame | None:
    """The frame about the pair just judged, or advised, where it is told how that tasted."""
    talk, last, text = session.talk, session.spoken.last, frame.text
    told = says(frame, "tasted-good") or says(frame, "tasted-bad")
    named = text.readings or frame.topics or frame.entries or says(frame, "tasted-not")
    if talk is None or last is None or named or not told or len(text.stems) > MOST_TASTING:
        return None
    wines = talk.frame.wines[:1] or wines_of(talk.picks[:1])
    pair = wines and len(talk.frame.dishes) == 1 and (last.verdict or says(frame, "tasted-told"))
    if not pair or frame.intent not in (*CLAIMED, "smalltalk", "help", "trouble", "why"):
        return None
    return replace(frame, intent=SMALLTALK, wines=wines, dishes=talk.frame.dishes, preferences=(), again="")


def pair_told(frame: Frame, session: Session) -> Frame:
    """The frame that judges what is told to go together, or holds one against another; else as it is."""
    foods = [reading for reading in frame.text.readings if reading.kind in EDIBLE]
    other = frame.topics or frame.entries or says(frame, "supposing") or _is_for_keeps(frame)
    other = other or _is_whole(frame)
    if other or not (frame.wines and foods):
        return frame
    dishes = once(_dish(reading, session) for reading in foods)
    pair = replace(frame, dishes=dishes, preferences=(), again="")
    if frame.intent in CLAIMED and says(frame, "better-told") and "?" not in frame.text.typed:
        return _held_against(pair, session.talk)
    several = len(frame.wines) == MOST or len(dishes) == MOST
    if several and frame.intent in CLAIMED and says(frame, "which-of"):
        return _held_against(pair, session.talk)
    return replace(pair, intent=JUDGES) if frame.intent in TAKEN_FOR and _is_bare(frame) else frame


def _is_for_keeps(frame: Frame) -> bool:
    """Whether it is told to be kept (`remember that`, `make a note`), and not said over the table."""
    return frame.intent in KEPT and (frame.intent in frame.text.cues or says(frame, "as-a-rule"))


def _is_whole(frame: Frame) -> bool:
    """Whether two are compared already, or one of them is not known, or a food of some kind is sought."""
    if frame.intent == COMPARES:
        several = len(frame.wines) > 1 or len(frame.dishes) > 1
        return several or bool(frame.text.left_out) or "undecided" in frame.text.cues
    return frame.intent == SEEKS and all(dish.main.food.startswith(KIND) for dish in frame.dishes)


def _dish(reading: Reading, session: Session) -> Dish:
    """The dish of the table that is named, whichever way it was cooked, else the food by itself."""
    known, there = session.knowledge, session.tonight.dishes
    just_so = [dish for dish in there if dish.main.food == reading.id]
    called_so = just_so or [dish for dish in there if called(dish.main.food, reading, known)]
    return called_so[0] if len(called_so) == 1 else single(reading.id)


def _is_bare(frame: Frame) -> bool:
    """Whether a food is named with a wine, and nothing else is said."""
    used = {at for reading in frame.text.readings for at in range(reading.start, reading.end)}
    beside = {stem for at, stem in enumerate(frame.text.stems) if at not in used and stem[:1].isalnum()}
    linked = beside & small_words()["pair-links"]
    return bool(linked) and beside <= small_words()["pair-links"] | small_words()["pair-leads"]


def _held_against(pair: Frame, talk: Talk | None) -> Frame:
    """What is said to be better, beside what it is better than: named, or what was just spoken of."""
    wines, dishes = pair.wines, pair.dishes
    if len(wines) == 1 and len(dishes) == 1:
        wines, dishes = _with_last(wines[0], dishes[0], talk)
    several = len(wines) > 1 or len(dishes) > 1
    fits = len(wines) <= MOST and len(dishes) <= MOST and not (len(wines) > 1 and len(dishes) > 1)
    return replace(pair, intent=COMPARES if several and fits else JUDGES, wines=wines, dishes=dishes)


def _with_last(wine: str, dish: Dish, talk: Talk | None) -> tuple[tuple[str, ...], tuple[Dish, ...]]:
    """The pair with the wine that was just told for the food, or the food just told for the wine."""
    if talk is None:
        return (wine,), (dish,)
    before = talk.frame.dishes or dishes_of(talk.picks[:1])
    poured = wines_of(talk.picks[:1]) or last_wine(talk)
    if len(before) == 1 and poured and poured[0] != wine and before[0].main.food == dish.main.food:
        return (wine, poured[0]), before
    if len(before) == 1 and poured == (wine,):
        return (wine,), (dish, before[0])
    return (wine,), (dish,)
