"""`The Cava is 8, the Rioja £14`: what a bottle of a wine on the table costs, as told in passing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.language.fold import key
from assistant.language.follow_lines import opens
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
    told = any(_price(frame, one) or _price_before(frame, one) for one in wines)
    prices = (
        _price(frame, one, told) or _price_before(frame, one, told) or _price_got(frame, wines)
        for one in wines
    )
    found = zip((reading.id for reading in wines), prices, strict=True)
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


def _price_before(frame: Frame, reading: Reading, told: bool = False) -> float | None:
    """The number in front of the name with a coin beside it (`eight pounds for the Moscato`).

    No coin is needed where the price of another wine is `told` in the same line.
    """
    stems, words, coins = frame.text.stems, follow_words(), small_words()["money"]
    for start, end, number in numbers(stems[: reading.start]):
        between = set(stems[end : reading.start])
        coined = coins & {*between, *stems[max(0, start - 1) : start]}
        if (coined or (told and between)) and words.price_before.issuperset(between - coins):
            return number
    return None


def _price_got(frame: Frame, wines: Sequence[Reading]) -> float | None:
    """The one sum told with the one bottle that is got (`get a Moscato for Carol, £8`)."""
    stems, coins = frame.text.stems, small_words()["money"]
    sums = [n for start, end, n in numbers(stems) if coins & {*stems[max(0, start - 1) : end + 1]}]
    return sums[0] if len(sums) == len(wines) == 1 and opens(frame, "fetches") else None
