"""The few figures that votes need: mean with its interval, shrinkage, rank correlation.

Interval (95 %): mean ± 1.96 s / √n with a usual spread s, or with Student's t in place of 1.96 where the
spread was measured on the votes themselves, of which there must be a few. Shrinkage: (k rule + n mean) /
(k + n). Rank correlation: Spearman's, ties at their mean rank. The numbers: ontology/evening/after.toml.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, sqrt

from assistant.evening.facts import fact, file_of, tables
from assistant.language.data import telling


@dataclass(frozen=True, slots=True)
class Votes:
    """Votes on five points in short: how many, their mean, spread (standard deviation) and half interval.

    `own`: the spread is that of the votes, else a usual one, because they are few or all alike.
    """

    n: int
    mean: float
    spread: float
    half: float
    own: bool


def votes_of(points: Sequence[float]) -> Votes:
    """At least one vote in short."""
    n, mean = len(points), sum(points) / len(points)
    enough = n >= fact("after", "votes", "own_from").typical
    own = sqrt(sum((p - mean) ** 2 for p in points) / (n - 1)) if enough else 0.0
    spread = own or fact("after", "votes", "spread").typical
    return Votes(n, mean, spread, half_interval(spread, n, bool(own)), bool(own))


def half_interval(spread: float, n: int, own: bool = False) -> float:
    """Half the width of the 95 % interval of the mean of n votes; `own`: the spread was measured on them."""
    return (t95(n) if own else normal95()) * spread / sqrt(n)


def normal95() -> float:
    """1.96: for a spread that is known beforehand."""
    return fact("after", "student", "normal").typical


def t95(n: int) -> float:
    """Student's t of n votes, two-sided 95 %, for a spread measured on them; at least two votes."""
    with telling(file_of("after")):
        table = tables("after")["student"]["t95"]
    return float(table[n - 2]) if n - 2 < len(table) else normal95()


def votes_needed(half: float, spread: float) -> int:
    """The least number of votes whose interval reaches no further than `half` to either side."""
    return max(1, ceil((normal95() * spread / half) ** 2))


def shrunk(rule: float, mean: float, n: int, k: float) -> float:
    """The rule and n votes together, the rule counting like k votes."""
    return (k * rule + n * mean) / (k + n)


def spearman(one: Sequence[float], other: Sequence[float]) -> float | None:
    """Rank correlation of two rows of equal length, -1 to 1; None where one of them is all alike."""
    a, b = _ranks(one), _ranks(other)
    middle = (len(a) + 1) / 2
    over = sum((x - middle) * (y - middle) for x, y in zip(a, b, strict=True))
    under = sqrt(sum((x - middle) ** 2 for x in a) * sum((y - middle) ** 2 for y in b))
    return over / under if under else None


def _ranks(values: Sequence[float]) -> list[float]:
    ordered = sorted(values)
    return [ordered.index(value) + (ordered.count(value) + 1) / 2 for value in values]


def points_of(verdict: str) -> float:
    """A verdict (`good` or `band/good`) as a vote on five points."""
    return fact("after", "votes", verdict.removeprefix("band/")).typical
