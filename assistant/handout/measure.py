"""How wide and how high text comes out in print, in mm, from the widths of its letters."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from functools import lru_cache
from math import ceil

from assistant.handout.words import data

POINT = 25.4 / 72  # mm


def width(text: str, points: float, bold: bool = False) -> float:
    """A line of text in mm, rather too wide than too narrow."""
    letters = data("letters")
    return float(_ems(text) * points * POINT * letters["room"] * (letters["bold"] if bold else 1.0))


@lru_cache(maxsize=8192)
def _ems(text: str) -> float:
    """The same words are measured at every size a sheet is tried in."""
    return sum(_letter(letter) for letter in unicodedata.normalize("NFKD", text))


@lru_cache(maxsize=16384)
def lines(text: str, room: float, points: float, bold: bool = False) -> int:
    """How many lines a text takes in a column of `room` mm; words wider than the column are broken."""
    count, used, space = 1, 0.0, width(" ", points, bold)
    for word in filter(None, text.split(" ")):
        long = width(word, points, bold)
        if used and used + space + long <= room:
            used += space + long
            continue
        count += 1 if used else 0
        count += broken(long, room, points) - 1
        used = min(long, room)
    return count


def broken(long: float, room: float, points: float) -> int:
    """Lines of one word; a letter that does not fit leaves its room empty."""
    return 1 if long <= room else ceil(long / max(room - points * POINT, points * POINT))


def height(count: float, points: float, leading: float) -> float:
    """So many lines of text, in mm; `leading` from line to line in parts of the type size."""
    return float(count * points * POINT * leading)


@lru_cache(maxsize=4096)
def _letter(letter: str) -> float:
    if unicodedata.combining(letter):
        return 0.0
    if unicodedata.east_asian_width(letter) in "WF":
        return float(data("letters")["wide"])
    return _widths().get(letter, float(data("letters")["other"]))


@lru_cache(maxsize=1)
def _widths() -> Mapping[str, float]:
    return {letter: row["width"] for row in data("letters")["rows"] for letter in row["of"]}
