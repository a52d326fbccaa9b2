"""What is known of one food, wine, method, rule ...: typed views on the digest."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

Entry = dict[str, list[Any]]


@dataclass(frozen=True, slots=True)
class Amount:
    """A physical value with its range; the unit is the property's (see ontology/scales.ttl)."""

    low: float
    typical: float
    high: float
    basis: str
    source: str
    row: str | None = None


@dataclass(frozen=True, slots=True)
class Concept:
    """Anything with a name: `id` is its short name, `kinds` all broader concepts, nearest first."""

    id: str
    label: str
    alternatives: tuple[str, ...]
    hidden: tuple[str, ...]
    kinds: tuple[str, ...]
    definition: str | None


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a composed dish: `share` in percent of the dish by weight."""

    food: str
    role: str
    share: float
    method: str | None = None


@dataclass(frozen=True, slots=True)
class Food(Concept):
    """A food as eaten: amounts per 100 g by property, traits and homes with those of its kinds."""

    amounts: Mapping[str, Amount]
    traits: frozenset[str]
    homes: frozenset[str]
    role: str | None
    share: float | None
    course: str | None
    lean: float | None
    weight_shift: float
    shift_after: bool
    parts: tuple[Part, ...]
    served_as: str | None
    usual_method: str | None
    allergens: frozenset[str]
    may_contain: frozenset[str]
    care: frozenset[str]
    customs: frozenset[str]


@dataclass(frozen=True, slots=True)
class Wine(Concept):
    """A wine style or a drink without alcohol (`type` Wine or Drink)."""

    type: str
    amounts: Mapping[str, Amount]
    colour: str
    smells: frozenset[str]
    homes: frozenset[str]
    grapes: tuple[str, ...]
    serve: Amount | None
    air: Amount | None
    glass: str | None
    availability: float
    reads_sharper: float
    reads_drier: float
    classics: frozenset[str]


@dataclass(frozen=True, slots=True)
class Method(Concept):
    """A cooking method as what it adds to the base: steps, g or mg per 100 g, and factors.

    `served_as`: the dish that is meant where it is named as one (`the roast`).
    """

    adds: Mapping[str, float]
    glutamate_factor: float
    concentrate: float
    weight: float
    traits: frozenset[str]
    served_as: str | None = None


@dataclass(frozen=True, slots=True)
class Rule:
    """One pairing rule: its query and the words that stand for it."""

    id: str
    label: str
    family: str
    weight: float
    because: str
    say: str
    detail: str
    fix: str | None
    source: str
    source_kind: str
    confidence: str
    order: float
    construct: str


def first(entry: Entry, name: str, default: Any = None) -> Any:
    """The first value of a property, or the default."""
    values = entry.get(name)
    return values[0] if values else default
