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

SOURCES = ("larder.py", "dish.py", "mixing.py", "plate.py")


def larder_plates(knowledge: Knowledge) -> dict[str, Plate]:
    """The plates of all foods and kinds; from the cache where knowledge and composing are the same."""
    foods = knowledge.of_type("Food", "Kind")
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
