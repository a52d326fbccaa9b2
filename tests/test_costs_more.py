"""A wine like one that costs more or less is told by style, and no word of price is heard as a food."""

from __future__ import annotations

import pytest

from assistant.session import Session

NO_PRICES = "I know no prices: this goes by style, so look at the shelf."


@pytest.fixture
def table(conversation: Session) -> Session:
    """Four wines and three foods."""
    conversation.ask("the wines are crémant, albariño, beaujolais and rioja")
    conversation.ask("on the board: manchego, brie, chorizo")
    return conversation


@pytest.mark.parametrize(
    "asked",
    [
        "if someone wanted to spend more than the rioja what'd you go for",
        "a step up from the rioja",
        "something pricier than the rioja",
    ],
)
def test_more_is_spent_on_what_says_more_on_its_label(table: Session, asked: str) -> None:
    answer = table.ask(asked)
    assert answer.intent == "substitute"
    assert [item.id for item in answer.picks] == ["wine/rioja-reserva", "wine/rioja-gran-reserva"]
    assert NO_PRICES in answer.text


@pytest.mark.parametrize("asked", ["and a cheaper one?", "cheaper one please", "something cheaper"])
def test_a_cheaper_one_is_of_the_wine_just_asked_about(table: Session, asked: str) -> None:
    table.ask("what would be a step up from the rioja")
    answer = table.ask(asked)
    assert "wine/tempranillo" in [item.id for item in answer.picks]
    assert NO_PRICES in answer.text


@pytest.mark.parametrize("asked", ["a cheaper one?", "got a cheaper one", "anything cheaper"])
def test_a_cheaper_one_is_no_squid(conversation: Session, asked: str) -> None:
    conversation.ask("what goes with lamb")
    answer = conversation.ask(asked)
    assert not [one for one in answer.read_as if one["corrected_from"]]
    assert conversation.talk is not None
    assert [dish.main.food for dish in conversation.talk.frame.dishes] == ["food/lamb"]
