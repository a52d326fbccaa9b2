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
Truths = NDArray[np.bool_]
Places = NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class _State:
    """The wines chosen so far: their best scores by food, what they are worth without the weakest food.

    `doubles`: for every wine, how many of them are like it; `open`: the bonuses that are still to be earned.
    """

    chosen: tuple[int, ...]
    best: Numbers
    worth: float
    doubles: Numbers
    open: Truths
    cost: float


@dataclass(slots=True)
class _Found:
    """The best full choice met, and how many states were looked at."""

    value: float = NOTHING_YET
    chosen: tuple[int, ...] = ()
    looked_at: int = 0
    cut: bool = False


@dataclass(frozen=True, slots=True)
class _Limit:
    """A quota, its wines marked by position."""

    wines: Truths
    least: int
    most: int


@dataclass(slots=True)
class _Search:
    """A task as arrays by position of the wine (`alike`: wine x wine, `bonuses`: wine x bonus)."""

    task: Task
    most: int | None = None
    found: _Found = field(default_factory=_Found)
    names: list[str] = field(init=False)
    scores: Numbers = field(init=False)
    weights: Numbers = field(init=False)
    own: Numbers = field(init=False)
    prices: Numbers = field(init=False)
    alike: Numbers = field(init=False)
    bonuses: Numbers = field(init=False)
    limits: list[_Limit] = field(init=False)

    def __post_init__(self) -> None:
        task, self.names = self.task, self.task.wines
        self.scores = np.array([task.scores.of[name] for name in self.names], dtype=np.float64)
        self.weights = (1 - task.weakest_share) * np.array(task.scores.weights, dtype=np.float64)
        self.own = np.array([task.worth.get(name, 0.0) for name in self.names], dtype=np.float64)
        self.prices = np.array([task.prices.get(name, 0.0) for name in self.names], dtype=np.float64)
        self.alike = self._alike()
        self.bonuses = np.array([[b.worth * (n in b.wines) for b in task.bonuses] for n in self.names])
        self.limits = [_Limit(self.marked(q.wines), q.least, q.most) for q in task.quotas]

    def _alike(self) -> Numbers:
        place = {name: i for i, name in enumerate(self.names)}
        alike = np.zeros((len(self.names), len(self.names)))
        for one, other in (tuple(pair) for pair in self.task.alike):
            if one in place and other in place:
                alike[place[one], place[other]] = alike[place[other], place[one]] = 1.0
        return alike

    def marked(self, wines: frozenset[str]) -> Truths:
        """Which wines are these."""
        return np.array([name in wines for name in self.names], dtype=np.bool_)

    def start(self) -> _State:
        """Nothing chosen: every food as badly served as by its worst wine, so that each choice adds."""
        lowest: Numbers = self.scores.min(axis=0)
        nothing, every = np.zeros(len(self.names)), np.ones(len(self.task.bonuses), dtype=np.bool_)
        return _State((), lowest, float(lowest @ self.weights), nothing, every, 0.0)

    def gains(self, state: _State, wines: Places | list[int]) -> Numbers:
        """What each of the wines adds to a state, the weakest food left aside."""
        better = (self.scores[wines] - state.best).clip(min=0.0) @ self.weights
        new = self.bonuses[wines] @ state.open
        doubles = self.task.alike_cost * state.doubles[wines]
        found: Numbers = better + new + self.own[wines] - doubles
        return found.round(TO_PLACES)

    def added(self, state: _State, wine: int, gain: float) -> _State:
        """The state with one more wine."""
        return _State(
            (*state.chosen, wine),
            np.maximum(state.best, self.scores[wine]),
            state.worth + float(gain),
            state.doubles + self.alike[wine],
            state.open & (self.bonuses[wine] == 0.0),
            state.cost + float(self.prices[wine]),
        )

    def explore(self, state: _State, rest: Places) -> None:
        """Tries every way to fill up a choice from the rest, the most promising first."""
        if self._looked_enough():
            return
        left = self.task.count - len(state.chosen)
        if len(rest) < left or not self._may_fit(state, rest, left):
            return
        if left == 0:
            self._take(state.chosen, self._full_value(state))
            return
        gains = self.gains(state, rest)
        order = np.lexsort((rest, -gains))
        rest, gains = rest[order], gains[order]
        if left == 1:
            self._take_last(state, rest, gains)
        else:
            self._branch(state, rest, gains, left)

    def _looked_enough(self) -> bool:
        if self.most is not None and self.found.looked_at >= self.most:
            self.found.cut = True
            return True
        self.found.looked_at += 1
        return False

    def _branch(self, state: _State, rest: Places, gains: Numbers, left: int) -> None:
        windows = np.concatenate(([0.0], gains.cumsum()))
        most = windows[left:] - windows[:-left] + self._weakest(state, rest)[: len(rest) - left + 1]
        for i, bound in enumerate((state.worth + most).tolist()):
            if bound <= self.found.value + CLOSE:
                break
            self.explore(self.added(state, int(rest[i]), gains[i]), rest[i + 1 :])

    def _take_last(self, state: _State, rest: Places, gains: Numbers) -> None:
        """The last wine: each is looked at that makes the choice better than the best so far."""
        weakest = np.maximum(self.scores[rest], state.best).min(axis=1)
        values = state.worth + gains + self.task.weakest_share * weakest
        for i in np.flatnonzero(values > self.found.value + CLOSE).tolist():
            if values[i] > self.found.value + CLOSE and not self._looked_enough():
                last = self.added(state, int(rest[i]), gains[i])
                if self._may_fit(last, rest[:0], 0):
                    self._take(last.chosen, float(values[i]))

    def _weakest(self, state: _State, rest: Places) -> Numbers:
        """For each place in the rest: what the weakest food can at best count for from there on."""
        best = np.maximum(np.maximum.accumulate(self.scores[rest[::-1]], axis=0), state.best)
        found: Numbers = self.task.weakest_share * best.min(axis=1)[::-1]
        return found

    def _full_value(self, state: _State) -> float:
        return state.worth + self.task.weakest_share * float(state.best.min())

    def _take(self, chosen: tuple[int, ...], worth: float) -> None:
        if worth > self.found.value + CLOSE:
            self.found.value, self.found.chosen = worth, chosen

    def _may_fit(self, state: _State, rest: Places, left: int) -> bool:
        """Whether money and quotas can still be kept."""
        if self.task.budget is not None:
            cheapest = float(np.sort(self.prices[rest])[:left].sum())
            if state.cost + cheapest > self.task.budget + CLOSE:
                return False
        return all(_fits(limit, state.chosen, rest, left) for limit in self.limits)


def _fits(limit: _Limit, chosen: tuple[int, ...], rest: Places, left: int) -> bool:
    have, more = int(limit.wines[list(chosen)].sum()), int(limit.wines[rest].sum())
    others = len(rest) - more
    return have + min(more, left) >= limit.least and have + max(0, left - others) <= limit.most


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
    state, must = search.start(), search.marked(task.must)
    for wine in np.flatnonzero(must).tolist():
        state = search.added(state, wine, search.gains(state, [wine])[0])
    rest = np.flatnonzero(~must)
    if len(state.chosen) == len(task.must) <= task.count:
        search.explore(state, rest)
    if not search.found.chosen:
        return None
    wines = tuple(search.names[i] for i in sorted(search.found.chosen))
    return Choice(wines, search.found.value, search.found.looked_at, not search.found.cut)
