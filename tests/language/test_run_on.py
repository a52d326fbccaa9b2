"""Needs dictated in one breath are put apart guest by guest."""

from __future__ import annotations

import pytest

from assistant.language.guests import all_told
from assistant.language.run_on import parted


@pytest.mark.parametrize(
    ("typed", "guests"),
    [
        (
            "14 people for a potluck two are teenagers one is driving my uncle's diabetic becca's allergic "
            "to shellfish and dana's in recovery",
            ["two", "", "my uncle", "Becca", "Dana"],
        ),
        ("priya is vegan jo is coeliac tom doesn't drink", ["Priya", "Jo", "Tom"]),
        ("my sister is pregnant my brother in law has diabetes", ["my sister", "my brother in law"]),
        ("one of them is driving priya has a nut allergy", ["one of them", "Priya"]),
    ],
)
def test_each_guest_of_a_line_without_stops_is_told_of(typed: str, guests: list[str]) -> None:
    told = all_told(typed)
    assert [one.guest for one in told.asked] == guests
    assert not told.unread


@pytest.mark.parametrize(
    "typed",
    [
        "the brie is vegan",
        "Tom and Mo are driving",
        "Lena's husband is vegan",
        "my friend Dana is vegan",
        "uncle Bob has diabetes",
        "Priya says she is vegan",
        "Jo is allergic to nuts and shellfish",
    ],
)
def test_what_is_told_of_one_guest_stays_together(typed: str) -> None:
    assert parted(typed) == typed
