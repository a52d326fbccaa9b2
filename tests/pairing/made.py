"""Plates, glasses and matches made to measure, so that a test can say what it is about and nothing else."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.knowledge.store import Knowledge
from assistant.pairing.dish import Dish, DishPart
from assistant.pairing.glass import Glass
from assistant.pairing.match import Match
from assistant.pairing.plate import Plate
from assistant.pairing.score import verdict
from tests.pairing.firings import Firing

PLATE_POINTS = (
    "fat", "sugar", "acid", "salt", "umami", "heat", "protein", "bitter", "smoke", "fishOil", "weight",
)  # fmt: skip
GLASS_POINTS = (
    "sweetness", "acid", "tannin", "alcohol", "bubbles", "oak", "texture", "bitter", "aroma", "iron",
    "maturity", "body",
)  # fmt: skip


def part(food: str, role: str, grams: float, *methods: str) -> DishPart:
    """A part by local names."""
    return DishPart(f"food/{food}", f"role/{role}", grams, tuple(f"method/{m}" for m in methods))


def dish(*parts: DishPart, **added: float) -> Dish:
    """A dish of these parts with amounts added on top."""
    return Dish(parts, added)


def plate(traits: Iterable[str] = (), **points: float) -> Plate:
    """A plate with nothing but these points, loud enough to count in full."""
    found = dict.fromkeys(PLATE_POINTS, 0.0) | {"aroma": 3.0} | points
    nothing: frozenset[str] = frozenset()
    return Plate({}, found, frozenset(traits), (), nothing, nothing, "course/savoury", (1.0,))


def glass(name: str = "made", colour: str = "white", kinds: Iterable[str] = (), **points: float) -> Glass:
    """A glass with nothing but these points; `sugar` and `percent` are its sugar points and strength."""
    sugar, percent = points.pop("sugar", 0.0), points.pop("percent", 12.0)
    found = dict.fromkeys(GLASS_POINTS, 0.0) | points
    nothing: frozenset[str] = frozenset()
    wine = f"wine/{name}"
    return Glass(wine, found, sugar, percent, f"colour/{colour}", nothing, (wine, *kinds), nothing, nothing)


def firing(rule: str, strength: float = 1.0, cap: float | None = None) -> Firing:
    """A rule that fired for the plate `plate` and the wine `wine/made`."""
    return Firing(rule, "plate", "wine/made", strength, cap)


def match(wine: str, score: float, knowledge: Knowledge) -> Match:
    """A match of this score."""
    return Match(wine, score, verdict(score, knowledge.bands))
