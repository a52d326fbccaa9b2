"""The order of pouring costs least over all orders, and follows what every host knows."""

from __future__ import annotations

from itertools import pairwise, permutations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.knowledge.store import shipped
from assistant.pairing.engine import Engine
from assistant.pairing.flight import CARRIED, carry_over, order_cost, pour_order
from assistant.pairing.glass import Glass
from assistant.session import Session
from tests.pairing.made import glass

CLOSE = 1e-9
C = shipped().constants
MANY = 24


@pytest.fixture(scope="module")
def engine(session: Session) -> Engine:
    """The engine on the shipped knowledge."""
    return session.engine


def poured(engine: Engine, *wines: str) -> list[str]:
    """Local names of shipped wines in pouring order."""
    return [g.wine.removeprefix("wine/") for g in pour_order([engine.glasses[f"wine/{w}"] for w in wines], C)]


@st.composite
def flights(draw: st.DrawFn) -> list[Glass]:
    """One to six glasses with any points."""
    points = st.floats(0, 5)
    names = ("sweetness", "body", "tannin", "aroma", "alcohol", "oak")
    return [glass(f"w{i}", **{name: draw(points) for name in names}) for i in range(draw(st.integers(1, 6)))]


@settings(max_examples=150, deadline=None)
@given(flights())
def test_no_order_costs_less(glasses: list[Glass]) -> None:
    found = pour_order(glasses, C)
    least = min(order_cost(order, C) for order in permutations(glasses))
    assert order_cost(found, C) == pytest.approx(least, abs=CLOSE)
    assert sorted(g.wine for g in found) == sorted(g.wine for g in glasses)


@settings(max_examples=60, deadline=None)
@given(flights(), st.randoms())
def test_the_cost_does_not_depend_on_how_wines_were_named(glasses: list[Glass], random: Random) -> None:
    shuffled = list(glasses)
    random.shuffle(shuffled)
    assert order_cost(pour_order(shuffled, C), C) == pytest.approx(
        order_cost(pour_order(glasses, C), C), abs=CLOSE
    )


@given(flights())
def test_the_cost_of_an_order_is_that_of_its_steps(glasses: list[Glass]) -> None:
    steps = [sum(carry_over(a, b, C).values()) for a, b in pairwise(glasses)]
    assert order_cost(glasses, C) == pytest.approx(sum(steps))


@pytest.mark.parametrize("name", CARRIED)
def test_more_before_less_costs_and_less_before_more_does_not(name: str) -> None:
    more, less = glass("more", **{name: 4.0}), glass("less", **{name: 1.0})
    assert carry_over(more, less, C)[name] == pytest.approx(3.0 * C[f"carry-{name}"])
    assert order_cost([less, more], C) == 0.0
    assert pour_order([more, less], C) == [less, more]


def test_heavy_oak_before_none_costs() -> None:
    oaky, some, bare = glass("oaky", oak=3.0), glass("some", oak=1.0), glass("bare", oak=0.5)
    assert carry_over(oaky, bare, C)["oak"] > 0
    for before, after in ((oaky, some), (bare, oaky), (some, bare)):
        assert carry_over(before, after, C)["oak"] == 0


def test_nothing_and_one_wine_are_in_order() -> None:
    assert pour_order([], C) == []
    assert [g.wine for g in pour_order([glass("only")], C)] == ["wine/only"]


def test_equal_wines_stand_lighter_first() -> None:
    heavy, light = glass("b", oak=3.0), glass("a", oak=3.0)
    assert [g.wine for g in pour_order([heavy, light], C)] == ["wine/a", "wine/b"]


@pytest.mark.parametrize(
    ("wines", "wanted"),
    [
        (("ruby-port", "pinot-noir", "dry-riesling"), ["dry-riesling", "pinot-noir", "ruby-port"]),
        (("barolo", "chablis", "sauternes"), ["chablis", "barolo", "sauternes"]),
        (("cabernet-sauvignon", "muscadet"), ["muscadet", "cabernet-sauvignon"]),
        (("late-harvest-riesling", "dry-riesling"), ["dry-riesling", "late-harvest-riesling"]),
        (("barolo", "beaujolais", "pinot-grigio"), ["pinot-grigio", "beaujolais", "barolo"]),
    ],
)
def test_known_flights(engine: Engine, wines: tuple[str, ...], wanted: list[str]) -> None:
    assert poured(engine, *wines) == wanted


def test_a_long_order_keeps_every_wine_and_goes_up(engine: Engine) -> None:
    """Beyond what can be tried out in full: all wines, and no dearer than sorting by sugar and body."""
    glasses = list(engine.cellar)[:: len(engine.cellar) // MANY][:MANY]
    ordered = pour_order(glasses, C)
    plain = sorted(glasses, key=lambda g: (g.points["sweetness"], g.points["body"]))
    assert sorted(g.wine for g in ordered) == sorted(g.wine for g in glasses)
    assert order_cost(ordered, C) <= order_cost(plain, C)


def test_dry_bubbles_come_before_an_off_dry_wine(engine: Engine) -> None:
    found = poured(engine, "off-dry-riesling", "brut-sparkling", "pinot-noir", "malbec")
    assert found.index("brut-sparkling") < found.index("off-dry-riesling")


@pytest.mark.parametrize("bubbles", ["cremant", "champagne", "prosecco"])
def test_bubbles_open_whatever_else_is_poured(engine: Engine, bubbles: str) -> None:
    others = ("albarino", "dry-riesling", "beaujolais", "dry-sparkling-red", "ruby-port")
    found = poured(engine, *others, bubbles)
    assert found[0] == bubbles
    assert found[-1] == "ruby-port"


def test_bubbles_for_dessert_do_not_open(engine: Engine) -> None:
    assert poured(engine, "moscato-d-asti", "gavi", "barbera")[-1] == "moscato-d-asti"


def test_dry_bubbles_carry_nothing_but_sugar() -> None:
    bubbles = glass("bubbles", bubbles=4.0, body=4.0, aroma=4.0, alcohol=4.0, sweetness=0.5)
    still = glass("still", body=1.0, aroma=1.0, alcohol=1.0)
    assert sum(carry_over(bubbles, still, C).values()) == 0.0
    assert carry_over(glass("sweet", bubbles=4.0, sweetness=4.0, body=4.0), still, C)["body"] > 0


def test_old_comes_before_young_where_it_is_fragile(engine: Engine) -> None:
    assert poured(engine, "claret", "mature-claret")[0] == "mature-claret"
    old, young = glass("old", maturity=4.0), glass("young", maturity=1.0)
    assert carry_over(young, old, C)["maturity"] > 0
    assert carry_over(old, young, C)["maturity"] == 0


def test_an_old_wine_is_fragile_from_the_constant_on() -> None:
    young, least = glass("young", maturity=1.0), C["fragile-from"]
    at_least = carry_over(young, glass("old", maturity=least), C)["maturity"]
    assert at_least == pytest.approx(C["carry-maturity"] * (least - 1.0))
    assert carry_over(young, glass("old", maturity=least - 0.01), C)["maturity"] == 0
    under = C["fragile-under"]
    strong, light = (glass("old", maturity=4.0, percent=p) for p in (under, under - 0.1))
    assert carry_over(young, strong, C)["maturity"] == 0 < carry_over(young, light, C)["maturity"]


def test_a_fortified_wine_is_not_fragile(engine: Engine) -> None:
    assert poured(engine, "tawny-port", "claret")[-1] == "tawny-port"
