"""The backwards clock, the two-hour limit and the rescue."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.evening.clock import early
from assistant.evening.numbers import local, numbers
from assistant.evening.outside import limit_minutes, rest_minutes
from assistant.knowledge.diets import holds
from assistant.session import Session
from tests.evening.made import FOODS, START, WINES, evening, rows

LABELS = (*WINES, "Sauternes", "vintage port", "oaked Chardonnay", "dry rosé", "Nebbiolo", "Pinot Noir")
slow = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


def at(plan: dict[str, Any], *words: str) -> datetime:
    """The moment of the first task with all these words."""
    row = next(row for row in plan["clock"] if all(word in row["task"] for word in words))
    return datetime.fromisoformat(row["at"])


@slow
@given(
    wines=st.lists(st.sampled_from(LABELS), unique=True, max_size=6),
    foods=st.lists(st.sampled_from(FOODS), unique=True, max_size=5),
    meal=st.sampled_from(("tasting", "supper")),
    room=st.floats(5.0, 45.0),
    start=st.datetimes(datetime(1980, 1, 1), datetime(2100, 1, 1)),
)
def test_the_clock_is_in_order(
    session: Session, wines: list[str], foods: list[str], meal: str, room: float, start: datetime
) -> None:
    plan = numbers(evening(session, wines, foods, meal=meal, room_celsius=room, start=start), session)
    moments = [datetime.fromisoformat(row["at"]) for row in plan["clock"]]
    assert moments == sorted(moments)
    for wine in wines:
        assert at(plan, "pour wine", wine) > start


@pytest.mark.parametrize(("minute", "down"), [(0, 0), (4, 0), (5, 5), (59, 55)])
def test_moments_are_rounded_down_to_five_minutes(minute: int, down: int) -> None:
    assert early(datetime(2027, 2, 12, 18, minute, 42, 7)) == datetime(2027, 2, 12, 18, down)


def test_every_step_of_a_wine_comes_in_turn(session: Session) -> None:
    plan = numbers(evening(session), session)
    for wine in WINES:
        pour = at(plan, "pour wine", wine)
        row = next(t for t in plan["temperatures"] if t["wine"] == wine)
        into = at(plan, "put", wine, "in the fridge")
        assert pour - into >= timedelta(minutes=row["minutes_fridge"])
    assert at(plan, "put", "Malbec") < at(plan, "take Malbec") <= at(plan, "decant", "Malbec")
    assert at(plan, "open every still bottle") < START < at(plan, "pour wine 1")


def test_pours_keep_the_pace(session: Session) -> None:
    plan = numbers(evening(session), session)
    first, second, third = (at(plan, f"pour wine {n}") for n in (1, 2, 3))
    assert first == START + timedelta(minutes=8)
    assert second - first == third - second == timedelta(minutes=12)


def test_no_wine_is_opened_that_stands_under_pressure(session: Session) -> None:
    plan = numbers(evening(session, wines=("brut sparkling",)), session)
    assert not [row for row in plan["clock"] if "open every still bottle" in row["task"]]
    assert "towel over the cork" in next(r["task"] for r in plan["clock"] if "pour wine 1" in r["task"])


@pytest.mark.parametrize("room", [21.0, 33.0])
@pytest.mark.parametrize("meal", ["tasting", "supper"])
def test_food_is_never_out_longer_than_the_limit(session: Session, room: float, meal: str) -> None:
    hours = {r["number"] for r in rows("food_safety") if r["topic"] == "time out of temperature control"}
    limit = min(map(float, hours)) if room > 32.0 else max(map(float, hours))
    plan = numbers(evening(session, room_celsius=room, meal=meal), session)
    for food in ("cheddar", "brie", "salami"):
        out, away = at(plan, "take", food, "fridge"), at(plan, "away", food)
        assert away - out == timedelta(hours=limit)
        assert out <= START
    assert limit_minutes(room) == limit * 60.0


def test_cheese_rests_as_published(session: Session) -> None:
    row = next(r for r in rows("event_quantities") if r["quantity"] == "cheese rest")
    rests = {f.label: rest_minutes(f, session.knowledge) for f in evening(session).foods}
    assert rests["cheddar"] == float(row["high"])
    assert rests["brie"] is not None
    assert 30.0 <= rests["brie"] <= 45.0
    assert rests["almonds"] is None
    assert rests["crackers"] is None


@pytest.mark.parametrize(
    "food", ["tiramisu", "trifle", "cheesecake", "potato salad", "melon", "rice pudding"]
)
def test_what_nobody_says_keeps_outside_is_taken_to_spoil(session: Session, food: str) -> None:
    (line,) = evening(session, foods=(food,)).foods
    assert rest_minutes(line, session.knowledge) is not None


def test_nothing_with_raw_egg_or_fish_keeps_outside(session: Session) -> None:
    known, raw = session.knowledge, {"care/raw-egg", "care/raw-fish", "care/raw-meat"}
    foods = [food for food in known.of_type("Food") if raw & holds(food, known)[0]]
    assert foods
    (line,) = evening(session, foods=("brie",)).foods
    (dish,) = line.dishes
    lines = {
        food: replace(line, dishes=(replace(dish, parts=(replace(dish.main, food=food),)),)) for food in foods
    }
    assert [food for food, made in lines.items() if rest_minutes(made, known) is None] == []


def test_an_old_wine_is_stood_up_the_day_before(session: Session) -> None:
    told = numbers(evening(session, wines=("mature Barolo", "vintage port", "Malbec")), session)["clock"]
    task = next(row for row in told if "upright" in row["task"])
    assert task["at"].startswith("2027-02-11")
    assert "Malbec" not in task["task"]


def test_without_a_start_there_is_no_clock(session: Session) -> None:
    plan = numbers(evening(session, start=None), session, now=START)
    assert plan["clock"] == plan["rescue"] == []
    assert plan["bottles"]


def test_an_evening_far_off_needs_no_rescue(session: Session) -> None:
    assert numbers(evening(session), session, now=START - timedelta(days=3))["rescue"] == []
    assert numbers(evening(session), session, now=START + timedelta(days=3))["rescue"] == []
    assert (
        "last wine" in numbers(evening(session), session, now=START + timedelta(hours=2))["rescue"][0]["task"]
    )


@pytest.mark.parametrize(
    ("minutes", "place"),
    [(-200, ""), (-120, "ice and water"), (-14, "salt"), (5, "pour it last")],
)
def test_the_gentlest_place_that_still_does_it(session: Session, minutes: int, place: str) -> None:
    """A bottle of bubbles that nobody chilled, so long before the start."""
    made = evening(session, wines=("brut sparkling",))
    told = numbers(made, session, now=START + timedelta(minutes=minutes))["rescue"]
    found = [row["task"] for row in told if row["task"].startswith("brut sparkling")]
    assert [place in task for task in found] == ([True] if place else [])
    assert not [task for task in found if "freezer" in task]


def test_no_bottle_stays_in_the_freezer_beyond_the_alarm(session: Session) -> None:
    for label in LABELS:
        for row in numbers(evening(session, wines=(label,)), session)["temperatures"]:
            assert (row["minutes_freezer"] or 0) <= 45


def test_late_steps_are_told(session: Session) -> None:
    told = numbers(evening(session), session, now=START - timedelta(minutes=5))["rescue"]
    assert any(row["task"].startswith("late: open every still bottle") for row in told)


def test_a_wine_that_should_be_in_the_decanter_is_named(session: Session) -> None:
    plan = numbers(evening(session), session)
    pour, air = at(plan, "pour wine", "Malbec"), at(plan, "decant", "Malbec")
    for now, late in ((air - timedelta(minutes=1), 0), (air + timedelta(minutes=6), 1), (pour, 1)):
        told = [row["task"] for row in numbers(evening(session), session, now=now)["rescue"]]
        found = [task for task in told if "too late for a decanter" in task]
        assert len(found) == late, now
        assert all(task.startswith("Malbec: ") for task in found)


def test_now_is_told_in_the_time_of_the_evening(session: Session) -> None:
    abroad = replace(evening(session), zone=datetime.fromisoformat("2027-02-12T19:00:00-05:00").tzinfo)
    assert local(datetime.fromisoformat("2027-02-12T23:30:00+00:00"), abroad) == datetime(2027, 2, 12, 18, 30)


def test_food_may_stand_until_the_last_wine_is_tasted(session: Session) -> None:
    """An hour of rest and five wines outlast two hours; the cheese then comes out later."""
    wines = ("brut sparkling", "off-dry Riesling", "Malbec", "Pinot Noir", "Sauternes")
    plan = numbers(evening(session, wines=wines), session)
    assert at(plan, "away", "cheddar") >= at(plan, "pour wine 5") + timedelta(minutes=12)
    assert START - timedelta(minutes=60) < at(plan, "take", "cheddar") <= START
