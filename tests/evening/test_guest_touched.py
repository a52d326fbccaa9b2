"""What touched what a guest is allergic to is not for that guest, and that is said first."""

from __future__ import annotations

import pytest

from assistant.session import Session

BEFORE = ("foods: olives, gambas al ajillo, croquetas, patatas bravas", "Carmen is allergic to shellfish")


@pytest.fixture
def told(conversation: Session) -> Session:
    for line in BEFORE:
        conversation.ask(line)
    return conversation


@pytest.mark.parametrize(
    ("asked", "thing"),
    [
        ("can carmen have croquetas if i fried them in the same oil as the gambas", "croquetas"),
        ("Carmen: may i have croquetas fried in the gambas oil?", "croquetas"),
        ("can carmen have the bravas cooked with the prawns", "patatas bravas"),
        ("i cut the brie with the same knife as the gambas, ok for carmen?", "Brie"),
        ("is it ok for carmen if the bravas touched the prawns", "patatas bravas"),
        ("the croquetas went into the gambas oil, may carmen have some", "croquetas"),
    ],
)
def test_what_touched_it_is_not_for_that_guest(told: Session, asked: str, thing: str) -> None:
    answer = told.ask(asked)
    first = answer.text.splitlines()[0]
    assert first.startswith("Not for Carmen: ")
    assert thing in first
    assert "Carmen may have" not in answer.text
    assert "in fresh oil, with a clean pan" in answer.text


@pytest.mark.parametrize(
    "asked", ["can carmen have patatas bravas fried in olive oil", "can carmen have the croquetas"]
)
def test_what_touched_nothing_is(told: Session, asked: str) -> None:
    assert told.ask(asked).say.startswith("Carmen may have: ")


def test_of_its_own_pan_it_is(told: Session) -> None:
    assert (
        "Carmen may have: " in told.ask("can carmen have croquetas not fried in the same oil as gambas").text
    )
