"""What a turn refers to in the one before: `the second one`, `that`, `them`."""

from __future__ import annotations

from dataclasses import replace

from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Text

WINES = ("wine/", "drink/")
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
    if at is None or frame.wines or frame.dishes or not -len(wines) <= at <= len(wines) or not wines:
        return frame
    wine = wines[at - 1 if at > 0 else at]
    return replace(frame, wines=(wine,), intent="describe" if frame.intent in PLACED else frame.intent)
