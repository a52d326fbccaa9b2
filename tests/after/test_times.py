"""Times, temperatures and fills as people say them."""

from __future__ import annotations

from datetime import date, datetime

import pytest

from assistant.after.opened import fill_said, lasts
from assistant.after.times import celsius_said, days_open, minutes_out
from assistant.knowledge.concepts import Amount
from assistant.language.fold import key

NOW = datetime(2026, 11, 27, 22, 15)  # a Friday


@pytest.mark.parametrize(
    ("said", "minutes"),
    [
        ("brie out since 7, it's 10 now", 180),
        ("out from 7:30 till 9", 90),
        ("brie out since 11pm, it's 1am", 120),
        ("out since 19:00, now 21:30", 150),
        ("the eel stands since 19:30, now is 22:00", 150),
        ("out since 9", 75),
        ("out since 8pm", 135),
        ("out since noon", 615),
        ("two and a half hours out", 150),
        ("an hour and a half on the table", 90),
        ("half an hour out", 30),
        ("out 1h30", 90),
        ("3h out", 180),
        ("out a couple of hours", 120),
        ("it was out 90 mins", 90),
        ("left out overnight", 600),
        ("how long has the brie been out", None),
        ("half a ham left out", None),
        ("out since half past six, it is ten past nine now", 160),
        ("out since half six, now quarter past nine", 165),
        ("out since ten to seven, it's 5 to 9 now", 125),
        ("out since twenty-five minutes to eight, it is now a quarter to nine", 70),
        ("out from ten to twelve", 120),
        ("out since seven, it is nine now", 120),
        ("out since half past noon", 615),
        ("out for a quarter of an hour", 15),
        ("three quarters of an hour out", 45),
        ("out one and a half hours", 90),
        ("half hour out", 30),
    ],
)
def test_minutes_out(said: str, minutes: float | None) -> None:
    assert minutes_out(said, NOW) == minutes


@pytest.mark.parametrize(
    ("said", "days"),
    [
        ("my wine's 3 days open", 3),
        ("open since tuesday", 3),
        ("open since friday", 7),
        ("opened two weeks ago", 14),
        ("opened yesterday", 1),
        ("half a cab how long", None),
    ],
)
def test_days_open(said: str, days: float | None) -> None:
    assert days_open(said, date(2026, 11, 27)) == days


@pytest.mark.parametrize(
    ("said", "celsius"),
    [("it's 35C here", 35), ("95 F in the shade", 35), ("at 33 degrees", 33), ("since 7, it's 10", None)],
)
def test_celsius(said: str, celsius: float | None) -> None:
    found = celsius_said(said)
    assert found is None if celsius is None else found == pytest.approx(celsius)


def test_the_emptier_the_bottle_the_shorter_it_keeps() -> None:
    keeping = Amount(3.0, 4.0, 5.0, "recalled", "common practice")
    fills = [fill_said(key(said)) for said in ("a quarter left", "half of it left", "nearly full")]
    assert fills == ["low", "half", "full"]
    assert [lasts(keeping, fill) for fill in fills] == [3.0, 4.0, 5.0]
