"""What a guest needs and what is laid, told in one line: neither is lost, and the need comes first."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from assistant.session import Session
from tests.tables import mains, poured

NUTS = (("Ann", "allergic to nuts"),)


@pytest.fixture
def empty(session: Session) -> Iterator[Session]:
    """A session with nothing on the table."""
    with poured(session):
        yield session


@pytest.mark.parametrize(
    ("typed", "needs", "foods", "wines"),
    [
        (
            "Ann is allergic to nuts and we are having brie, gavi and port tonight",
            NUTS,
            ["food/brie"],
            ("wine/gavi", "wine/ruby-port"),
        ),
        ("the food is brie and salami, Ann is allergic to nuts", NUTS, ["food/brie", "food/salami"], ()),
        (
            "8 guests, Ann is allergic to nuts, food is brie and ham",
            NUTS,
            ["food/brie", "food/cooked-ham"],
            (),
        ),
        (
            "Ann is allergic to nuts and shellfish and the wines are gavi and port",
            (("Ann", "allergic to nuts and shellfish"),),
            [],
            ("wine/gavi", "wine/ruby-port"),
        ),
        (
            "Bob is gluten free, brie and salami on the board",
            (("Bob", "gluten free"),),
            ["food/brie", "food/salami"],
            (),
        ),
        (
            "R. is vegetarian and we've got satay, gavi",
            (("R.", "vegetarian"),),
            ["food/peanut-sauce"],
            ("wine/gavi",),
        ),
        (
            "food is brie, Ann is pregnant and Bob is coeliac, the wines are gavi and port",
            (("Ann", "pregnant"), ("Bob", "coeliac")),
            ["food/brie"],
            ("wine/gavi", "wine/ruby-port"),
        ),
    ],
)
def test_both_are_kept(
    empty: Session, typed: str, needs: tuple[tuple[str, str], ...], foods: list[str], wines: tuple[str, ...]
) -> None:
    answer = empty.ask(typed)
    assert [(one.guest, one.need) for one in empty.tonight.needs] == list(needs)
    assert (mains(empty), empty.tonight.wines) == (foods, wines)
    assert answer.text.startswith("Noted for")


def test_what_is_not_for_the_guest_is_told_at_once(empty: Session) -> None:
    text = empty.ask("Ann is vegetarian. We're having salami, brie and gavi").text
    assert "Not for Ann: salami." in text
    assert "You also said “We're having salami, brie and gavi”" in text


def test_one_need_with_a_liking_is_one_line(empty: Session) -> None:
    assert not empty.ask("Ann is vegan and loves brie").also
    assert not empty.tonight.dishes
