"""Works the steps of a rule out for many plates and glasses at once.

What speaks of one side alone is worked out first, and kept with that side; then both together, plates
running down and glasses across.
"""

from __future__ import annotations

import operator
from collections.abc import Callable, Iterable, Mapping, Sequence, Set
from dataclasses import dataclass
from functools import reduce
from math import isnan
from typing import Any

import numpy as np
from numpy.typing import NDArray

from assistant.pairing.columns import Columns
from assistant.pairing.rule_steps import GLASS, PLATE, Expr, Keep, Link, Shared, Step, Value

Array = NDArray[Any]
Variables = dict[str, Any]
ONLY = np.array([0])
LEAST = 1e-12
"""What decimals hold for equal and binary fractions may not: 2.3 less 0.5 is 1.8."""
TO_PLACES = 9
_WORKS: Mapping[str, Callable[..., Any]] = {
    "+": operator.add,
    "-": operator.sub,
    "*": operator.mul,
    ">": lambda a, b: a - b > LEAST,
    "<": lambda a, b: b - a > LEAST,
    ">=": lambda a, b: a - b > -LEAST,
    "<=": lambda a, b: b - a > -LEAST,
    "if": lambda held, a, b: (a if held else b) if isinstance(held, bool) else np.where(held, a, b),
    "and": lambda *all_: reduce(operator.and_, all_),
    "or": lambda *any_: reduce(operator.or_, any_),
    "not": lambda held: not held if isinstance(held, bool) else ~held,
    "round": lambda a: np.floor(np.round(a, TO_PLACES) + 0.5),
    "bound": lambda a: True,
}
"""Of arrays, or of the plain numbers of a single plate or glass, which are twenty times as quick."""


@dataclass(frozen=True, slots=True)
class Alone:
    """What one side decides by itself: the rows that are still in, and what was worked out of them."""

    rows: Array
    variables: Variables


@dataclass(frozen=True, slots=True)
class Scene:
    """What an expression may look at: links of either side, what both share, and variables."""

    link: Callable[[Link], Any]
    shared: Callable[[Shared], Array]
    variables: Variables


def alone(columns: Columns, steps: Sequence[Step]) -> Alone | None:
    """What steps that speak of one side make of its columns; None where they leave no row."""
    if len(columns.keys) == 1:
        return _single(columns, steps)
    scene = Scene(lambda link: columns.truth(link.name, link.targets), _not_here, {})
    held = np.ones(len(columns.keys), dtype=np.bool_)
    for step in steps:
        if isinstance(step, Value):
            scene.variables[step.variable] = number = columns.number(step.name)
            held &= ~np.isnan(number)
        else:
            held &= _taken(step, scene)
        if not held.any():
            return None
    rows = np.flatnonzero(held)
    return Alone(rows, {name: _of(rows, value) for name, value in scene.variables.items()})


def _single(columns: Columns, steps: Sequence[Step]) -> Alone | None:
    """The same for a single plate or glass, in plain numbers."""
    scene = Scene(lambda link: columns.has(link.name, link.targets, 0), _not_here, {})
    for step in steps:
        if isinstance(step, Value):
            scene.variables[step.variable] = number = columns.point(step.name, 0)
            held = not isnan(number)
        else:
            held = bool(_taken(step, scene))
        if not held:
            return None
    return Alone(ONLY, scene.variables)


def together(
    sides: Mapping[str, Columns], found: Mapping[str, Alone], steps: Iterable[Step]
) -> tuple[Array, Variables]:
    """Where the steps of both sides hold (plates x glasses, of the rows still in), and the variables."""
    plates, glasses = found[PLATE], found[GLASS]

    def link(asked: Link) -> Array:
        column = sides[asked.side].truth(asked.name, asked.targets)[found[asked.side].rows]
        laid: Array = _laid(asked.side, column)
        return laid

    def shared(asked: Shared) -> Array:
        down = _picked(sides[PLATE].among(asked.plate), plates.rows)
        across = _picked(sides[GLASS].among(asked.glass), glasses.rows)
        return np.array([[not one.isdisjoint(other) for other in across] for one in down], dtype=np.bool_)

    variables = {name: _laid(side, value) for side in found for name, value in found[side].variables.items()}
    scene = Scene(link, shared, variables)
    held = np.ones((len(plates.rows), len(glasses.rows)), dtype=np.bool_)
    for step in steps:
        held &= _taken(step, scene)
    return held, variables


def _taken(step: Step, scene: Scene) -> Any:
    """Whether a step holds; what it works out goes to the variables."""
    value = _worked(step.expr, scene)  # type: ignore[union-attr]
    if isinstance(step, Keep):
        return value
    scene.variables[step.variable] = value
    return True


def _worked(expr: Expr, scene: Scene) -> Any:
    if isinstance(expr, float):
        return expr
    if isinstance(expr, str):
        return scene.variables[expr]
    if isinstance(expr, Link):
        return scene.link(expr)
    if isinstance(expr, Shared):
        return scene.shared(expr)
    return _WORKS[expr[0]](*[_worked(part, scene) for part in expr[1:]])


def _of(rows: Array, value: Any) -> Any:
    return value[rows] if getattr(value, "ndim", 0) else value


def _laid(side: str, value: Any) -> Any:
    if not getattr(value, "ndim", 0):
        return value
    return value[:, None] if side == PLATE else value[None, :]


def _picked(among: Sequence[Set[str]], rows: Array) -> list[Set[str]]:
    return [among[row] for row in rows.tolist()]


def _not_here(asked: Shared) -> Array:
    raise AssertionError(f"{asked} speaks of both sides")
