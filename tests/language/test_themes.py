"""A place that several wines are to come from, and one that is only a kitchen's."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture(scope="module")
def session() -> Session:
    return Session()


@pytest.mark.parametrize(
    ("said", "limit"),
    [
        ("let's have a mini tour of Spain in five glasses, you choose", "from Spain"),
        ("our tasting next month is Portugal. shortlist please, all price points", "from Portugal"),
        ("an evening about the Loire, from the invite to the washing up", "from Loire"),
    ],
)
def test_wines_come_from_the_place_that_is_the_theme(session: Session, said: str, limit: str) -> None:
    frame = session.parser.parse(said)
    assert limit in [preference.label for preference in frame.preferences]
    assert frame.text.left_out == ()


@pytest.mark.parametrize(
    "said",
    [
        "help me fill six holes in the carton, the menu's Lebanese",
        "a hen party booked the upper room. I'd like five different bottles that aren't all French",
        "everybody draws a country: Greece, Norway, Italy, Georgia. Choose five bottles, one each",
    ],
)
def test_a_kitchen_and_several_places_are_no_theme(session: Session, said: str) -> None:
    limits = session.parser.parse(said).preferences
    assert not any(limit.property == "home" and not limit.banned for limit in limits)
