"""Drinks without alcohol are scored for the food as wines are."""

from __future__ import annotations

import pytest

from assistant.evening.alcohol_free import MOST_ALCOHOL, alcohol_free_drinks, drinks_for
from assistant.evening.choose_make import scores_of
from assistant.pairing.engine import Engine
from tests.evening.made import table

FOODS = ("brie", "salami", "dark-chocolate-70")
PLATES, EVEN = [table(food) for food in FOODS], [1.0] * len(FOODS)


def test_every_drink_is_nearly_free_of_alcohol(engine: Engine) -> None:
    drinks = alcohol_free_drinks(engine)
    assert len(drinks) > 40
    assert all(engine.glasses[d].alcohol_percent <= MOST_ALCOHOL for d in drinks)
    assert not any(engine.knowledge.wines[d].type == "Wine" for d in drinks)


def test_each_food_has_the_best_of_the_flight(engine: Engine) -> None:
    found = drinks_for(PLATES, FOODS, EVEN, engine, 2)
    flight = [why.wine for why in found]
    assert len(set(flight)) == 2
    assert sorted(food for why in found for food in why.foods) == sorted(FOODS)
    scores = scores_of(table(*FOODS), FOODS, flight, engine)
    for why in found:
        for food in why.foods:
            row = [scores.of[drink][FOODS.index(food)] for drink in flight]
            assert scores.of[why.wine][FOODS.index(food)] == pytest.approx(max(row))
        assert why.own.score == pytest.approx(max(scores.of[why.wine]))
        assert why.own.verdict == scores.verdict(why.own.score)


def test_what_a_guest_may_not_have_is_left_out(engine: Engine) -> None:
    first = {c.wine for c in drinks_for(PLATES, FOODS, EVEN, engine, 3)}
    second = {c.wine for c in drinks_for(PLATES, FOODS, EVEN, engine, 3, leave_out=first)}
    assert first
    assert second
    assert first.isdisjoint(second)
    assert drinks_for(PLATES, FOODS, EVEN, engine, 3, leave_out=alcohol_free_drinks(engine)) == []
    assert drinks_for([], (), (), engine, 3) == []
