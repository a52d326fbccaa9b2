"""An evening as the host's file gives it; what could not be read is left out and told as a problem."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, time, tzinfo

from assistant.knowledge.problems import Problem
from assistant.pairing.dish import Dish


@dataclass(frozen=True, slots=True)
class WineLine:
    """A wine of the file: `wine` is the style its label reads as; price of one bottle, `owned` in bottles."""

    label: str
    wine: str
    name: str | None = None
    price: float | None = None
    owned: int = 0
    must: bool = False
    bottle_ml: float | None = None
    alcohol_percent: float | None = None


@dataclass(frozen=True, slots=True)
class FoodLine:
    """A food of the file: the price is that of the grams named or, where none are, of all that is bought.

    `brought`: a guest brings it, so that none of it is bought. `served`: when it is to be on the table.
    """

    label: str
    dishes: tuple[Dish, ...]
    grams: float | None = None
    price: float | None = None
    brought: bool = False
    served: time | None = None

    @property
    def food(self) -> str:
        """The food that names it."""
        return self.dishes[0].main.food


@dataclass(frozen=True, slots=True)
class GuestNeeds:
    """What a guest asks to be spared, in the words of the file."""

    guest: str
    needs: tuple[str, ...]
    line: int | None = None


@dataclass(frozen=True, slots=True)
class Measured:
    """A bottle the host measured: minutes from `start` to `end` in °C, in a place of cooling.toml."""

    place: str
    start: float
    end: float
    minutes: float


@dataclass(frozen=True, slots=True)
class Evening:
    """The evening; `start` is local time, `zone` its offset where the file names one.

    `source` is the name of the file, `lines` where its keys stand.
    """

    title: str
    start: datetime | None
    zone: tzinfo | None
    guests: int
    non_drinkers: int
    meal: str
    pour_ml: float
    budget: float | None
    currency: str | None
    choose: int | None
    room_celsius: float
    wines: tuple[WineLine, ...] = ()
    foods: tuple[FoodLine, ...] = ()
    needs: tuple[GuestNeeds, ...] = ()
    measured: tuple[Measured, ...] = ()
    problems: tuple[Problem, ...] = ()
    source: str = ""
    lines: Mapping[str, int] = field(default_factory=dict)

    def problem(self, key: str, message: str, remedy: str) -> Problem:
        """A problem with a key of the file, found later than while reading it."""
        return Problem(self.source or key, message, remedy, self.lines.get(key), key)

    @property
    def drinkers(self) -> int:
        """Guests who drink wine."""
        return max(0, self.guests - self.non_drinkers)

    def money(self, amount: float | None) -> str:
        """A sum in the currency of the evening."""
        return f"{amount or 0.0:.2f} {self.currency or ''}".rstrip()

    def with_more(self, guests: int) -> Evening:
        """The same evening with so many more guests, all of them drinking."""
        return replace(self, guests=self.guests + guests)

    def pouring(self, labels: tuple[str, ...]) -> Evening:
        """The same evening with these wines only, in this order."""
        lines = {line.label: line for line in self.wines}
        return replace(self, wines=tuple(lines[label] for label in labels if label in lines))
