"""Times of day in words."""

from __future__ import annotations

import pytest

from assistant.language.clock import in_digits


@pytest.mark.parametrize(
    ("typed", "written"),
    [
        ("dinner for six on friday at eight", "dinner for six on friday at 8"),
        ("saturday, half past seven", "saturday, 7:30"),
        ("at a quarter to one", "at 12:45"),
        ("from Quarter past  8", "from 8:15"),
        ("at seven thirty", "at 7:30"),
        ("at 7", "at 7"),
        ("six wines for eight people", "six wines for eight people"),
        ("half past", "half past"),
    ],
)
def test_a_time_in_words_is_written_in_digits(typed: str, written: str) -> None:
    assert in_digits(typed) == written
