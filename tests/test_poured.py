"""Wines on the table as guests call them: by the name on the bottle, short, or by their kind."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.evening.table import set_table
from assistant.session import Session
from assistant.table.tonight import Tonight

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


@pytest.fixture
def buffet(session: Session) -> Session:
    session.new_conversation()
    session.ask("we've got cava, a picpoul, a rosé from provence, a beaujolais and a gewurz")
    session.ask("brie, stilton, coronation chicken")
    session.ask("does the cava go with the brie")
    return session


@pytest.mark.parametrize("asked", ["dave says whats this one, the pink one", "which is the pink one"])
def test_a_wine_pointed_at_is_described(buffet: Session, asked: str) -> None:
    frame = buffet.read(asked)
    assert (frame.intent, frame.wines, frame.dishes) == ("describe", ("wine/provence-rose",), ())


@pytest.mark.parametrize("asked", ["brie or stilton for the beaujolais", "brie or stilton with the cava"])
def test_one_food_or_the_other_is_a_choice(buffet: Session, asked: str) -> None:
    answer = buffet.ask(asked)
    assert answer.intent == "compare"
    assert answer.text.startswith("Brie, the better of the two here.")


def test_the_diff_is_told(buffet: Session) -> None:
    assert "louder than Picpoul" in buffet.ask("whats the diff between picpoul and the gewurz").text
