"""Plates or glasses as columns: one array of each number and of each link, made when a rule first looks."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence, Set
from dataclasses import dataclass
from functools import cached_property
from math import nan
from typing import Any

import numpy as np
from numpy.typing import NDArray

from assistant.pairing.glass import Glass
from assistant.pairing.plate import Plate

Numbers = NDArray[np.float64]
Truths = NDArray[np.bool_]
PLACES = 4


@dataclass(frozen=True, slots=True)
class Picked:
    """Where columns come from others: the row there of each of them."""

    whole: Columns
    rows: NDArray[np.intp]


class Columns:
    """Plates or glasses by key. `kept` holds what rules have worked out of these columns alone."""

    def __init__(
        self,
        keys: Iterable[str],
        points: Sequence[Mapping[str, float]],
        links: Sequence[Mapping[str, Set[str]]],
        source: Picked | None = None,
    ) -> None:
        self.keys = tuple(keys)
        self.source = source
        self._points, self._links = points, links
        self._numbers: dict[str, Numbers] = {}
        self._truths: dict[tuple[str, tuple[str, ...]], Truths] = {}
        self._among: dict[str, list[tuple[str, ...]]] = {}
        self.kept: dict[Any, Any] = {}

    def picked(self, keys: Sequence[str]) -> Columns:
        """Some of them, in the order of the keys: what is worked out of all serves them too.

        Raises KeyError for a key that is not there.
        """
        rows = [self.row(key) for key in keys]
        points, links = [self._points[row] for row in rows], [self._links[row] for row in rows]
        return Columns(keys, points, links, Picked(self, np.array(rows, dtype=np.intp)))

    def row(self, key: str) -> int:
        """Where one of them stands. Raises KeyError."""
        return self._row[key]

    @cached_property
    def _row(self) -> dict[str, int]:
        return {key: row for row, key in enumerate(self.keys)}

    def number(self, name: str) -> Numbers:
        """The points of all, to four places as facts are stored; NaN where one has none."""
        if name not in self._numbers:
            self._numbers[name] = self._number(name)
        return self._numbers[name]

    def _number(self, name: str) -> Numbers:
        if self.source:
            return self.source.whole.number(name)[self.source.rows]
        return np.array([points.get(name, np.nan) for points in self._points], dtype=np.float64).round(PLACES)

    def point(self, name: str, row: int) -> float:
        """The points of one of them, rounded likewise."""
        return round(float(self._points[row].get(name, nan)), PLACES)

    def has(self, name: str, targets: tuple[str, ...], row: int) -> bool:
        """Whether one of them has any of these as that link."""
        return not self._links[row][name].isdisjoint(targets)

    def truth(self, name: str, targets: tuple[str, ...]) -> Truths:
        """Whether each has any of these as that link."""
        if (name, targets) not in self._truths:
            self._truths[name, targets] = self._truth(name, targets)
        return self._truths[name, targets]

    def _truth(self, name: str, targets: tuple[str, ...]) -> Truths:
        if self.source:
            return self.source.whole.truth(name, targets)[self.source.rows]
        sought = set(targets)
        return np.array([not sought.isdisjoint(links[name]) for links in self._links], dtype=np.bool_)

    def among(self, name: str) -> list[tuple[str, ...]]:
        """What each has as that link, in order of name."""
        if name not in self._among:
            self._among[name] = [tuple(sorted(links[name])) for links in self._links]
        return self._among[name]


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
