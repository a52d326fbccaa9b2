"""The plates of foods by themselves, kept in the user's cache folder: composing a thousand takes a while."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from sys import intern
from typing import Any

from assistant.knowledge.cache import cached, content_key
from assistant.knowledge.store import Knowledge
from assistant.pairing.dish import single
from assistant.pairing.plate import Plate, plate_of

TABLE_KINDS = (
    "kind/cheese", "kind/meat", "kind/seafood", "kind/nut", "kind/olive-kind", "kind/pate-food", "kind/dish",
    "kind/sweet-food", "kind/egg-dish",
)  # fmt: skip
SOURCES = ("larder.py", "dish.py", "mixing.py", "plate.py")


def larder_foods(knowledge: Knowledge) -> list[str]:
    """All foods that can stand on a table by themselves."""
    return list(dict.fromkeys(food for kind in TABLE_KINDS for food in knowledge.members(kind)))


def larder_plates(knowledge: Knowledge) -> dict[str, Plate]:
    """Their plates as shipped, by food; from the cache where neither knowledge nor composing has changed."""
    foods = larder_foods(knowledge)
    if not knowledge.key:
        return {food: plate_of(single(food), knowledge) for food in foods}
    code = content_key(Path(__file__).parent / name for name in SOURCES)
    found = cached("larder", knowledge.key + code, lambda: _packed(foods, knowledge), knowledge.cache)
    return {food: _unpacked(*fields) for food, fields in found.items()}


def _packed(foods: Iterable[str], knowledge: Knowledge) -> dict[str, list[Any]]:
    return {food: _fields(plate_of(single(food), knowledge)) for food in foods}


def _fields(plate: Plate) -> list[Any]:
    """What a plate consists of, fit for JSON and in the order of `_unpacked`."""
    names = [sorted(plate.traits), plate.kinds, sorted(plate.homes), sorted(plate.countries)]
    return [plate.values, plate.points, *names, plate.course, plate.shares, plate.cooking]


def _unpacked(
    values: dict[str, float],
    points: dict[str, float],
    traits: list[str],
    kinds: list[str],
    homes: list[str],
    countries: list[str],
    course: str,
    shares: list[float],
    cooking: float,
) -> Plate:
    """A plate again. Equal names are one in memory."""
    sets = [frozenset(map(intern, names)) for names in (traits, homes, countries)]
    kinds_ = tuple(map(intern, kinds))
    return Plate(values, points, sets[0], kinds_, sets[1], sets[2], intern(course), tuple(shares), cooking)
