"""The choice of bottles is the best there is: against trying every set, and against an integer program."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from math import comb
from random import Random

import numpy as np
import pytest
from scipy.optimize import Bounds, LinearConstraint, milp

from assistant.evening.choose_search import _Search, choose
from assistant.evening.choose_task import Bonus, Quota, Task, allowed, value
from tests.evening.made import exhaustive, random_task, scores

CLOSE = 1e-6


@pytest.mark.parametrize("seed", range(60))
def test_no_set_is_worth_more(seed: int) -> None:
    random = Random(seed)
    task = random_task(random, random.randint(5, 10), random.randint(1, 7), random.randint(1, 5))
    best, found = exhaustive(task), choose(task)
    assert (best is None) == (found is None)
    if best is not None and found is not None:
        assert allowed(task, found.wines)
        assert found.value == pytest.approx(value(task, found.wines), abs=CLOSE)
        assert found.value == pytest.approx(value(task, best), abs=CLOSE)


def test_a_wine_without_a_price_costs_nothing() -> None:
    of = {"wine/a": [30.0], "wine/b": [20.0], "wine/c": [10.0]}
    task = Task(scores(of), 2, 0.0, prices={"wine/a": 9.5, "wine/c": 0.2}, budget=9.6)
    best = choose(task)
    assert best is not None
    assert best.wines == ("wine/a", "wine/b")
    assert choose(replace(task, budget=9.4)).wines == ("wine/b", "wine/c")  # type: ignore[union-attr]


def test_some_random_choices_can_be_made_and_some_cannot() -> None:
    """Else the comparison above would say little."""
    found = [choose(random_task(Random(seed), 8, 4, 3)) for seed in range(60)]
    assert 5 < sum(f is None for f in found) < 55


class Program:
    """The same choice as an integer program: x wines, y wine serving a food, t worst, z bonus, w double."""

    def __init__(self, task: Task) -> None:
        self.task, self.names = task, task.wines
        self.pairs = sorted(tuple(sorted(pair)) for pair in task.alike)
        wines, foods = len(self.names), len(task.scores.foods)
        self.sizes = (wines, wines * foods, 1, len(task.bonuses), len(self.pairs))
        self.starts = [sum(self.sizes[:i]) for i in range(len(self.sizes))]
        self.rows: list[np.ndarray] = []
        self.low: list[float] = []
        self.high: list[float] = []

    def x(self, wine: str) -> int:
        """The column of a wine."""
        return self.names.index(wine)

    def y(self, food: int, wine: int) -> int:
        """The column that tells how far a wine serves a food."""
        return self.starts[1] + food * len(self.names) + wine

    def hold(self, terms: dict[int, float], low: float, high: float) -> None:
        """Adds low <= sum of terms <= high."""
        row = np.zeros(sum(self.sizes))
        for column, factor in terms.items():
            row[column] += factor
        self.rows.append(row)
        self.low.append(low)
        self.high.append(high)

    def worth(self) -> np.ndarray:
        """What each column earns."""
        task, earns = self.task, np.zeros(sum(self.sizes))
        earns[: len(self.names)] = [task.worth.get(n, 0.0) for n in self.names]
        for food, weight in enumerate(task.scores.weights):
            for i, name in enumerate(self.names):
                earns[self.y(food, i)] = (1 - task.weakest_share) * weight * task.scores.of[name][food]
        earns[self.starts[2]] = task.weakest_share
        earns[self.starts[3] : self.starts[4]] = [b.worth for b in task.bonuses]
        earns[self.starts[4] :] = -task.alike_cost
        return earns

    def constrain(self) -> None:
        """Everything that must hold."""
        task, every = self.task, range(len(self.names))
        self.hold(dict.fromkeys(every, 1.0), task.count, task.count)
        for food in range(len(task.scores.foods)):
            self.hold({self.y(food, i): 1.0 for i in every}, 1, 1)
            served = {self.y(food, i): task.scores.of[n][food] for i, n in enumerate(self.names)}
            self.hold({**served, self.starts[2]: -1.0}, 0, np.inf)
            for i in every:
                self.hold({i: 1.0, self.y(food, i): -1.0}, 0, 1)
        for k, bonus in enumerate(task.bonuses):
            self.hold({**{self.x(w): 1.0 for w in bonus.wines}, self.starts[3] + k: -1.0}, 0, np.inf)
        for k, (one, other) in enumerate(self.pairs):
            self.hold({self.x(one): 1.0, self.x(other): 1.0, self.starts[4] + k: -1.0}, -np.inf, 1)
        for quota in task.quotas:
            self.hold({self.x(w): 1.0 for w in quota.wines}, quota.least, quota.most)
        for wine in task.must:
            self.hold({self.x(wine): 1.0}, 1, 1)
        if task.budget is not None:
            self.hold({self.x(w): task.prices[w] for w in self.names}, -np.inf, task.budget)

    def best(self) -> float | None:
        """The worth of the best choice, or None where there is none."""
        self.constrain()
        low, high = np.zeros(sum(self.sizes)), np.ones(sum(self.sizes))
        low[self.starts[2]], high[self.starts[2]] = -np.inf, np.inf
        whole = np.zeros(sum(self.sizes))
        whole[: len(self.names)] = 1
        held = LinearConstraint(np.array(self.rows), self.low, self.high)
        options = {"mip_rel_gap": 0.0}
        result = milp(
            -self.worth(), constraints=held, bounds=Bounds(low, high), integrality=whole, options=options
        )
        return None if result.x is None else float(-result.fun)


@pytest.mark.parametrize("seed", range(30))
def test_an_integer_program_finds_the_same_worth(seed: int) -> None:
    random = Random(1000 + seed)
    task = random_task(random, random.randint(10, 16), random.randint(3, 8), random.randint(2, 6))
    if seed % 3:
        task = replace(task, must=frozenset(), quotas=())
    best, found = Program(task).best(), choose(task)
    assert (best is None) == (found is None)
    assert found is None or found.value == pytest.approx(best, abs=1e-4)


def test_six_of_forty_looks_at_a_small_part_of_all_sets() -> None:
    for seed in range(3):
        task = random_task(Random(seed), 40, 12, 6)
        found = choose(replace(task, must=frozenset(), quotas=(), budget=None, weakest_share=0.35))
        assert found is not None
        assert found.looked_at < comb(40, 6) / 100


@pytest.mark.parametrize("seed", range(10))
def test_what_a_wine_adds_never_grows(seed: int) -> None:
    """The bound rests on it: a wine adds no more behind another wine than without it."""
    search = _Search(random_task(Random(seed), 8, 5, 3))
    start = search.start()
    for first, second in combinations(range(8), 2):
        later = search.added(start, first, search.gains(start, [first])[0])
        assert search.gains(later, [second])[0] <= search.gains(start, [second])[0] + CLOSE


def test_the_worth_is_the_sum_that_is_published() -> None:
    task = Task(
        scores({"red": [30.0, -10.0], "white": [0.0, 20.0], "pink": [10.0, 10.0]}, [0.75, 0.25]),
        2,
        0.4,
        bonuses=(Bonus("mix", frozenset({"white", "pink"}), 2.0),),
        worth={"pink": -1.0},
        alike=frozenset({frozenset({"white", "pink"})}),
        alike_cost=5.0,
    )
    assert value(task, ("red", "white")) == pytest.approx(0.6 * 27.5 + 0.4 * 20.0 + 2.0)
    assert value(task, ("white", "pink")) == pytest.approx(0.6 * 12.5 + 0.4 * 10.0 + 2.0 - 1.0 - 5.0)


def test_limits_are_kept() -> None:
    board = scores({"red": [30.0, 0.0], "white": [0.0, 30.0], "pink": [1.0, 1.0]})
    free = Task(board, 2, 0.35, prices={"red": 20.0, "white": 20.0, "pink": 5.0})
    for task, wanted in (
        (free, ("red", "white")),
        (replace(free, must=frozenset({"pink"})), ("pink", "red")),
        (replace(free, budget=25.0), ("pink", "red")),
        (replace(free, quotas=(Quota("no white", frozenset({"white"}), 0, 0),)), ("pink", "red")),
    ):
        found = choose(task)
        assert found is not None
        assert found.wines == wanted
    assert choose(replace(free, budget=24.0)) is None
    assert choose(replace(free, count=4)) is None
    assert choose(replace(free, count=1, must=frozenset({"red", "white"}))) is None


def test_a_search_cut_short_says_so() -> None:
    task = replace(random_task(Random(5), 30, 8, 6), budget=None, quotas=(), must=frozenset())
    whole, cut = choose(task), choose(task, most=20)
    assert whole is not None
    assert cut is not None
    assert (whole.proven, cut.proven) == (True, False)
    assert cut.looked_at == 20
    assert allowed(task, cut.wines)
    assert cut.value <= whole.value
