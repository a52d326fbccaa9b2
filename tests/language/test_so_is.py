"""What is told of one guest and then of others too is told of each in full."""

from __future__ import annotations

import pytest

from assistant.language.guests import Asked, all_asked


@pytest.mark.parametrize(
    ("typed", "guests", "need"),
    [
        ("Priya is vegetarian and so is Helen", ("Priya", "Helen"), "vegetarian"),
        ("Priya's vegan, as is Helen", ("Priya", "Helen"), "vegan"),
        ("Mo is coeliac and so are Di and Cy", ("Mo", "Di", "Cy"), "coeliac"),
        ("Bo can't eat nuts, same for Cy", ("Bo", "Cy"), "can't eat nuts"),
        ("Priya and Helen are both vegetarian", ("Priya", "Helen"), "vegetarian"),
        ("both Priya and Helen are vegetarian", ("Priya", "Helen"), "vegetarian"),
        ("so Priya is pregnant and so is Helen too", ("Priya", "Helen"), "pregnant"),
    ],
)
def test_each_guest_is_told_of(typed: str, guests: tuple[str, ...], need: str) -> None:
    assert all_asked(typed) == tuple(Asked(guest, need) for guest in guests)


@pytest.mark.parametrize("typed", ["the Chianti is dry and so is the Soave", "so is Helen coming"])
def test_what_is_asked_or_told_of_wines_is_no_need(typed: str) -> None:
    assert not all_asked(typed)
