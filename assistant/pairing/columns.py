"""Plates or glasses as columns: one array of each number and of each link, made when a rule first looks."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence, Set
from math import nan
from typing import Any

import numpy as np
from numpy.typing import NDArray

from assistant.pairing.glass import Glass
from assistant.pairing.plate import Plate

Numbers = NDArray[np.float64]
Truths = NDArray[np.bool_]
PLACES = 4


class Columns:
    """Plates or glasses by key. `kept` holds what rules have worked out of these columns alone."""

    def __init__(
        self,
        keys: Iterable[str],
        points: Sequence[Mapping[str, float]],
        links: Sequence[Mapping[str, Set[str]]],
    ) -> None:
        self.keys = tuple(keys)
        self._points, self._links = points, links
        self._numbers: dict[str, Numbers] = {}
        self._truths: dict[tuple[str, tuple[str, ...]], Truths] = {}
        self.kept: dict[Any, Any] = {}

    def number(self, name: str) -> Numbers:
        """The points of all, to four places as facts are stored; NaN where one has none."""
        if name not in self._numbers:
            column = np.array([points.get(name, np.nan) for points in self._points], dtype=np.float64)
            self._numbers[name] = column.round(PLACES)
        return self._numbers[name]

    def point(self, name: str, row: int) -> float:
        """The points of one of them, rounded likewise."""
        return round(float(self._points[row].get(name, nan)), PLACES)

    def has(self, name: str, targets: tuple[str, ...], row: int) -> bool:
        """Whether one of them has any of these as that link."""
        return not self._links[row][name].isdisjoint(targets)

    def truth(self, name: str, targets: tuple[str, ...]) -> Truths:
        """Whether each has any of these as that link."""
        if (name, targets) not in self._truths:
            sought = set(targets)
            column = [not sought.isdisjoint(links[name]) for links in self._links]
            self._truths[name, targets] = np.array(column, dtype=np.bool_)
        return self._truths[name, targets]

    def among(self, name: str) -> list[Set[str]]:
        """What each has as that link."""
        return [links[name] for links in self._links]


def plate_columns(plates: Mapping[str, Plate]) -> Columns:
    """The columns of plates, by key."""
    links = [
        {
            "trait": plate.traits,
            "kind": frozenset(plate.kinds),
            "home": plate.homes - plate.countries,
            "country": plate.countries,
            "course": frozenset((plate.course,)),
        }
        for plate in plates.values()
    ]
    return Columns(plates, [plate.points for plate in plates.values()], links)


def glass_columns(glasses: Iterable[Glass]) -> Columns:
    """The columns of glasses, by wine."""
    poured = list(glasses)
    links = [
        {
            "smells": glass.smells,
            "kind": frozenset(glass.kinds),
            "home": glass.homes - glass.countries,
            "country": glass.countries,
            "colour": frozenset((glass.colour,)),
        }
        for glass in poured
    ]
    own = [{"sugar": g.sugar_points, "alcoholPercent": g.alcohol_percent} for g in poured]
    points = [{**glass.points, **more} for glass, more in zip(poured, own, strict=True)]
    return Columns([glass.wine for glass in poured], points, links)
