"""Times of day in words."""

from __future__ import annotations

from datetime import datetime

import pytest

from assistant.language.clock import clock_in_digits
from assistant.language.starting import starts_at

NOW = datetime(2026, 11, 26, 12, 0)  # a Thursday


@pytest.mark.parametrize(
    ("typed", "written"),
    [
        ("at eight", "at 8"),
        ("half past seven", "7:30"),
        ("at a quarter to one", "at 12:45"),
        ("from Quarter past  8", "from 8:15"),
        ("at seven thirty", "at 7:30"),
        ("at half seven", "at 7:30"),
        ("ten to nine", "8:50"),
        ("at seven ten minutes", "at 7 10 minutes"),
        ("at 7", "at 7"),
        ("half past", "half past"),
    ],
)
def test_a_time_in_words_is_written_in_digits(typed: str, written: str) -> None:
    assert clock_in_digits(typed) == written


@pytest.mark.parametrize(
    ("typed", "start"),
    [
        ("dinner for six on friday at eight", datetime(2026, 11, 27, 20, 0)),
        ("six wines for eight people on saturday, half past seven", datetime(2026, 11, 28, 19, 30)),
        ("tonight at seven thirty for ten", datetime(2026, 11, 26, 19, 30)),
        ("six wines for eight people on saturday", None),
    ],
)
def test_the_start_of_an_evening_is_heard_in_words(typed: str, start: datetime | None) -> None:
    assert starts_at(clock_in_digits(typed), NOW) == start
