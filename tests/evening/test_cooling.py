"""Chilling against measurements, serving bands against the published ones."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.evening.cooling import constant, degrees_after, minutes_to, places
from assistant.evening.facts import fact, tables
from assistant.evening.records import Measured
from assistant.evening.temperatures import band, temperatures
from assistant.knowledge.store import shipped
from assistant.session import Session
from tests.evening.made import evening, rows

ROOM, COLD, FIFTY = 23.89, 3.33, 10.0  # 75 F, 38 F and 50 F
SPREAD = 0.5  # the table itself says to expect as much
COOLING = rows("cooling")
SERVED = rows("wine_serving_temperatures")
WINE_FREEZES = -5.0  # °C, the highest at which wine of 12 to 13 % begins to (recalled)
NO_ADVICE = "not a recommendation"


@pytest.mark.parametrize(
    ("start", "end", "around", "minutes"),
    [
        (10.0, 15.0, 4.0, 30.0),
        (21.0, 21.0, 4.0, 30.0),
        (21.0, 4.0, 4.0, 30.0),
        (4.0, 4.0, 4.0, 30.0),
        (21.0, 9.0, 4.0, 0.0),
    ],
)
def test_a_bottle_that_cannot_have_gone_so_has_no_constant(
    start: float, end: float, around: float, minutes: float
) -> None:
    with pytest.raises(ValueError, match="no bottle goes that way"):
        constant(start, end, around, minutes)


def measured(condition: str, item: str) -> float:
    """Minutes of a measurement."""
    return next(float(r["value"]) for r in COOLING if condition in r["condition"] and item in r["item"])


@pytest.mark.parametrize(
    ("place", "condition", "item", "start", "end"),
    [
        ("ice", "50-50 ice", "75 F -> 38 F", ROOM, COLD),
        ("freezer", "freezer", "75 F -> 38 F", ROOM, COLD),
        ("salted-ice", "1 cup salt", "75 F -> 38 F", ROOM, COLD),
        ("freezer", "freezer", "room -> 50 F", 22.2, FIFTY),
        ("salted-ice", "salted ice water", "room -> 50 F", 22.2, FIFTY),
    ],
)
def test_within_the_spread_of_measurements(
    place: str, condition: str, item: str, start: float, end: float
) -> None:
    found = places()[place]
    minutes = minutes_to(start, end, found.celsius, found.k)
    told = measured(condition, item)
    assert minutes == pytest.approx(told, rel=SPREAD)
    slow, fast = (minutes_to(start, end, found.celsius, k) or 0.0 for k in (found.slow, found.fast))
    assert fast <= told * 1.05
    assert told <= slow * 1.05


def test_the_fridge_takes_what_the_rule_of_thumb_says() -> None:
    low, high = (float(v) for v in next(r["value"] for r in COOLING if "fridge" in r["condition"]).split("-"))
    found = places()["fridge"]
    minutes = minutes_to(21.0, 9.0, found.celsius, found.k) or 0.0
    assert low <= minutes <= high


def test_the_constant_of_the_measured_bath() -> None:
    """From 75 F to 38 F in 105 minutes at 32 F, as the table works it out."""
    told = next(float(r["value"]) for r in COOLING if r["item"] == "k plain ice water")
    assert constant(ROOM, COLD, 0.0, 105.0) == pytest.approx(told, rel=0.002)
    assert places()["ice"].slow == pytest.approx(told, rel=0.002)


def test_one_observation_sets_the_constant(session: Session) -> None:
    """25 minutes from 21 to 10 in the bucket: the plan then says 25 for that way."""
    seen = Measured("ice", 21.0, 10.0, 25.0)
    found = places([seen])["ice"]
    assert minutes_to(21.0, 10.0, found.celsius, found.k) == pytest.approx(25.0)
    usual, own = (
        temperatures(evening(session, measured=m), session.knowledge)[0]
        for m in ((), (Measured("fridge", 21.0, 8.5, 300.0),))
    )
    assert own.minutes_fridge == 300
    assert usual.minutes_fridge is not None
    assert usual.minutes_fridge < 300


@given(
    start=st.floats(12.0, 40.0),
    end=st.floats(5.0, 11.0),
    around=st.floats(-20.0, 4.0),
    k=st.floats(0.001, 0.1),
)
def test_time_and_degrees_agree(start: float, end: float, around: float, k: float) -> None:
    minutes = minutes_to(start, end, around, k)
    assert minutes is not None
    assert degrees_after(start, minutes, around, k) == pytest.approx(end, abs=1e-6)
    assert constant(start, end, around, minutes) == pytest.approx(k)


@pytest.mark.parametrize("impossible", [(10.0, 21.0, 4.0, 9.0), (21.0, 3.0, 4.0, 9.0), (21.0, 9.0, 4.0, 0.0)])
def test_no_bottle_goes_that_way(impossible: tuple[float, float, float, float]) -> None:
    with pytest.raises(ValueError, match="no bottle"):
        constant(*impossible)


def test_a_place_too_warm_never_gets_there() -> None:
    assert minutes_to(21.0, 3.0, 4.0, 0.01) is None
    assert minutes_to(8.0, 10.0, 4.0, 0.01) == 0.0


def test_a_sparkling_bottle_never_freezes(session: Session) -> None:
    sparkling, _, red = temperatures(evening(session), session.knowledge)
    assert sparkling.sparkling
    assert sparkling.minutes_freezer is None
    assert "burst" in sparkling.note
    nearly = temperatures(evening(session, room_celsius=11.0), session.knowledge)[0]
    assert nearly.minutes_ice
    assert nearly.minutes_freezer is None
    assert red.minutes_freezer is not None


def test_a_cool_room_needs_no_fridge(session: Session) -> None:
    red = temperatures(evening(session, room_celsius=17.0), session.knowledge)[2]
    assert (red.minutes_fridge, red.minutes_ice) == (0, 0)


@pytest.mark.parametrize(
    ("kind", "wanted"),
    [
        ("sparkling-wine", ("white sparkling", "sparkling", "Champagne", "red sparkling")),
        (
            "light-red",
            ("light-bodied red (and Provence rose)", "light-bodied red", "light young red; fine dry white"),
        ),
        ("full-red", ("full-bodied red", "medium to full-bodied red", "red")),
        ("crisp-white", ("aromatic light-bodied white", "light-bodied white", "white")),
        ("textured-white", ("full-bodied white", "medium to full-bodied white", "medium-bodied white")),
        ("dry-rose", ("rose",)),
    ],
)
def test_serving_bands_lie_in_the_published_span(kind: str, wanted: tuple[str, ...]) -> None:
    """What a common style of the kind is aimed at lies within what the sources give for its class."""
    knowledge = shipped()
    told = [r for r in SERVED if r["wine_class"] in wanted and r["examples"] != NO_ADVICE]
    low, high = min(float(r["c_low"]) for r in told), max(float(r["c_high"]) for r in told)
    styles = [knowledge.wines[s] for s in knowledge.styles_of(f"kind/{kind}")]
    common = [w for w in styles if w.availability == 3 and w.type == "Wine"]
    assert common
    assert {w.id for w in common if not low <= band(w)[1] <= high} == set()


def test_the_alarm_rings_before_any_wine_freezes() -> None:
    """Even with the fastest constant and the coldest freezer."""
    alarm = fact("cooling", "limits", "freezer_alarm").high
    coldest = tables("cooling")["place"][3]["celsius"]["low"]
    reached = degrees_after(18.0, alarm, coldest, places()["freezer"].fast)
    assert reached > WINE_FREEZES


def test_a_glass_warms_as_the_trade_says() -> None:
    """From 8 to 12 degrees in some 17 minutes in a room of 22."""
    glass = places((), 22.0)["glass"]
    assert minutes_to(8.0, 12.0, glass.celsius, glass.k) == pytest.approx(17.0, abs=0.5)
