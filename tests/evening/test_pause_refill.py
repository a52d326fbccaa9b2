"""The pause halfway through a long flight, and what a refill of the favourite takes."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from pathlib import Path

import pytest

from assistant.evening.bottles import refill
from assistant.evening.plan import plan
from assistant.evening.read import read_evening
from assistant.evening.records import Evening
from assistant.knowledge.files import corpus_dir
from assistant.session import Session

NOW = datetime(2027, 2, 1, 12).astimezone()
DEMO = corpus_dir() / "evenings" / "quay-house.toml"


@pytest.fixture(scope="module")
def demo(session: Session) -> Evening:
    """The demo evening as read."""
    return read_evening(Path(DEMO), session, NOW)


def _pauses(evening: Evening, session: Session) -> list[str]:
    clock = plan(evening, session)["clock"]
    return [row["at"][11:] for row in clock if row["task"].startswith("a pause")]


def test_a_long_flight_has_a_pause_behind_its_middle(demo: Evening, session: Session) -> None:
    assert _pauses(demo, session) == ["19:35"]
    assert _pauses(replace(demo, choose=3), session) == []


@pytest.mark.parametrize(
    ("drinkers", "pour", "meal", "more"),
    [
        (4, 60.0, "tasting", 0),  # 4 x 150 ml fit the 712 ml of one bottle
        (10, 60.0, "tasting", 2),  # 10 x 150 ml are three bottles, one is there for the pour
        (10, 60.0, "supper", 2),  # 10 x 210 ml are three bottles
        (0, 60.0, "tasting", 0),
    ],
)
def test_a_refill_takes_what_the_pour_leaves_and_more(
    demo: Evening, session: Session, drinkers: int, pour: float, meal: str, more: int
) -> None:
    evening = replace(demo, guests=drinkers, non_drinkers=0, pour_ml=pour, meal=meal)
    assert refill(evening, session.knowledge)[1] == more
