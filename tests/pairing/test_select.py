"""The graph query for a guest's limits finds what a plain filter finds."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.language.frame import Preference
from assistant.pairing.engine import Engine
from assistant.pairing.glass import Glass
from assistant.pairing.select import limits_query, within_limits
from assistant.pairing.shelf import Shelf, glass_quads
from assistant.session import Session
from tests.pairing.made import GLASS_POINTS, glass

PLACES = 4


@pytest.fixture(scope="module")
def engine(session: Session) -> Engine:
    """The engine on the shipped knowledge."""
    return session.engine


def at_least(name: str, low: float) -> Preference:
    """A lower limit."""
    return Preference(name, name, low=low)


def at_most(name: str, high: float) -> Preference:
    """An upper limit."""
    return Preference(name, name, high=high)


def only(name: str, what: str = "kind") -> Preference:
    """A kind (or home) that is wanted."""
    return Preference(name, what, wanted=name)


def never(name: str, what: str = "kind") -> Preference:
    """A kind (or home) that is banned."""
    return Preference(f"no {name}", what, wanted=name, banned=True)


def value(found: Glass, name: str) -> float | None:
    """What a limit on this property looks at, to the places that are stored."""
    own = {"sugar": found.sugar_points, "alcoholPercent": found.alcohol_percent}
    number = own.get(name, found.points.get(name))
    return None if number is None else round(number, PLACES)


def keeps(found: Glass, limits: list[Preference]) -> bool:
    """The filter in plain words."""
    own = set(found.kinds) | found.homes
    for limit in limits:
        number = value(found, limit.property) if limit.wanted is None else None
        if number is not None and limit.low is not None and number < round(limit.low, PLACES):
            return False
        if number is not None and limit.high is not None and number > round(limit.high, PLACES):
            return False
        if limit.banned and limit.wanted in own:
            return False
    for what in {limit.property for limit in limits if limit.wanted and not limit.banned}:
        allowed = {p.wanted for p in limits if p.wanted and not p.banned and p.property == what}
        if not allowed & own:
            return False
    return True


def kept(glasses: Iterable[Glass], chosen: Sequence[Preference]) -> list[str]:
    """The wines of the glasses that keep to the limits, by the query."""
    glasses = list(glasses)
    found = within_limits(Shelf(glass_quads(glasses)), chosen)
    return [glass.wine for glass in glasses if glass.wine in found]


@st.composite
def limits(draw: st.DrawFn, kinds: list[str], homes: list[str]) -> list[Preference]:
    """Up to four limits of all sorts on shipped properties, kinds and homes."""
    number = st.sampled_from((*GLASS_POINTS, "sugar", "alcoholPercent"))
    bound = st.floats(0, 5) | st.integers(0, 5).map(float)
    kind, home = st.sampled_from(kinds), st.sampled_from(homes)
    one = st.one_of(
        st.builds(at_least, number, bound),
        st.builds(at_most, number, bound),
        st.builds(at_most, st.just("alcoholPercent"), st.floats(5, 20)),
        st.builds(only, kind),
        st.builds(never, kind),
        st.builds(only, home, st.just("home")),
        st.builds(never, home, st.just("home")),
    )
    return draw(st.lists(one, max_size=4))


@settings(max_examples=150, deadline=None)
@given(data=st.data())
def test_the_query_finds_what_a_plain_filter_finds(session: Session, data: st.DataObject) -> None:
    glasses = list(session.engine.glasses.values())
    kinds = sorted({kind for g in glasses for kind in g.kinds})
    homes = sorted({home for g in glasses for home in g.homes})
    chosen = data.draw(limits(kinds, homes))
    assert kept(glasses, chosen) == [g.wine for g in glasses if keeps(g, chosen)]


def test_no_limit_keeps_all_in_order(engine: Engine) -> None:
    glasses = list(engine.glasses.values())
    assert kept(glasses, []) == [g.wine for g in glasses]


def test_the_bound_itself_keeps_to_the_limit() -> None:
    glasses = [glass("a", oak=1.9999), glass("b", oak=2.0), glass("c", oak=2.0001)]
    assert kept(glasses, [at_least("oak", 2.0)]) == ["wine/b", "wine/c"]
    assert kept(glasses, [at_most("oak", 2.0)]) == ["wine/a", "wine/b"]


def test_wanted_kinds_are_an_either_or_and_bans_hold_at_once() -> None:
    glasses = [glass(name, kinds=(f"kind/{name}", "kind/wine")) for name in ("red", "white", "pink")]
    assert kept(glasses, [only("kind/red"), only("kind/pink")]) == ["wine/red", "wine/pink"]
    assert kept(glasses, [never("kind/red"), never("kind/pink")]) == ["wine/white"]
    assert kept(glasses, [only("kind/wine"), never("kind/white")]) == ["wine/red", "wine/pink"]


def test_a_glass_without_the_property_keeps_to_the_limit() -> None:
    assert kept([glass("a")], [at_least("unheardOf", 3.0)]) == ["wine/a"]


def test_limits_that_exclude_each_other_leave_nothing(engine: Engine) -> None:
    assert kept(engine.glasses.values(), [at_least("oak", 4.0), at_most("oak", 1.0)]) == []


def test_limits_are_facts_and_never_part_of_the_query() -> None:
    before = limits_query()
    kept([glass("a")], [only("kind/odd-kind"), at_least("odd", 1.25)])
    assert limits_query() == before
    assert "odd" not in before
    assert "1.25" not in before
