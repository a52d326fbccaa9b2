"""What comes in the place of a wine or a food that is not to be had, or that a guest may not have."""

from __future__ import annotations

import pytest

from assistant.session import Session
from tests.tables import mains


@pytest.fixture
def table(conversation: Session) -> Session:
    """Four wines, three cheeses and olives; one guest hates oak, one is pregnant, one drinks red only."""
    conversation.ask("the wines are crémant, albariño, beaujolais and rioja")
    conversation.ask("on the board: manchego, brie, stilton, olives")
    for told in ("Helen hates oak", "Sam is pregnant", "Mick only drinks red"):
        conversation.ask(told)
    return conversation


@pytest.mark.parametrize(
    "asked",
    [
        "what can bev drink instead of the rioja from the corner shop",
        "no rioja at the shop, what can I get instead",
        "what could I buy in place of the rioja at the supermarket",
    ],
)
def test_from_a_shop_comes_what_is_like_the_wine_and_easy_to_buy(table: Session, asked: str) -> None:
    answer = table.ask(asked)
    assert answer.intent == "substitute"
    assert "wine/tempranillo" in [item.id for item in answer.picks]
    assert all(table.knowledge.wines[item.id].availability >= 3 for item in answer.picks)


def test_of_the_table_the_nearest_is_told_and_what_a_shop_has(table: Session) -> None:
    answer = table.ask("what do I pour instead of the rioja")
    assert answer.picks[0].id == "wine/beaujolais"
    assert "From a shop: Grenache blend and Tempranillo." in answer.text


def test_the_question_goes_on_with_a_food(table: Session) -> None:
    table.ask("what can bev drink instead of the rioja")
    answer = table.ask("and instead of the stilton?")
    assert (answer.intent, answer.say) == ("substitute", "aged Gouda comes nearest to Stilton.")
    assert "ask before you serve" in answer.text


def test_another_wine_is_asked_for_with_a_food(table: Session) -> None:
    answer = table.ask("what goes with the manchego instead of the rioja")
    assert (answer.intent, "wine/rioja" in [item.id for item in answer.picks]) == ("wines-for-food", False)


def test_a_wine_is_swapped_for_one_that_the_guest_drinks(table: Session) -> None:
    glasses = table.engine.glasses
    picks = [item.id for item in table.ask("swap the rioja for something helen can drink").picks]
    assert picks
    assert all(glasses[wine].colour == "colour/red" for wine in picks)
    assert all(glasses[wine].points["oak"] < glasses["wine/rioja"].points["oak"] - 1 for wine in picks)
    reds = table.ask("swap the albariño for something mick can drink").picks
    assert reds
    assert all(glasses[item.id].colour == "colour/red" for item in reds)


def test_who_drinks_no_wine_gets_a_drink_without_alcohol(table: Session) -> None:
    answer = table.ask("what can sam have instead of the rioja")
    assert answer.picks
    assert all(table.knowledge.wines[item.id].type == "Drink" for item in answer.picks)
    assert "In pregnancy" in answer.text


@pytest.mark.parametrize("said", ["no leave it", "leave it as it is", "ok, keep everything as is"])
def test_what_was_only_asked_changes_nothing(table: Session, said: str) -> None:
    before = mains(table), table.tonight.wines
    table.ask("swap the rioja for something helen can drink")
    assert table.ask(said).say == "All stays as it is."
    assert (mains(table), table.tonight.wines) == before
