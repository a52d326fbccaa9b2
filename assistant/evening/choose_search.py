"""The best few bottles, exactly: branch and bound over the sets of wines.

Apart from the weakest food, the worth of a choice is submodular: what a wine adds shrinks, never grows,
with every wine chosen before it. So what the k best of the rest would add one by one is a bound on what
any k of them add together; the weakest food is bounded by the best score that is still to be had.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from assistant.evening.choose_task import CLOSE, Task

NOTHING_YET = float("-inf")
TO_PLACES = 9  # beyond them sums differ by the order they are made in
Numbers = NDArray[np.float64]
Gain = tuple[float, int]


@dataclass(frozen=True, slots=True)
class _State:
    """The wines chosen so far: their best scores by food, what they are worth without the weakest food."""

    chosen: tuple[int, ...]
    best: Numbers
    worth: float
    earned: int
    cost: float


@dataclass(slots=True)
class _Found:
    """The best full choice met, and how many states were looked at."""

    value: float = NOTHING_YET
    chosen: tuple[int, ...] = ()
    looked_at: int = 0
    cut: bool = False


@dataclass(slots=True)
class _Search:
    """A task as arrays by position of the wine (`alike`: wine x wine), and bonuses as bits."""

    task: Task
    most: int | None = None
    found: _Found = field(default_factory=_Found)
    names: list[str] = field(init=False)
    scores: Numbers = field(init=False)
    weights: Numbers = field(init=False)
    own: Numbers = field(init=False)
    prices: list[float] = field(init=False)
    alike: Numbers = field(init=False)
    bonuses: list[int] = field(init=False)
    worths: dict[int, float] = field(init=False)

    def __post_init__(self) -> None:
        task, self.names = self.task, self.task.wines
        self.scores = np.array([task.scores.of[name] for name in self.names], dtype=np.float64)
        self.weights = (1 - task.weakest_share) * np.array(task.scores.weights, dtype=np.float64)
        self.own = np.array([task.worth.get(name, 0.0) for name in self.names], dtype=np.float64)
        self.prices = [task.prices.get(name, 0.0) for name in self.names]
        place = {name: i for i, name in enumerate(self.names)}
        self.alike = np.zeros((len(self.names), len(self.names)))
        for one, other in (tuple(pair) for pair in task.alike):
            if one in place and other in place:
                self.alike[place[one], place[other]] = self.alike[place[other], place[one]] = 1.0
        self.bonuses = [sum(1 << i for i, b in enumerate(task.bonuses) if n in b.wines) for n in self.names]
        self.worths = {0: 0.0}

    def bonus(self, mask: int) -> float:
        """What a set of bonuses is worth."""
        if mask not in self.worths:
            self.worths[mask] = sum(b.worth for i, b in enumerate(self.task.bonuses) if mask >> i & 1)
        return self.worths[mask]

    def start(self) -> _State:
        """Nothing chosen: every food as badly served as by its worst wine, so that each choice adds."""
        lowest: Numbers = self.scores.min(axis=0)
        return _State((), lowest, float(lowest @ self.weights), 0, 0.0)

    def gains(self, state: _State, wines: list[int]) -> list[float]:
        """What each of the wines adds to a state, the weakest food left aside."""
        better = (self.scores[wines] - state.best).clip(min=0.0) @ self.weights
        doubles = self.alike[np.ix_(wines, list(state.chosen))].sum(axis=1)
        new = [self.bonus(self.bonuses[wine] & ~state.earned) for wine in wines]
        found: Numbers = better + new + self.own[wines] - self.task.alike_cost * doubles
        return [float(gain) for gain in found.round(TO_PLACES)]

    def added(self, state: _State, wine: int, gain: float) -> _State:
        """The state with one more wine."""
        return _State(
            (*state.chosen, wine),
            np.maximum(state.best, self.scores[wine]),
            state.worth + gain,
            state.earned | self.bonuses[wine],
            state.cost + self.prices[wine],
        )

    def explore(self, state: _State, rest: list[int]) -> None:
        """Tries every way to fill up a choice from the rest, the most promising first."""
        if self.most is not None and self.found.looked_at >= self.most:
            self.found.cut = True
            return
        self.found.looked_at += 1
        left = self.task.count - len(state.chosen)
        if len(rest) < left or not self._may_fit(state, rest, left):
            return
        if left == 0:
            self._take(state)
            return
        found = zip(self.gains(state, rest), rest, strict=True)
        gains = sorted(found, key=lambda g: (-g[0], g[1]))
        weakest = self._weakest(state, gains)
        for i, (gain, wine) in enumerate(gains[: len(gains) - left + 1]):
            most = sum(g for g, _ in gains[i : i + left]) + self.task.weakest_share * weakest[i]
            if state.worth + most <= self.found.value + CLOSE:
                break
            self._branch(state, wine, gain, [w for _, w in gains[i + 1 :]], left)

    def _branch(self, state: _State, wine: int, gain: float, rest: list[int], left: int) -> None:
        with_it = self.added(state, wine, gain)
        if left > 1 or self._full_value(with_it) > self.found.value + CLOSE:
            self.explore(with_it, rest)

    def _weakest(self, state: _State, gains: list[Gain]) -> list[float]:
        """For each place in the gains: the best that the weakest food can get from there on."""
        from_last = self.scores[[wine for _, wine in reversed(gains)]]
        best = np.maximum(np.maximum.accumulate(from_last, axis=0), state.best)
        found: list[float] = best.min(axis=1)[::-1].tolist()
        return found

    def _full_value(self, state: _State) -> float:
        return state.worth + self.task.weakest_share * float(state.best.min())

    def _take(self, state: _State) -> None:
        worth = self._full_value(state)
        if worth > self.found.value + CLOSE:
            self.found.value, self.found.chosen = worth, state.chosen

    def _may_fit(self, state: _State, rest: list[int], left: int) -> bool:
        """Whether money and quotas can still be kept."""
        if self.task.budget is not None:
            cheapest = sum(sorted(self.prices[w] for w in rest)[:left])
            if state.cost + cheapest > self.task.budget + CLOSE:
                return False
        return all(self._quota_fits(q.wines, q.least, q.most, state, rest, left) for q in self.task.quotas)

    def _quota_fits(
        self, wines: frozenset[str], least: int, most: int, state: _State, rest: list[int], left: int
    ) -> bool:
        have = sum(self.names[i] in wines for i in state.chosen)
        more = sum(self.names[i] in wines for i in rest)
        others = len(rest) - more
        return have + min(more, left) >= least and have + max(0, left - others) <= most


@dataclass(frozen=True, slots=True)
class Choice:
    """The wines chosen, in order of name, what they are worth and how many states were looked at.

    `proven`: no other choice is worth more; it is not where the search was cut short.
    """

    wines: tuple[str, ...]
    value: float
    looked_at: int
    proven: bool = True


def choose(task: Task, most: int | None = None) -> Choice | None:
    """The best choice that keeps to every limit, or None where there is none.

    After `most` states the best that was met is taken: many of many wines can take minutes.
    """
    search = _Search(task, most)
    state, rest = search.start(), list(range(len(search.names)))
    for wine in [i for i in rest if search.names[i] in task.must]:
        state = search.added(state, wine, *search.gains(state, [wine]))
        rest.remove(wine)
    if len(state.chosen) == len(task.must) <= task.count:
        search.explore(state, rest)
    if not search.found.chosen:
        return None
    wines = tuple(search.names[i] for i in sorted(search.found.chosen))
    return Choice(wines, search.found.value, search.found.looked_at, not search.found.cut)
