"""What a rule asks of the plate: a rule whose plate lacks it cannot fire and is not run.

A rule is a conjunction, so one part of its outermost pattern that does not hold rules out the whole.
"""

from __future__ import annotations

import operator
import re
from collections.abc import Callable, Mapping, Set
from dataclasses import dataclass

from assistant.pairing.plate import Plate

_LINK = re.compile(r"plate:(?:trait|kind|course)\s+(?P<name>\w+:[\w-]+)\s*[.;]")
_ANY_TRAIT = re.compile(
    r"FILTER EXISTS \{ \?plate plate:trait \?anyTrait \. FILTER\(\?anyTrait IN \((?P<names>[^)]*)\)\) \}"
)
_VALUE = re.compile(r"plate:(?P<name>\w+)\s+\?(?P<variable>\w+)\s*[.;]")
_BOUND = re.compile(
    r"^[^\S\n]*+FILTER\(\?(?P<variable>\w+) (?P<sign>[<>]=?) (?P<number>[\d.]+)\)[^\S\n]*$", re.M
)
_SIGNS: Mapping[str, Callable[[float, float], bool]] = {
    "<": operator.lt,
    "<=": operator.le,
    ">": operator.gt,
    ">=": operator.ge,
}


@dataclass(frozen=True, slots=True)
class Bound:
    """A plate property held against a number, in points 0-5."""

    name: str
    sign: str
    number: float

    def holds(self, points: Mapping[str, float]) -> bool:
        """Whether the points keep to it; a property the plate lacks is left for the rule to find out."""
        return self.name not in points or _SIGNS[self.sign](points[self.name], self.number)


@dataclass(frozen=True, slots=True)
class Demands:
    """All of `links` and one of `any_of` (traits, kinds and courses by short name), and every bound."""

    links: frozenset[str]
    any_of: frozenset[str]
    bounds: tuple[Bound, ...]

    def met_by(self, offer: Offer) -> bool:
        """Whether a plate that offers this could make the rule fire."""
        linked = self.links <= offer.links and (not self.any_of or not self.any_of.isdisjoint(offer.links))
        return linked and all(bound.holds(offer.points) for bound in self.bounds)


@dataclass(frozen=True, slots=True)
class Offer:
    """What a plate has: its traits, kinds and course, and its points to the places that are stored."""

    links: Set[str]
    points: Mapping[str, float]


def offer_of(plate: Plate) -> Offer:
    """What a plate has to meet demands with."""
    points = {name: float(f"{value:.4f}") for name, value in plate.points.items()}
    return Offer(plate.traits | set(plate.kinds) | {plate.course}, points)


def demands_of(where: str) -> Demands:
    """What the outermost pattern of a rule's WHERE asks of the plate."""
    outer = _outermost(where)
    links = frozenset(m["name"].replace(":", "/", 1) for m in _LINK.finditer(outer))
    return Demands(links, _any_of(where), _bounds(outer))


def _bounds(outer: str) -> tuple[Bound, ...]:
    values = {m["variable"]: m["name"] for m in _VALUE.finditer(outer)}
    found = (m for m in _BOUND.finditer(outer) if m["variable"] in values)
    return tuple(Bound(values[m["variable"]], m["sign"], float(m["number"])) for m in found)


def _any_of(where: str) -> frozenset[str]:
    """Traits of which the plate must have at least one."""
    found = _ANY_TRAIT.search(where)
    outermost = found and where[: found.start()].count("{") - where[: found.start()].count("}") == 1
    listed = found["names"].split(",") if found and outermost else []
    return frozenset(name.strip().replace(":", "/", 1) for name in listed)


def _outermost(where: str) -> str:
    """The text within the outermost braces and no others."""
    outer, depth = [], 0
    for character in where:
        depth += (character == "{") - (character == "}")
        if depth == 1:
            outer.append(character)
    return "".join(outer)
