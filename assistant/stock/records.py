"""A bottle of a list, and the list: frozen, and no more of each row than answers need."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from assistant.knowledge.problems import Problem
from assistant.language.fold import key


@dataclass(frozen=True, slots=True)
class Bottle:
    """A bottle: `wine` the style its row reads as, price in the money of the list, `left` in bottles,
    alcohol in percent by volume; None where the list does not say. `line` is where its row begins."""

    label: str
    wine: str
    price: float | None = None
    left: int | None = None
    vintage: int | None = None
    alcohol: float | None = None
    line: int = 0

    @property
    def name(self) -> str:
        """The label with the vintage, where that does not stand in it."""
        shown = self.vintage is not None and str(self.vintage) not in self.label
        return f"{self.label} {self.vintage}" if shown else self.label


@dataclass(frozen=True)
class Stock:
    """A list: bottles by style, those that are left and cheap first; `told` says what is wrong, in order.

    `more` counts by kind what is wrong besides; `left_out` rows gave no bottle; `unused` are columns.
    """

    source: str = ""
    of: Mapping[str, tuple[Bottle, ...]] = field(default_factory=dict)
    currency: str = ""
    told: tuple[Problem, ...] = ()
    more: Mapping[str, int] = field(default_factory=dict)
    left_out: int = 0
    unused: tuple[str, ...] = ()

    def __bool__(self) -> bool:
        return bool(self.of)

    @cached_property
    def count(self) -> int:
        """How many rows became bottles."""
        return sum(map(len, self.of.values()))

    @cached_property
    def _by_name(self) -> Mapping[int, Bottle]:
        """Bottles by a number made of the words of their names, with and without vintage, the first of each.

        Numbers, because the words of a hundred thousand names would take as much room as the list.
        """
        found: dict[int, Bottle] = {}
        every = sorted((b for bottles in self.of.values() for b in bottles), key=lambda b: b.line)
        for bottle in every:
            found.setdefault(hash(key(bottle.name)), bottle)
            found.setdefault(hash(key(bottle.label)), bottle)
        return found

    def named(self, text: str) -> Bottle | None:
        """The bottle with exactly this name."""
        words = key(text)
        found = self._by_name.get(hash(words)) if self and words else None
        return found if found and words in (key(found.name), key(found.label)) else None

    def fitting(self, wine: str, low: float | None = None, high: float | None = None) -> tuple[Bottle, ...]:
        """Bottles of a style that are left and, where a price is asked, cost no less and no more."""
        return tuple(b for b in self.of.get(wine, ()) if b.left != 0 and _within(b.price, low, high))

    def has(self, wine: str, low: float | None = None, high: float | None = None) -> bool:
        """Whether a bottle of a style is left that costs no less and no more."""
        return any(b.left != 0 and _within(b.price, low, high) for b in self.of.get(wine, ()))

    def money(self, price: float) -> str:
        """A price in the money of the list: `$14`, `$14.50`."""
        figure = f"{price:.0f}" if price == round(price) else f"{price:.2f}"
        return f"{self.currency}{figure}"


def _within(price: float | None, low: float | None, high: float | None) -> bool:
    if low is None and high is None:
        return True
    return price is not None and (low is None or price >= low) and (high is None or price <= high)


def grouped(bottles: Iterable[Bottle]) -> dict[str, tuple[Bottle, ...]]:
    """Bottles by style: what is left first, then by price, then as listed."""
    found: dict[str, list[Bottle]] = {}
    for bottle in bottles:
        found.setdefault(bottle.wine, []).append(bottle)
    return {wine: tuple(sorted(all_of, key=_place)) for wine, all_of in sorted(found.items())}


def _place(bottle: Bottle) -> tuple[bool, float, int]:
    return (bottle.left == 0, float("inf") if bottle.price is None else bottle.price, bottle.line)
