"""The steps of a rule made into functions, once: what they do to a scene of plates and glasses."""

from __future__ import annotations

import operator
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import reduce
from typing import Any

import numpy as np

from assistant.pairing.rule_steps import Expr, Keep, Link, Shared, Step, Value

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
class Scene:
    """What a step may look at: numbers and links of a side, what both sides share, and variables."""

    number: Callable[[str], Any]
    link: Callable[[Link], Any]
    shared: Callable[[Shared], Any]
    variables: dict[str, Any]


Work = Callable[[Scene], Any]


def work_of(step: Step) -> Work:
    """Tells whether a step holds in a scene; what it works out goes to the variables there."""
    if isinstance(step, Value):
        return _looked_up(step)
    value = _value(step.expr)
    return value if isinstance(step, Keep) else _noted(step.variable, value)


def _looked_up(step: Value) -> Work:
    def work(scene: Scene) -> Any:
        found = scene.variables[step.variable] = scene.number(step.name)
        return found == found  # what is not there is NaN, which equals nothing

    return work


def _noted(variable: str, value: Work) -> Work:
    def work(scene: Scene) -> Any:
        scene.variables[variable] = value(scene)
        return True

    return work


def _value(expr: Expr) -> Work:
    if isinstance(expr, float):
        return lambda scene: expr
    if isinstance(expr, str):
        return lambda scene: scene.variables[expr]
    if isinstance(expr, Link):
        return lambda scene: scene.link(expr)
    if isinstance(expr, Shared):
        return lambda scene: scene.shared(expr)
    return _applied(_WORKS[expr[0]], [_value(part) for part in expr[1:]])


def _applied(works: Callable[..., Any], parts: list[Work]) -> Work:
    if len(parts) == 2:
        one, other = parts
        return lambda scene: works(one(scene), other(scene))
    return lambda scene: works(*[part(scene) for part in parts])
