"""Wines on the table as guests call them: by the name on the bottle, short, or by their kind."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.evening.table import set_table
from assistant.session import Session
from assistant.tonight import Tonight

DEMO = Path(__file__).parents[1] / "corpus" / "evenings" / "quay-house.toml"


@pytest.fixture
def table(session: Session) -> Iterator[Session]:
    """The demo evening, where an off-dry Riesling called Grey Heron is poured."""
    session.new_conversation()
    set_table(session, DEMO)
    session.new_conversation()
    yield session
    session.lay(Tonight())
    session.new_conversation()


@pytest.mark.parametrize(
    ("asked", "wine"),
    [
        ("is the riesling sweet", "wine/off-dry-riesling"),
        ("how cold should the Grey Heron be", "wine/off-dry-riesling"),
        ("when do I open the grey heron 2025", "wine/off-dry-riesling"),
        ("what goes with the Three Lanterns", "wine/malbec"),
        ("does the pinot go with brie", "wine/pinot-noir"),
        ("is the bubbly dry", "wine/brut-sparkling"),
        ("dry riesling with brie?", "wine/dry-riesling"),
        ("does Chablis go with brie", "wine/chablis"),
    ],
)
def test_a_wine_called_short_is_the_one_poured(table: Session, asked: str, wine: str) -> None:
    assert table.read(asked).wines == (wine,)


def test_two_of_a_name_are_told_apart_by_nobody(table: Session) -> None:
    table.ask("also a dry Riesling")
    assert table.read("is the riesling sweet").wines == ("wine/dry-riesling",)


def test_the_wine_swapped_is_the_one_on_the_table(table: Session) -> None:
    table.ask("swap the riesling for a Chablis")
    assert "wine/chablis" in table.tonight.wines
    assert "wine/off-dry-riesling" not in table.tonight.wines


def test_another_of_the_name_comes_to_the_table(table: Session) -> None:
    table.ask("also a Riesling")
    assert {"wine/dry-riesling", "wine/off-dry-riesling"} <= set(table.tonight.wines)


def test_without_a_table_names_mean_what_they_did(conversation: Session) -> None:
    assert conversation.read("is riesling sweet").wines == ("wine/dry-riesling",)


def test_when_one_wine_is_poured_is_told_among_all(table: Session) -> None:
    assert "4. Malbec" in table.ask("the pinot, first or last?").text


def test_a_region_with_its_grape_is_one_wine(session: Session) -> None:
    session.new_conversation()
    session.ask("the wines are Burgundy pinot noir, an Oregon pinot and Chablis Chardonnay")
    assert session.tonight.wines == ("wine/red-burgundy", "wine/new-world-pinot-noir", "wine/chablis")
