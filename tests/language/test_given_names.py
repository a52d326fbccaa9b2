"""What people are called is no word unread; what only looks like it is told."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture(scope="module")
def session() -> Session:
    return Session()


@pytest.mark.parametrize(
    "said",
    [
        "write down that Carmen adored the Torrontés with the empanadas",
        "Uncle Piet just knocked the red over",
        "jo's mum is coming as well",
        "Kenji can't make it so we're seven",
        "Tomas wants honey on the Manchego with the Tempranillo",
    ],
)
def test_a_persons_name_is_not_told_as_unknown(session: Session, said: str) -> None:
    assert session.parser.parse(said).text.left_out == ()


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("what goes with a Carmen", "Carmen"),
        ("Tessa Blue with port", "Tessa"),
        ("is Gianna rosso ok with ham", "Gianna"),
        ("which wine for some Otto", "Otto"),
        ("is the Varnholt Ashling any use beside black pudding", "Ashling"),
        ("what wine with zora and brie", "zora"),
        ("fried tamsin with rice, what wine", "tamsin"),
    ],
)
def test_what_is_called_so_is_told(session: Session, said: str, told: str) -> None:
    assert told in session.parser.parse(said).text.left_out


def test_a_plural_that_is_somebodys_name_is_no_food(session: Session) -> None:
    def read(said: str) -> list[str]:
        return [reading.id for reading in session.parser.parse(said).text.readings]

    assert "food/toma" not in read("Tomas likes the Tempranillo")
    assert "food/fig" in read("Figs with the Tempranillo")
