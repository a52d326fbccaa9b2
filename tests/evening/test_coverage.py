"""What a choice covers, what one more bottle would buy, and the cheapest swap: each as it is defined."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from assistant.evening.choose_task import Task, allowed, value
from assistant.evening.coverage import bridges, cheapest_swap, coverage, friends, one_more
from assistant.knowledge.store import shipped
from tests.evening.made import random_task, scores

C = shipped().constants
BOARD = scores({"red": [30.0, -10.0, 40.0], "white": [20.0, 20.0, 0.0], "pink": [20.0, 2.0, 2.0]})


def test_each_food_has_its_best_and_worst_wine() -> None:
    found = coverage(BOARD, ("red", "white"))
    assert [(c.food, c.wine) for c in found.best] == [("a", "red"), ("b", "white"), ("c", "red")]
    assert [c.wine for c in found.worst] == ["white", "red", "white"]
    assert found.mean == pytest.approx(30.0)
    assert (found.weakest.food, found.weakest.verdict) == ("b", "good")
    assert found.served_by("red") == ("a", "c")


def test_a_gap_is_a_food_with_no_fair_wine() -> None:
    assert coverage(BOARD, ("red",)).gaps == ("b",)
    assert coverage(BOARD, ("pink",)).gaps == ("b", "c")
    assert coverage(BOARD, ("red", "white")).gaps == ()


def test_friends_and_bridges_are_good_pairs() -> None:
    assert friends(BOARD, "white") == ("a", "b")
    assert bridges(BOARD, ("red", "white", "pink"), C) == ("a",)
    assert bridges(BOARD, ("red", "white"), C) == ("a",)
    assert bridges(BOARD, ("red",), C) == ("a", "c")


def test_one_more_bottle_closes_the_gap() -> None:
    found = one_more(Task(BOARD, 1, 0.35), ("red",), C)
    assert found is not None
    assert (found.wine, found.gain, found.lifts, found.closes) == (
        "white",
        pytest.approx(10.0),
        ("b",),
        ("b",),
    )
    assert not found.saturated


def test_coverage_saturates_only_where_nothing_adds_enough() -> None:
    full = Task(BOARD, 2, 0.35)
    found = one_more(full, ("red", "white"), C)
    assert found is not None
    assert found.saturated
    assert found.gain == 0.0
    edge = C["choice-saturated"]
    for more, saturated in ((0.9 * edge, True), (1.1 * edge, False)):
        of = dict(BOARD.of) | {"extra": (30.0 + 3 * more, -10.0, -10.0)}
        found = one_more(Task(replace(BOARD, of=of), 2, 0.35), ("red", "white"), C)
        assert found is not None
        assert found.saturated is saturated


def test_a_small_gain_that_closes_a_gap_is_not_saturation() -> None:
    fair = BOARD.floor("fair")
    board = scores({"red": [fair - 0.1], "white": [fair]})
    found = one_more(Task(board, 1, 0.35), ("red",), C)
    assert found is not None
    assert found.closes == ("a",)
    assert not found.saturated


def test_no_bottle_can_be_added_where_none_is_left_or_money_is_out() -> None:
    assert one_more(Task(BOARD, 3, 0.35), ("red", "white", "pink"), C) is None
    poor = Task(BOARD, 1, 0.35, prices=dict.fromkeys(BOARD.of, 10.0), budget=15.0)
    assert one_more(poor, ("red",), C) is None


@pytest.mark.parametrize("seed", range(30))
def test_no_swap_loses_less_for_the_money_needed(seed: int) -> None:
    task = replace(random_task(Random(seed), 8, 4, 3), must=frozenset({"wine/00"}), quotas=(), budget=None)
    chosen, needed = ("wine/00", "wine/03", "wine/05"), 4.0
    found = cheapest_swap(task, chosen, needed)
    every = []
    for out in chosen[1:]:
        for into in (w for w in task.wines if w not in chosen):
            after = tuple(into if w == out else w for w in chosen)
            if allowed(task, after) and task.cost(chosen) - task.cost(after) >= needed:
                every.append(value(task, chosen) - value(task, after))
    assert (found is None) == (not every)
    if found:
        assert found.lost == pytest.approx(min(every))
        assert found.saved == pytest.approx(task.prices[found.out] - task.prices[found.into])
        assert found.out not in task.must


def test_without_a_need_the_least_loss_for_the_money_wins() -> None:
    board = scores({"best": [30.0], "near": [29.0], "far": [10.0], "dear": [28.0]})
    task = Task(board, 1, 0.35, prices={"best": 20.0, "near": 18.0, "far": 10.0, "dear": 25.0})
    found = cheapest_swap(task, ("best",))
    assert found is not None
    assert (found.out, found.into, found.saved, found.lost) == ("best", "near", 2.0, pytest.approx(1.0))
    assert cheapest_swap(task, ("far",)) is None
