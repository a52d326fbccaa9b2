"""Pouring and eating: why each step stands where it does, and what breaks where neighbours change."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations, permutations
from random import Random

import pytest

from assistant.evening.flight_reasons import steps, swapped
from assistant.evening.food_order import LINGERING, eating_order, least_lingering, lingers
from assistant.knowledge.store import shipped
from assistant.pairing.dish import single
from assistant.pairing.engine import Engine
from assistant.pairing.flight import order_cost, pour_order
from assistant.session import Session
from tests.pairing.made import glass, plate

C = shipped().constants


def test_each_pour_has_its_reason() -> None:
    light, big, sweet = glass("a"), glass("b", tannin=4.0, body=3.0), glass("c", sweetness=4.0, body=4.0)
    found = steps([sweet, light, big], C)
    assert [(s.wine, s.reason) for s in found] == [
        ("wine/a", "tannin"),
        ("wine/b", "sweetness"),
        ("wine/c", "last-sweetness"),
    ]
    assert [s.place for s in found] == ["", "", "closes"]


def test_one_wine_stands_alone_and_equals_are_alike() -> None:
    assert [s.reason for s in steps([glass("a")], C)] == ["alone"]
    assert [s.reason for s in steps([glass("a"), glass("b")], C)] == ["alike", "last-alike"]


def test_dry_bubbles_open_or_restart_and_sweet_ones_close() -> None:
    dry, still = glass("dry", bubbles=5.0, body=1.0), glass("still", body=2.0)
    light = glass("light", body=0.5)
    sweet = glass("sweet", bubbles=4.0, sweetness=4.0)
    assert [s.place for s in steps([still, dry], C)] == ["opens", ""]
    assert [s.place for s in steps([still, dry, light], C)] == ["opens", "", ""]
    red = replace(dry, colour="colour/red")
    assert [s.place for s in steps([still, red, light], C)] == ["", "restarts", ""]
    assert [s.place for s in steps([still, sweet], C)] == ["", "closes"]


@pytest.mark.parametrize("seed", range(20))
def test_what_a_swap_breaks_is_what_the_order_then_costs_more(seed: int) -> None:
    random = Random(seed)
    names = ("sweetness", "body", "tannin", "aroma", "alcohol", "oak")
    glasses = [glass(f"w{i}", **{n: random.uniform(0, 5) for n in names}) for i in range(4)]
    ordered = pour_order(glasses, C)
    for at, broken in enumerate(swapped(ordered, C)):
        other = list(ordered)
        other[at], other[at + 1] = other[at + 1], other[at]
        assert broken.cost == pytest.approx(order_cost(other, C) - order_cost(ordered, C), abs=1e-5)
        assert broken.cost >= 0
        assert (broken.first, broken.second) == (ordered[at].wine, ordered[at + 1].wine)


def test_the_mechanism_of_a_swap_is_the_one_that_grows_most() -> None:
    ordered = [glass("dry"), glass("sweet", sweetness=4.0, body=1.0)]
    assert [b.mechanism for b in swapped(ordered, C)] == ["sweetness"]
    assert swapped([glass("only")], C) == []


def test_brut_bubbles_come_before_dry_still_wine(engine: Engine) -> None:
    """Their trace of sugar makes no dry wine sour."""
    wines = ("nebbiolo", "brut-sparkling", "sauternes", "moscato-d-asti")
    ordered = pour_order([engine.glasses[f"wine/{w}"] for w in wines], C)
    assert [g.wine for g in ordered][:2] == ["wine/brut-sparkling", "wine/nebbiolo"]


@pytest.mark.parametrize("seed", range(20))
def test_no_order_of_eating_lets_less_linger(seed: int) -> None:
    random = Random(seed)
    size = random.randint(1, 6)
    cost = [[random.uniform(0, 5) for _ in range(size)] for _ in range(size)]

    def total(order: tuple[int, ...]) -> float:
        return sum(cost[a][b] for a, b in combinations(order, 2))

    found = least_lingering(cost)
    assert total(tuple(found)) == pytest.approx(min(map(total, permutations(range(size)))))


@pytest.mark.parametrize("name", LINGERING)
def test_more_lingers_over_less_and_never_the_other_way(name: str) -> None:
    more, less = plate(**{name: 4.5}), plate(**{name: 2.0})
    assert lingers(more, less, C)[name] == pytest.approx(2.5 * C[f"linger-{name}"])
    assert lingers(less, more, C)[name] == 0
    assert eating_order([more, less], C)[0].food == 1
    assert eating_order([more, less], C)[0].reason == name


@pytest.mark.parametrize(
    "foods",
    [
        ("fresh-goat-cheese", "brie", "epoisses", "dark-chocolate-70"),
        ("mozzarella", "gouda", "stilton", "honey"),
        ("brie", "pork-vindaloo", "tiramisu"),
    ],
)
def test_mild_comes_before_strong_and_sweet_last(engine: Engine, foods: tuple[str, ...]) -> None:
    named = [f"food/{food}" for food in foods]
    for shuffled in permutations(named):
        plates = [engine.plate(single(food)) for food in shuffled]
        assert [shuffled[step.food] for step in eating_order(plates, C)] == named


def test_a_long_table_is_eaten_whole_and_sweet_last(engine: Engine) -> None:
    foods = [
        f for f in engine.knowledge.members("kind/cheese") if "Kind" not in engine.knowledge.entry(f)["type"]
    ]
    foods = ["food/honey", *foods[:14]]
    found = eating_order([engine.plate(single(food)) for food in foods], C)
    assert sorted(step.food for step in found) == list(range(len(foods)))
    assert found[-1].food == 0


def test_a_wine_that_is_not_known_is_told_and_the_rest_is_ordered(conversation: Session) -> None:
    conversation.new_conversation()
    one = conversation.ask("what order for chianti and blorx")
    assert "“blorx”" in one.say
    assert not one.understood
    two = conversation.ask("what order for chianti, blorx and riesling")
    assert (two.say, two.left_out) == ("Pour dry Riesling first, Chianti last.", ("blorx",))


def test_one_wine_alone_needs_no_order(conversation: Session) -> None:
    conversation.new_conversation()
    answer = conversation.ask("in what order: chianti")
    assert "needs no order" in answer.say
    assert answer.understood
