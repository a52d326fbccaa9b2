"""What is asked of a choice of bottles: the board in scores, what counts, and what must hold."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import combinations
from typing import NamedTuple

from assistant.knowledge.store import Band
from assistant.pairing.score import verdict

CLOSE = 1e-9


class Bonus(NamedTuple):
    """What a choice earns once when it holds at least one of these wines."""

    name: str
    wines: frozenset[str]
    worth: float


class Quota(NamedTuple):
    """Between `least` and `most` of these wines must be in the choice."""

    name: str
    wines: frozenset[str]
    least: int
    most: int


@dataclass(frozen=True, slots=True)
class Scores:
    """A board in scores: `of[wine][i]` is the signed score of the wine with food i, `weights` sum to 1.

    `foods` are names to show, `bands` the published verdicts, best first.
    """

    foods: tuple[str, ...]
    weights: tuple[float, ...]
    of: Mapping[str, tuple[float, ...]]
    bands: tuple[Band, ...]

    def verdict(self, score: float) -> str:
        """The verdict of a score."""
        return verdict(score, self.bands)

    def floor(self, name: str) -> float:
        """The lowest score that earns a verdict."""
        return next(band.floor for band in self.bands if band.verdict == name)

    def among(self, wines: Collection[str]) -> Scores:
        """The same board for some of the wines."""
        return replace(self, of={wine: self.of[wine] for wine in wines})

    def best(self, chosen: Collection[str]) -> tuple[float, ...]:
        """The best score of each food among the wines chosen (at least one)."""
        return tuple(map(max, zip(*(self.of[wine] for wine in chosen), strict=True)))

    def mean(self, chosen: Collection[str]) -> float:
        """The weighed mean of the best scores."""
        return sum(w * s for w, s in zip(self.weights, self.best(chosen), strict=True))


@dataclass(frozen=True, slots=True)
class Task:
    """A choice to be made of exactly `count` of the wines in `scores`.

    `weakest_share` (0 to 1) says how much the worst served food counts beside the mean of all;
    `worth` is what a wine is worth or costs by itself, in points of score; each pair in `alike` costs
    `alike_cost` points. Hard limits: `must`, `quotas`, and `prices` (one per wine, in money) that may not
    add up to more than `budget`. A wine without a price costs nothing.
    """

    scores: Scores
    count: int
    weakest_share: float
    bonuses: tuple[Bonus, ...] = ()
    worth: Mapping[str, float] = field(default_factory=dict)
    alike: frozenset[frozenset[str]] = frozenset()
    alike_cost: float = 0.0
    must: frozenset[str] = frozenset()
    quotas: tuple[Quota, ...] = ()
    prices: Mapping[str, float] = field(default_factory=dict)
    budget: float | None = None

    @property
    def wines(self) -> list[str]:
        """The candidates in order of name."""
        return sorted(self.scores.of)

    def cost(self, chosen: Collection[str]) -> float:
        """What the wines cost together."""
        return sum(self.prices.get(wine, 0.0) for wine in chosen)


def value(task: Task, chosen: Sequence[str]) -> float:
    """What a choice is worth in points of score: the sum of its mean, its weakest food and its mix."""
    mean, weakest = task.scores.mean(chosen), min(task.scores.best(chosen))
    coverage = (1 - task.weakest_share) * mean + task.weakest_share * weakest
    earned = sum(b.worth for b in task.bonuses if not b.wines.isdisjoint(chosen))
    doubles = sum(frozenset(pair) in task.alike for pair in combinations(chosen, 2))
    own = sum(task.worth.get(wine, 0.0) for wine in chosen)
    return coverage + earned + own - task.alike_cost * doubles


def allowed(task: Task, chosen: Collection[str]) -> bool:
    """Whether a choice keeps to every hard limit."""
    counts = ((q, sum(wine in q.wines for wine in chosen)) for q in task.quotas)
    return (
        len(set(chosen)) == task.count
        and task.must <= set(chosen)
        and all(q.least <= n <= q.most for q, n in counts)
        and (task.budget is None or task.cost(chosen) <= task.budget + CLOSE)
    )
