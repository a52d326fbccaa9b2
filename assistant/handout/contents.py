"""What stands on the guests' sheet, as values between the record of a plan and its print."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Meeting:
    """A food with a wine: `here` where it is on the table."""

    food: str
    why: str
    here: bool = True


@dataclass(frozen=True, slots=True)
class WineRow:
    """A wine (or drink) of the flight; `celsius` and `keeps` (days) from low to high.

    `body` and `sweetness` in points from 0 to 5; None where the plan has none.
    """

    number: int
    label: str
    name: str | None
    style: str | None
    celsius: tuple[float, float] | None
    keeps: tuple[float, float] | None
    loves: Meeting | None
    fights: Meeting | None
    contains: str
    body: float | None = None
    sweetness: float | None = None


@dataclass(frozen=True, slots=True)
class FoodRow:
    """A food with a verdict for each wine of the flight; `best`: the wines with the best, if fair or better.

    `contains` and `check`: allergens that are in it, and those for which the label must be read.

    `rests`: plain bread and the like, eaten between the others.
    """

    label: str
    verdicts: tuple[str, ...]
    best: tuple[int, ...]
    contains: str
    check: str
    keeps: tuple[float, float] | None
    rests: bool


@dataclass(frozen=True, slots=True)
class GuestSheet:
    """The one page a guest gets; `more_wines` and `more_foods`: how many found no room.

    `hosts`: what the host and the book say of a pair, where both speak;
    `sober`: the drinks without alcohol; `flight_sober`: whether the flight itself is made of them.
    """

    title: str
    when: str
    wines: tuple[WineRow, ...]
    foods: tuple[FoodRow, ...]
    sober: tuple[str, ...]
    flight_sober: bool
    version: str
    more_wines: int = 0
    more_foods: int = 0
    hosts: tuple[str, ...] = ()

    def named(self, numbers: tuple[int, ...]) -> list[str]:
        """The labels of these wines."""
        return [wine.label for wine in self.wines if wine.number in numbers]
