"""What is in the box that everybody gets is the food of the evening, and the wines named leave it there."""

from __future__ import annotations

import pytest

from assistant.session import Session
from tests.tables import mains

BOX = ["food/brie", "food/comte", "food/fig"]
WINES = ("wine/cremant", "wine/beaujolais", "wine/rioja")


@pytest.mark.parametrize(
    "told",
    [
        "box has brie, comté and figs",
        "each hamper contains brie, comté and figs",
        "in the parcel there's brie, comté and figs",
        "the board has brie, comté and figs",
    ],
)
def test_what_a_box_holds_is_on_the_table_beside_the_bottles(conversation: Session, told: str) -> None:
    conversation.ask("the bottles are crémant, a beaujolais and an oaked rioja")
    assert conversation.ask(told).intent == "set-table"
    assert (mains(conversation), conversation.tonight.wines) == (BOX, WINES)


def test_wines_named_again_leave_the_food_on_the_table(conversation: Session) -> None:
    conversation.ask("box has brie, comté and figs")
    conversation.ask("tonight's wines are crémant, beaujolais, rioja")
    assert (mains(conversation), conversation.tonight.wines) == (BOX, WINES)


def test_a_wine_asked_for_the_board_is_no_table(conversation: Session) -> None:
    conversation.ask("the bottles are crémant, a beaujolais and an oaked rioja")
    assert conversation.ask("the board has brie, comté and figs, which wine for it all").picks
