"""The courses of the W3C food example: most picks have the colour and the sugar it asks for.

Source: the wine and food example of the OWL Guide and the OWL Test Cases, W3C Recommendations of
10 February 2004 (reference/w3c_owl_guide_courses.csv). Body and flavour are not looked at, so its
full-bodied wine for shellfish and its light and delicate wine for duck and goose play no part.
"""

from __future__ import annotations

import pytest

from assistant.session import Session
from tests import w3c_courses as w3c
from tests.w3c_courses import COLOUR, PLACES, SUGAR, Answered

RIGHT_AT_LEAST = 0.85
DEFENDED: dict[str, dict[str, str]] = {
    COLOUR: {
        "beef curry": "the example asks for a full red, whose alcohol and grip sharpen chilli",
        "spicy tomato pasta (fra diavolo)": "a full red once more, beside chilli",
        "turkey": "the example allows white only; light reds are served with it as a custom",
    },
    SUGAR: {
        "oysters": "the example asks for a sweet wine; dry, sharp whites are what every other source names",
    },
}


@pytest.fixture(scope="module")
def answered() -> list[Answered]:
    """All courses with their picks."""
    return w3c.answers(Session(top=PLACES))


def test_defended_courses_are_in_the_table() -> None:
    foods = {course.food for course in w3c.read_courses()}
    assert all(foods.issuperset(courses) for courses in DEFENDED.values())
    assert foods.issuperset(w3c.WORDS)


def test_every_course_is_read(answered: list[Answered]) -> None:
    unread = [f"{a.course.question} left out {a.left_out}" for a in answered if a.left_out]
    short = [a.course.question for a in answered if len(a.places) != PLACES]
    assert not [*unread, *short]


@pytest.mark.parametrize("aspect", [COLOUR, SUGAR])
def test_picks_have_what_the_course_asks_for(aspect: str, answered: list[Answered]) -> None:
    places = w3c.counted(answered, aspect, DEFENDED[aspect])
    share = w3c.share_right(places, aspect)
    found = f"{aspect}: {share:.3f} of {len(places)} places right\n{w3c.misses(places, aspect)}"
    print(found)
    assert share >= RIGHT_AT_LEAST, found
