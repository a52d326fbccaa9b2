"""What comes to the table and is not for a guest told of is said at once."""

from __future__ import annotations

import pytest

from assistant.session import Session

BOARD = "and the board is brie, aged gouda, almonds and sourdough"


@pytest.mark.parametrize(
    ("lines", "first"),
    [
        (["tom has a nut allergy", BOARD], "Not for Tom: almond."),
        (["tom has a nut allergy", "the board is brie and grapes", "add walnuts"], "Not for Tom: walnut."),
        (["Lia is pregnant", "the board is gouda", "put prosciutto on it"], "Not for Lia: prosciutto."),
    ],
)  # fmt: skip
def test_a_guest_who_may_not_have_it_is_named_first(
    conversation: Session, lines: list[str], first: str
) -> None:
    for line in lines:
        answer = conversation.ask(line)
    assert answer.text.startswith(first)
    assert answer.say.startswith(first)


@pytest.mark.parametrize(
    "lines",
    [
        ["tom has a nut allergy", "the board is brie and grapes"],
        [BOARD],
        ["tom has a nut allergy", BOARD, "the wines are gavi and barbera"],
    ],
)
def test_nothing_is_said_where_nothing_new_is_against_a_need(conversation: Session, lines: list[str]) -> None:
    for line in lines:
        answer = conversation.ask(line)
    assert "Not for" not in answer.text
