"""A wine and a food told over the table: the bare pair is judged, one said to be better is compared."""

from __future__ import annotations

import pytest

from assistant.session import Session

BRISKET, ROSE, ZINFANDEL = "food/barbecue-brisket", "wine/provence-rose", "wine/zinfandel"


@pytest.fixture
def table(conversation: Session) -> Session:
    """Four wines and four foods."""
    conversation.ask("wines: champagne, provence rosé, pinot noir, zinfandel")
    conversation.ask("board: aged cheddar, manchego, smoked brisket, pickles")
    return conversation


@pytest.mark.parametrize(
    "typed",
    ["brisket with the rosé", "so the brisket with the rosé", "ok then, the rosé beside the brisket",
     "what about the brisket with the rosé"],
)  # fmt: skip
def test_a_bare_pair_is_judged_and_stands(table: Session, typed: str) -> None:
    table.ask("what goes with the pickles")
    assert table.ask(typed).intent == "judge-pair"
    frame = table.talk.frame if table.talk else None
    assert frame is not None
    assert (frame.dishes[0].main.food, frame.wines) == (BRISKET, (ROSE,))


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("no way, the pinot with the brisket is better", ["Zinfandel: strong", "Pinot Noir: good"]),
        ("I'd rather have the champagne with the brisket", ["Zinfandel: strong", "Champagne: fair"]),
        (
            "the zin goes better with the cheddar than with the manchego",
            ["Aged cheddar: good", "Manchego: good"],
        ),
        ("nah the cheddar is better with the zin than the pickles", ["Aged cheddar: good", "Pickles: clash"]),
    ],
)
def test_what_is_said_to_be_better_is_held_against_the_other(
    table: Session, typed: str, said: list[str]
) -> None:
    table.ask("what goes with the brisket")
    answer = table.ask(typed)
    assert answer.intent == "compare"
    assert all(line in answer.text for line in said)


def test_a_pair_that_a_guest_liked_is_a_note(table: Session) -> None:
    assert table.ask("Jen loved the rosé with the brisket").intent == "note"
