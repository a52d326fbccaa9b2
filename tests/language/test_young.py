"""That a guest is under age is told apart from the rest of a line, wherever it stands in it."""

from __future__ import annotations

import pytest

from assistant.language.young import young_told


def _is_wine(word: str) -> bool:
    return word.lower() in ("riesling", "chianti", "soave")


@pytest.mark.parametrize(
    ("typed", "told", "rest"),
    [
        (
            "next door's lad Josh is popping in, he's 17, can he have a small glass?",
            "Josh is 17 years old",
            "can he have a small glass?",
        ),
        (
            "Josh's mum says he's allowed a drop, he's seventeen",
            "Josh is 17 years old",
            "Josh's mum says he's allowed a drop",
        ),
        (
            "Josh from next door, seventeen, wants to try the Chianti",
            "Josh is 17 years old",
            "Josh from next door, wants to try the Chianti",
        ),
        (
            "can Josh stay for the lasagne? he's under 18",
            "Josh is under age",
            "can Josh stay for the lasagne?",
        ),
        ("josh isnt 18 yet so what does he get", "Josh is under age", "what does he get"),
        ("can my 16-year-old have the Riesling", "the youngster is 16 years old", None),
        (
            "my sixteen year old daughter Amy wants a sip",
            "Amy is 16 years old",
            "my daughter Amy wants a sip",
        ),
        ("my nephew is under 18, can he have wine", "my nephew is under age", "can he have wine"),
        (
            "Carol, 8, and Tom, 9, are coming",
            "Carol is 8 years old. Tom is 9 years old",
            "are coming",
        ),
    ],
)
def test_a_young_guest_is_told_apart(typed: str, told: str, rest: str | None) -> None:
    found = young_told(typed, _is_wine)
    assert found is not None
    assert found[0] == told
    assert rest in (None, found[1])


@pytest.mark.parametrize(
    "typed",
    [
        "Riesling is 14",
        "Dinner is 8",
        "we are 8, wines: Soave 12, Chianti 14, 16",
        "a 10 year old tawny with Stilton",
        "we've got 3 year old cheddar",
        "Theo is 30",
        "can a 17 year old drink wine at my house",
    ],
)
def test_what_else_is_counted_is_nobodys_age(typed: str) -> None:
    assert young_told(typed, _is_wine) is None
