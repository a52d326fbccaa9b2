"""The task as hosts mean it, built from the shipped knowledge, and what gives way when limits do not fit."""

from __future__ import annotations

from dataclasses import replace

import pytest

from assistant.evening.choose_make import (
    DECANTED,
    best_choice,
    calls_for_bubbles,
    scores_of,
    shortlist,
    usual_task,
)
from assistant.evening.choose_task import Task
from assistant.pairing.engine import Engine
from tests.evening.made import scores, table

FOODS = ("brie", "salami", "garlic-cheddar", "dark-chocolate-70")


def everyday(engine: Engine) -> list[str]:
    """Wines that are sold nearly everywhere."""
    return [w.id for w in engine.knowledge.wines.values() if w.type == "Wine" and w.availability >= 3]


def usual(engine: Engine, count: int, *foods: str, wines: list[str] | None = None) -> Task:
    """The usual task on shipped foods."""
    board = table(*foods)
    return usual_task(board, scores_of(board, foods, wines or everyday(engine), engine), engine, count)


def test_scores_are_those_of_the_engine(engine: Engine) -> None:
    board = table(*FOODS)
    wines = everyday(engine)
    found = scores_of(board, FOODS, wines, engine)
    for i, food in enumerate(FOODS):
        for wine in wines[::9]:
            assert found.of[wine][i] == pytest.approx(engine.judge(table(food), wine).score)
    assert sum(found.weights) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("foods", "called"),
    [(("salami", "mixed-olives"), True), (("fried-chicken",), True), (("apple", "walnut"), False)],
)
def test_salty_and_fried_boards_call_for_bubbles(
    engine: Engine, foods: tuple[str, ...], called: bool
) -> None:
    assert calls_for_bubbles(table(*foods), engine) is called
    assert any(b.name == "sparkling" for b in usual(engine, 3, *foods).bonuses) is called


def test_a_mixed_board_gets_a_mixed_set(engine: Engine) -> None:
    chosen = best_choice(usual(engine, 3, *FOODS))
    assert chosen is not None
    glasses = [engine.glasses[w] for w in chosen.wines]
    assert {g.colour == "colour/red" for g in glasses} == {True, False}
    assert any("kind/sparkling-wine" in g.kinds for g in glasses)
    assert any(g.points["sweetness"] > 3 for g in glasses)


def test_two_wines_that_do_the_same_job_cost(engine: Engine) -> None:
    task = usual(engine, 2, *FOODS)
    assert frozenset({"wine/gamay", "wine/beaujolais"}) in task.alike
    assert frozenset({"wine/gamay", "wine/sauternes"}) not in task.alike


def test_more_than_one_may_be_decanted_only_where_nothing_else_is_left(engine: Engine) -> None:
    big = ["wine/syrah", "wine/cabernet-sauvignon", "wine/malbec"]
    chosen = best_choice(usual(engine, 2, "salami", wines=big))
    assert chosen is not None
    assert len(chosen.wines) == 2
    assert DECANTED not in {q.name for q in chosen.task.quotas}
    chosen = best_choice(usual(engine, 2, "steak", wines=[*big, "wine/muscadet"]))
    assert chosen is not None
    assert "wine/muscadet" in chosen.wines
    assert DECANTED in {q.name for q in chosen.task.quotas}


def test_fewer_are_chosen_where_the_money_is_short() -> None:
    board = scores({"red": [30.0, 0.0], "white": [0.0, 30.0], "pink": [10.0, 10.0]})
    task = Task(board, 3, 0.35, prices=dict.fromkeys(board.of, 10.0), budget=20.0)
    chosen = best_choice(task)
    assert chosen is not None
    assert (chosen.wines, chosen.wanted) == (("red", "white"), 3)
    assert best_choice(replace(task, budget=5.0)) is None


def test_a_short_list_keeps_the_best_by_any_food_and_what_must_stay() -> None:
    board = scores({f"w{i}": [float(i), float(-i)] for i in range(10)})
    assert set(shortlist(board, 2).of) == {"w0", "w9"}
    assert set(shortlist(board, 3, keep=["w5"]).of) == {"w0", "w5", "w9"}
    assert shortlist(board, 10) is board


@pytest.mark.parametrize("foods", [FOODS, ("sushi", "hamburger", "caesar-salad")])
def test_the_short_list_loses_nothing_on_usual_boards(engine: Engine, foods: tuple[str, ...]) -> None:
    board = table(*foods)
    every = scores_of(board, foods, everyday(engine), engine)
    few = shortlist(every, int(engine.knowledge.constants["choice-candidates"]))
    assert len(few.of) < len(every.of)
    best, short = (best_choice(usual_task(board, s, engine, 3)) for s in (every, few))
    assert best is not None
    assert short is not None
    assert short.choice.value == pytest.approx(best.choice.value)


def test_budget_and_must_hold_on_a_shipped_board(engine: Engine) -> None:
    board, wines = table(*FOODS), everyday(engine)
    scored = shortlist(scores_of(board, FOODS, wines, engine), 40, keep=["wine/muscadet"])
    prices = {wine: 6.0 + 7 * (i % 5) for i, wine in enumerate(sorted(scored.of))}
    free = best_choice(usual_task(board, scored, engine, 3, must=["wine/muscadet"], prices=prices))
    assert free is not None
    budget = free.task.cost(free.wines) - 1.0
    task = usual_task(board, scored, engine, 3, ["wine/muscadet"], prices=prices, budget=budget)
    tight = best_choice(task)
    assert tight is not None
    assert "wine/muscadet" in tight.wines
    assert len(tight.wines) == 3
    assert task.cost(tight.wines) <= budget
    assert tight.choice.value <= free.choice.value
