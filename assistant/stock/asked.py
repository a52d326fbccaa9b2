"""What a question asks of the host's list: a price to keep to, the cheapest, what is left."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache

from assistant.language.fold import key
from assistant.language.frame import Frame
from assistant.language.standing import Talk
from assistant.stock.records import Stock
from assistant.stock.words import asked_words, stock_words

Price = tuple[float | None, float | None]
ANYTHING: Price = (None, None)
CENT = 0.01
UNCLEAR, WINES, HELD = "unclear", "wines-for-food", ("unclear", "quantity", "note", "plan", "substitute")


@lru_cache(maxsize=1)
def _pattern() -> re.Pattern[str]:
    words = asked_words()[1]
    ways = "|".join(sorted(map(re.escape, (*words["under"], *words["over"])), key=len, reverse=True))
    signs = "|".join(map(re.escape, sorted(stock_words().currency, key=len, reverse=True)))
    behind = "|".join(map(re.escape, words["not_price"]))
    return re.compile(
        rf"\b(?P<way>{ways})\s+(?:{signs})?\s*(?P<figure>\d{{1,6}}(?:[.,]\d{{1,2}})?)"
        rf"(?![\d.,]*\d)(?!\s*(?:{behind})(?!\w))\s*(?:(?:{signs})(?!\w))?",
        re.IGNORECASE,
    )


@lru_cache(maxsize=256)
def price_asked(typed: str) -> Price:
    """The least and the most a bottle may cost, None where a text does not say."""
    low = high = None
    for found in _pattern().finditer(typed):
        way, figure = found["way"].lower(), float(found["figure"].replace(",", "."))
        off = CENT if way in asked_words()[1]["strict"] else 0.0
        if way in asked_words()[1]["under"]:
            high = round(figure - off, 2)
        else:
            low = round(figure + off, 2)
    return low, high


@lru_cache(maxsize=256)
def cheapest_asked(typed: str) -> bool:
    """Whether the cheapest is asked for."""
    return asked_words()[0]["cheapest"].stand_in(key(typed))


def left_asked(typed: str) -> bool:
    """Whether it is asked what is left."""
    return asked_words()[0]["left"].stand_in(key(typed))


def asks_price(typed: str) -> bool:
    """Whether a price or the cheapest is asked for."""
    return price_asked(typed) != ANYTHING or cheapest_asked(typed)


def meant_of_list(frame: Frame, talk: Talk | None, stock: Stock) -> Frame:
    """The frame with prices understood where there is a list: `under 20?` asks of the dish that stands."""
    typed = frame.text.typed
    if not stock or not asks_price(typed):
        return frame
    used = {*key(" ".join(m[0] for m in _pattern().finditer(typed)))}
    if cheapest_asked(typed):
        used |= {stem for stem in key(typed) if asked_words()[0]["cheapest"].stand_in((stem,))}
    left_out = tuple(word for word in frame.text.left_out if not set(key(word)) <= used)
    frame = replace(frame, text=replace(frame.text, left_out=left_out))
    if frame.intent in HELD and not frame.dishes and talk is not None and talk.frame.dishes:
        return replace(frame, intent=WINES, dishes=talk.frame.dishes)
    return replace(frame, intent=WINES) if frame.intent == UNCLEAR and frame.dishes else frame
