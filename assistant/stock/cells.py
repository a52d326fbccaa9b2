"""Single cells: prices, strengths, numbers of bottles, vintages, as people write them.

Each reader gives None where nothing stands in the cell, and raises ValueError where it is none of its sort.
"""

from __future__ import annotations

import re
from datetime import date
from functools import lru_cache

from assistant.evening.facts import fact
from assistant.stock.words import stock_words

_FIGURE = re.compile(r"[+-]?\d[\d.,'’\u00a0\u202f ]*")
_WORD = re.compile(r"[^\W\d_]+\$?|[^\w\s.,;:/%°()*+–—-]", re.UNICODE)
_SPACES = str.maketrans("", "", "'’\u00a0\u202f ")
_GROUPED = re.compile(r"[+-]?\d{1,3}(?:['’\u00a0\u202f ]\d{3})*(?:[.,]\d*)*|[\d.,+-]+")
_THOUSANDS = re.compile(r"[+-]?\d{1,3}([.,])\d{3}(?:\1\d{3})*")
EARLIEST = 1850
CENTURY = 100


def is_empty(text: str) -> bool:
    """Whether nothing is said in a cell."""
    return text.strip().casefold() in stock_words().sets["empty"]


def number(text: str, thousands: bool = True) -> tuple[float, str]:
    """The one number in a text and what stands around it: `1.234,50 €` -> 1234.5 and `€`.

    A single separator before three last digits parts thousands, where there may be any.
    """
    found = _FIGURE.findall(text)
    if len(found) != 1 or not _GROUPED.fullmatch(found[0].strip("'’\u00a0\u202f ")):
        raise ValueError
    figure, rest = found[0].translate(_SPACES).rstrip(".,"), _FIGURE.sub(" ", text)
    if thousands and _THOUSANDS.fullmatch(figure):
        return float(figure.replace(".", "").replace(",", "")), rest
    if "." in figure and "," in figure:  # the last one is the decimal sign
        first = "," if figure.rfind(".") > figure.rfind(",") else "."
        figure = figure.replace(first, "")
    return float(figure.replace(",", ".")), rest


@lru_cache(maxsize=65536)
def price_of(text: str) -> tuple[float | None, str]:
    """A price and the sign of its currency, empty where none is said."""
    if is_empty(text):
        return None, ""
    value, rest = number(text)
    low, high = _span("price")
    if not low <= value <= high:
        raise ValueError
    sign = ""
    for word in _WORD.findall(rest.casefold()):
        if word in stock_words().currency:
            sign = stock_words().currency[word]
        elif word not in stock_words().sets["prices"]:
            raise ValueError
    return value, sign


@lru_cache(maxsize=8192)
def alcohol_of(text: str) -> float | None:
    """A strength in percent by volume: `13,5 % vol`."""
    if is_empty(text):
        return None
    value, rest = number(text, thousands=False)
    low, high = _span("alcohol_percent")
    words = re.findall(r"[^\W\d_]+", rest.casefold())
    if not low <= value <= high or not stock_words().sets["strengths"].issuperset(words):
        raise ValueError
    return value


@lru_cache(maxsize=8192)
def left_of(text: str) -> int | None:
    """A number of bottles; None where bottles are left and nobody counted."""
    said, sets = " ".join(text.casefold().split()), stock_words().sets
    if is_empty(text) or said in sets["some_left"]:
        return None
    if said in sets["none_left"]:
        return 0
    value, rest = number(text)
    words = " ".join(re.findall(r"[^\W\d_]+", rest.casefold()))
    if value < 0 or value != round(value) or value > 10**6 or (words and words not in sets["counts"]):
        raise ValueError
    return round(value)


@lru_cache(maxsize=8192)
def vintage_of(text: str) -> int | None:
    """A year; None where it is empty or says that there is none."""
    said = " ".join(re.sub(r"[.\-/]", " ", text.casefold()).split())
    if is_empty(text) or said in stock_words().sets["no_vintage"]:
        return None
    found = re.fullmatch(r"['’]?(\d{4}|\d{2})(?:\.0+)?", text.strip())
    if not found:
        raise ValueError
    year, now = int(found[1]), date.today().year
    if year < CENTURY:
        year += now // CENTURY * CENTURY - (CENTURY if year > now % CENTURY + 1 else 0)
    if not EARLIEST <= year <= now + 1:
        raise ValueError
    return year


@lru_cache(maxsize=8)
def _span(name: str) -> tuple[float, float]:
    """The limits of limits.toml, which hold for evening files too."""
    limits = fact("limits", "number", name)
    return limits.low, limits.high
