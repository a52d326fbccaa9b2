"""The figures of votes, held against hand-worked examples and scipy."""

from __future__ import annotations

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from assistant.after.figures import (
    half_interval,
    points_of,
    shrunk,
    spearman,
    t95,
    votes_needed,
    votes_of,
)
from assistant.evening.facts import tables

ROWS = st.lists(st.tuples(st.integers(1, 5), st.integers(-30, 40)), min_size=3, max_size=30)


def test_ten_votes_with_a_spread_of_one_are_known_to_six_tenths() -> None:
    assert half_interval(1.0, 10) == pytest.approx(1.96 / sqrt(10))
    assert round(half_interval(1.0, 10), 1) == 0.6


@pytest.mark.parametrize("n", [*range(2, 32), 60])
def test_students_t_is_that_of_scipy(n: int) -> None:
    exact = stats.t.ppf(0.975, n - 1)
    assert t95(n) == pytest.approx(exact, abs=0.0006 if n <= 31 else 0.05)


def test_a_spread_of_their_own_widens_the_interval_by_students_t() -> None:
    points = [5.0, 4.0, 4.0, 2.0, 5.0, 3.0]
    votes = votes_of(points)
    assert votes.own
    assert votes.mean == pytest.approx(23 / 6)
    low, high = stats.t.interval(0.95, 5, loc=votes.mean, scale=stats.sem(points))
    assert votes.half == pytest.approx((high - low) / 2, rel=1e-3)


@pytest.mark.parametrize("points", [[4.0], [2.0, 5.0], [4.0] * 9])
def test_of_few_votes_or_of_votes_all_alike_the_usual_spread_counts(points: list[float]) -> None:
    votes = votes_of(points)
    assert (votes.own, votes.spread) == (False, 1.0)
    assert votes.half == pytest.approx(1.96 / sqrt(len(points)))


def test_shrinkage_by_hand() -> None:
    assert shrunk(4.0, 2.0, 9, 25) == pytest.approx((25 * 4 + 9 * 2) / 34)
    assert shrunk(4.0, 2.0, 25, 25) == pytest.approx(3.0)
    assert shrunk(4.0, 2.0, 0, 25) == 4.0


def test_the_votes_needed_are_the_fewest() -> None:
    count = votes_needed(0.5, 1.0)
    assert count == 16
    assert half_interval(1.0, count) <= 0.5 < half_interval(1.0, count - 1)


@given(ROWS)
def test_rank_correlation_is_that_of_scipy(rows: list[tuple[int, int]]) -> None:
    one, other = [float(a) for a, _ in rows], [float(b) for _, b in rows]
    found = spearman(one, other)
    if found is None:
        assert len(set(one)) == 1 or len(set(other)) == 1
    else:
        assert found == pytest.approx(stats.spearmanr(one, other).statistic, abs=1e-9)


def test_a_better_verdict_is_a_better_vote() -> None:
    verdicts = ("clash", "poor", "neutral", "fair", "good", "strong")
    points = [points_of(verdict) for verdict in verdicts]
    assert points == sorted(set(points))
    assert (points[0], points[-1]) == (1.0, 5.0)


def test_the_weight_of_a_rule_is_judged_and_within_its_range() -> None:
    k = tables("after")["votes"]["k"]
    assert (k["basis"], k["low"], k["high"]) == ("judged", 20.0, 30.0)
