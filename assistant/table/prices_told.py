"""`The Cava is 8, the Rioja £14`: what a bottle of a wine on the table costs, as told in passing."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.language.fold import key
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Reading
from assistant.language.quantities import numbers
from assistant.language.small_words import small_words
from assistant.language.sorting import EDIBLE

if TYPE_CHECKING:
    from assistant.table.tonight import Tonight

LEAST, MOST = 2, 1000  # of a bottle where no coin is named; what is more may be a year
REACH = 5


def priced(tonight: Tonight, frame: Frame) -> Tonight:
    """The table with the prices of its wines that a frame tells of, each of a bottle."""
    prices = {**dict(tonight.prices), **prices_told(frame, tonight)}
    return replace(tonight, prices=tuple((wine, prices[wine]) for wine in tonight.wines if wine in prices))


def prices_told(frame: Frame, tonight: Tonight) -> dict[str, float]:
    """The price right behind each wine of the table; none where something is asked."""
    if "?" in frame.text.typed or frame.topics:
        return {}
    wines = [reading for reading in frame.text.readings if reading.id in tonight.wines]
    told = any(_price(frame, reading) is not None for reading in wines)
    found = ((reading.id, _price(frame, reading, told)) for reading in wines)
    return {wine: price for wine, price in found if price is not None}


def only_prices(frame: Frame, tonight: Tonight) -> bool:
    """Whether nothing is told but prices: of every wine that is named, and no food is."""
    told = prices_told(frame, tonight)
    named = {r.id for r in frame.text.readings if r.type in ("Wine", "Drink")}
    eaten = any(reading.kind in EDIBLE for reading in frame.text.readings)
    return bool(told) and named <= told.keys() and not eaten


def without_prices(frame: Frame, tonight: Tonight) -> Frame:
    """The frame without coins and the prices told among the words that are not known."""
    prices, coins = set(prices_told(frame, tonight).values()), small_words()["money"]
    said = ((word, key(word)) for word in frame.text.left_out)
    kept = (word for word, stems in said if not coins.issuperset({word} if word in coins else stems))
    left = tuple(word for word in kept if not {value for _, _, value in numbers(key(word))} & prices)
    return replace(frame, text=replace(frame.text, left_out=left))


def _price(frame: Frame, reading: Reading, told: bool = False) -> float | None:
    """The number behind the name, with a word or a coin beside it that makes it one of money.

    None is needed where the price of another wine is `told` in the same line.
    """
    stems, words, coins = frame.text.stems, follow_words(), small_words()["money"]
    run_on = reading.text.replace("’", "'").endswith("'s")  # `cava's 11`
    for start, end, number in numbers(stems):
        between = stems[reading.end : start]
        coined = bool(coins.intersection((*between, *stems[end : end + 1])))
        if start < reading.end or len(between) > REACH or not (coined or LEAST <= number < MOST):
            continue
        money = told or coined or number % 1 > 0 or (run_on and not between)
        linked = words.price_between.issuperset(set(between) - coins) and bool(between or money)
        sure = money or not words.price_not_between.intersection(between)
        if linked and sure and not words.price_not.intersection(stems[end : end + 1]):
            return number
    return None
