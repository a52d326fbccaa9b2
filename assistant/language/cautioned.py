"""What is asked after a safety question: the same caution for the next food, and nothing with alcohol."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from assistant.language.eating import WITHOUT_ALCOHOL
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame, Preference
from assistant.language.guest_named import guests_named
from assistant.language.guests import Asked
from assistant.language.small_words import small_words
from assistant.language.sorting import words_beside
from assistant.language.standing import short
from assistant.language.topics import Topic

SAFETY, CHOOSES, ORDERS = "safety", "wines-for-food", "pour-order"
FEWEST_LISTED, MOST_BESIDE = 3, 2
OPEN = (
    "wines-for-food",
    "unclear",
    "judge-pair",
    "describe",
    "foods-for-wine",
    "substitute",
    "smalltalk",
    "note",
    "service",
)


@dataclass(frozen=True, slots=True)
class Cautioned:
    """The last question answered with a caution, and whether it was the one just before."""

    frame: Frame
    just_now: bool


def after(frame: Frame, before: Cautioned | None) -> Cautioned | None:
    """What is remembered once a frame is answered."""
    if frame.intent == SAFETY and frame.topics and not opens(frame, "guest-drives"):
        return Cautioned(frame, True)  # who asks who drives cautions nobody
    return replace(before, just_now=False) if before else None


def of_same(before: Cautioned | None, frame: Frame, needs: Sequence[Asked]) -> Cautioned | None:
    """The caution before, but not where it was of another guest than the one named now with known needs."""
    named = set(guests_named(frame.text.typed, needs))
    if is_list(frame) and before and guests_named(before.frame.text.typed, needs):
        return None  # a menu told behind `Ben is coeliac`
    if before is None or not named or says(before.frame, "guest-she"):
        return before
    return before if named & set(guests_named(before.frame.text.typed, needs)) else None


def heeded(frame: Frame, before: Cautioned | None, topics: Mapping[str, Topic], without: str) -> Frame:
    """The frame with what the caution before asks for; `without` labels drinks without alcohol."""
    if before is None or frame.intent == ORDERS:  # `in which order do I pour them` is of the wines
        return frame
    for_them = _no_alcohol(before.frame.topics, topics) and _asks_for_them(frame, before.frame)
    which = for_them and _which_drink(frame, topics)
    if frame.intent == SAFETY and not which:
        return _of_them_too(frame, before, topics)
    if frame.intent not in OPEN and not which and not (for_them and frame.wines):
        return frame
    menu = is_list(frame) and not _of_somebody(before, topics)
    if before.just_now and frame.dishes and not (frame.wines or menu) and _fragment(frame):
        return replace(frame, intent=SAFETY, topics=before.frame.topics)
    if not for_them:
        return frame
    if frame.wines:
        return replace(frame, intent=SAFETY, topics=before.frame.topics)
    limit = Preference(without, "kind", wanted=WITHOUT_ALCOHOL)
    return replace(frame, intent=CHOOSES, preferences=(limit,))


def _of_them_too(frame: Frame, before: Cautioned, topics: Mapping[str, Topic]) -> Frame:
    """`can I eat the Brie` right after `I'm pregnant` is asked of somebody who is pregnant."""
    who = tuple(name for name in before.frame.topics if topics[name].no_alcohol)
    if not (before.just_now and who and frame.dishes) or set(who) & set(frame.topics):
        return frame
    return replace(frame, topics=(*who, *frame.topics))


def _which_drink(frame: Frame, topics: Mapping[str, Topic]) -> bool:
    """Whether `what can she drink then` asks for a drink, and tells of no trouble of its own."""
    of_its_own = frame.wines or not all(topics[name].otherwise for name in frame.topics)
    return says(frame, "asks-what") and not of_its_own


def is_list(frame: Frame) -> bool:
    """Whether several foods are told and nothing is said beside them, as of a menu."""
    few = words_beside(frame.text) <= MOST_BESIDE and "?" not in frame.text.typed
    return few and len(frame.dishes) >= FEWEST_LISTED and not (frame.wines or frame.follows or frame.topics)


def _of_somebody(before: Cautioned, topics: Mapping[str, Topic]) -> bool:
    """Whether the caution was for somebody, whatever is eaten, and not of one food."""
    return any(topics[name].no_alcohol or topics[name].allergens for name in before.frame.topics)


def _fragment(frame: Frame) -> bool:
    """Whether only a food is named, no drink being asked for with it and nothing being said to be gone."""
    return short(frame) and not (says(frame, "they-drink") or says(frame, "table-drops"))


def _no_alcohol(named: Iterable[str], topics: Mapping[str, Topic]) -> bool:
    return any(topics[name].no_alcohol for name in named)


def _asks_for_them(frame: Frame, cautioned: Frame) -> bool:
    """Whether a drink is asked for whoever the caution was for."""
    self_too = bool(small_words()["first-person"].intersection(cautioned.text.stems)) and says(
        frame, "i-drink"
    )
    return says(frame, "they-drink") or self_too
