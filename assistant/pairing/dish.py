"""What the guest eats: parts with roles and shares, and plates made of several bites."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

BASE = "role/base"
SIDE = "role/side"
COATING = ("role/sauce", "role/dressing")
HUNDRED_GRAMS = 100.0


@dataclass(frozen=True, slots=True)
class DishPart:
    """One part: `mass` in grams for 100 g of base, `methods` applied to it before mixing."""

    food: str
    role: str
    mass: float
    methods: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Dish:
    """One bite as eaten; `added` are amounts per 100 g put on top, in the unit of the property.

    `called`: what it was called where its parts do not tell (`asparagus risotto`).
    """

    parts: tuple[DishPart, ...]
    added: Mapping[str, float] = field(default_factory=dict)
    called: str = ""

    def without(self, food: str) -> Dish:
        """The same dish with every part of this food taken off."""
        return replace(self, parts=tuple(p for p in self.parts if p.food != food), called="")

    @property
    def main(self) -> DishPart:
        """The part that names the dish: the first base, else the first part."""
        return next((p for p in self.parts if p.role == BASE), self.parts[0])


@dataclass(frozen=True, slots=True)
class Bite:
    """A dish and the share of all bites it makes up (shares of a table sum to 1)."""

    dish: Dish
    share: float


Table = tuple[Bite, ...]


def single(food: str) -> Dish:
    """A food eaten by itself."""
    return Dish((DishPart(food, BASE, HUNDRED_GRAMS),))


def table_of(dishes: list[Dish], weights: list[float] | None = None) -> Table:
    """Several dishes eaten side by side, by weight of bites (equal by default)."""
    weights = weights or [1.0] * len(dishes)
    total = sum(weights)
    return tuple(Bite(dish, weight / total) for dish, weight in zip(dishes, weights, strict=True))


def with_amounts(dish: Dish, amounts: Mapping[str, Mapping[str, float]]) -> Dish:
    """The dish with amounts per 100 g of its foods added, each by the share of its part."""
    if not any(part.food in amounts for part in dish.parts):
        return dish
    total = sum(part.mass for part in dish.parts)
    added = dict(dish.added)
    for part in dish.parts:
        for name, amount in amounts.get(part.food, {}).items():
            added[name] = added.get(name, 0.0) + amount * part.mass / total
    return replace(dish, added=added)
