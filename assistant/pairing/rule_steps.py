"""The steps that a pairing rule is read into: what it looks up, works out and holds to."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NamedTuple

PLATE, GLASS = "plate", "glass"
Expr = Any
"""A number, the name of a variable, a Link, a Shared, or a tuple of an operator and what it works on."""


class RuleTextError(ValueError):
    """A rule is written in a way that rules are not run in; the message says which."""


class Link(NamedTuple):
    """Whether one side (`plate`, `glass`) has one of these short names as this property."""

    side: str
    name: str
    targets: tuple[str, ...]


class Shared(NamedTuple):
    """Whether plate and glass have the same thing as these properties."""

    plate: str
    glass: str


class Value(NamedTuple):
    """A variable that stands for a number of one side; where that is missing the rule does not hold."""

    variable: str
    side: str
    name: str


class Let(NamedTuple):
    """A variable that is worked out."""

    variable: str
    expr: Expr


class Keep(NamedTuple):
    """What must hold."""

    expr: Expr


Step = Value | Let | Keep


@dataclass(frozen=True, slots=True)
class RuleText:
    """The steps of a rule in order, and the properties (side, name) that it tells it saw."""

    steps: tuple[Step, ...]
    seen: tuple[tuple[str, str], ...]
