"""The flight on two lines, from light to full and from dry to sweet: names on poles that never cross."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from assistant.answers.wording import listed
from assistant.handout.contents import WineRow
from assistant.handout.measure import POINT, width
from assistant.handout.words import say

POINTS = 5.0  # the scale of body and sweetness
AXIS = 0.68  # of the width; the rest is for the names at its end
POLE = 1.2  # mm between a pole and its name
EDGE = 1.0
SHORT = "…"


@dataclass(frozen=True, slots=True)
class Flag:
    """A name at its place on a line; `x` and `y` in mm, `y` the height of the name above the line."""

    x: float
    y: float
    number: int
    name: str


@dataclass(frozen=True, slots=True)
class Line:
    """A line from `start` to `end` (mm) and its ends in words; `top`: the height of all its flags in mm."""

    low: str
    high: str
    start: float
    end: float
    top: float
    flags: tuple[Flag, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """Both lines, `width` and `type` (size of letters) in mm; `told` says the same in words."""

    width: float
    type: float
    lines: tuple[Line, ...]
    told: tuple[str, ...]

    @property
    def height(self) -> float:
        """Both lines with their flags and the words below, in mm."""
        return sum(line.top + self.below for line in self.lines)

    @property
    def below(self) -> float:
        """What a line needs below it."""
        return 1.1 * self.type


@lru_cache(maxsize=64)
def figure(wines: tuple[WineRow, ...], room: float, points: float, named: bool) -> Figure | None:
    """The figure in `room` mm; None where a wine has no place on the lines."""
    body = [(wine, wine.body) for wine in wines if wine.body is not None]
    sweetness = [(wine, wine.sweetness) for wine in wines if wine.sweetness is not None]
    if not wines or len(body) < len(wines) or len(sweetness) < len(wines):
        return None
    words, size = say(), points * POINT
    rows = ((body, "light", "full"), (sweetness, "dry", "sweet"))
    found = [_line(places, (low, high), room, points, named) for places, low, high in rows]
    told = [
        words("figure", name, wines=listed([wine.label for wine, _ in sorted(places, key=lambda p: p[1])]))
        for name, places in (("body", body), ("sweetness", sweetness))
    ]
    return Figure(room, size, tuple(found), tuple(told))


def _line(
    places: Sequence[tuple[WineRow, float]], ends: tuple[str, str], room: float, points: float, named: bool
) -> Line:
    """Names from right to left, each as low as it can hang without touching a name or a pole."""
    low, high = (say()("figure", end) for end in ends)
    size = points * POINT
    start, last = width(say()("figure", "light"), points) + POLE, room * AXIS
    free: list[float] = []  # by height: where the next name or pole to the right stands
    flags = []
    for wine, value in sorted(places, key=lambda place: (-place[1], -place[0].number)):
        x = start + EDGE + (last - start - 2 * EDGE) * min(value, POINTS) / POINTS
        name = _clipped(wine.label, room - x - 4 * size, points) if named else ""
        end = x + POLE + width(f"{wine.number} {name}".strip(), points, bold=True) + size / 2
        level = next((i for i, right in enumerate(free) if end <= right), len(free))
        free = [*(min(x, right) for right in free[: level + 1]), *free[level + 1 :]]
        free += [x] if level == len(free) else []
        flags.append(Flag(round(x, 2), round((level + 0.6) * size * 1.25, 2), wine.number, name))
    top = (len(free) + 0.6) * size * 1.25
    return Line(low, high, round(start, 2), round(last, 2), round(top, 2), tuple(flags))


def _clipped(text: str, room: float, points: float) -> str:
    """As much of a name as has room."""
    lengths = range(1, len(text) + 1)
    wide = bisect_right(lengths, room, key=lambda n: width(text[:n] + SHORT, points, bold=True))
    return text if wide == len(text) else text[:wide].rstrip() + SHORT
