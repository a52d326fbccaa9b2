"""What two people claim against each other is settled in one line, or told to be kept by nobody."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture
def table(conversation: Session) -> Session:
    """Four wines and three foods."""
    conversation.ask("the wines are crémant, albariño, beaujolais and rioja")
    conversation.ask("on the board: brie, chorizo, olives")
    return conversation


@pytest.mark.parametrize(
    "told",
    [
        "fiona reckons its the acid not the tannin that cuts the fat, gareth says tannin. whos right",
        "bev says acid cuts the richness and mo says its the tannins, who is right",
        "does tannin cut fat",
    ],
)
def test_acid_cuts_fat_and_tannin_binds(table: Session, told: str) -> None:
    assert table.ask(told).say == "Acid cuts fat: it cleans the mouth. Tannin binds to protein."


@pytest.mark.parametrize(
    "told", ["what about the olives, gareth says olives kill wine", "olives kill all wine"]
)
def test_a_food_said_to_go_with_no_wine_is_held_against_the_best(table: Session, told: str) -> None:
    assert table.ask(told).say == "Not all wine: crémant is strong with mixed olives."


def test_chilled_or_not_is_told_by_the_degrees(table: Session) -> None:
    said = table.ask("gareth: beaujolais is best chilled, fiona: no room temp").say
    assert said.startswith("Chilled, not at room temperature: Beaujolais: 11 to 13 °C")
    assert table.ask("mo says rioja should be drunk chilled").say.startswith("Cool, but not chilled: Rioja:")


@pytest.mark.parametrize(
    "told", ["gareth says rioja has to be tempranillo", "does rioja have to be tempranillo"]
)
def test_what_a_wine_has_to_be_is_what_it_is_made_of(table: Session, told: str) -> None:
    assert table.ask(told).say == "It is made from Tempranillo and Grenache."


@pytest.mark.parametrize("told", ["half a point each then", "fiona 3 points gareth 2"])
def test_nobody_keeps_points(table: Session, told: str) -> None:
    assert table.ask(told).say.startswith("I keep no score of points")
    assert table.tonight.guests is None


def test_a_wish_for_sharpness_is_no_claim(conversation: Session) -> None:
    assert conversation.ask("which wine cuts through the fat of pork belly").intent == "wines-for-food"


def test_whether_a_name_is_that_of_a_grape(table: Session) -> None:
    table.ask("what is beaujolais")
    assert (
        table.ask("is it a grape?").say == "No grape: Beaujolais is a place, and its wine is made from Gamay."
    )
    assert table.ask("is albariño a grape or a region").say == "Yes, Albariño is a grape."
    assert not table.ask("is that a good place for a tasting").say.startswith("No grape")


@pytest.mark.parametrize("asked", ["how do you say albariño", "how do you pronounce albariño?"])
def test_how_a_name_is_said_is_no_pairing(table: Session, asked: str) -> None:
    assert table.ask(asked).say.startswith("How Albariño is said I cannot tell")


@pytest.mark.parametrize("asked", ["rate the four with the brie out of ten", "score them with the brie"])
def test_wines_to_be_rated_are_compared_and_no_vote_is_taken(table: Session, asked: str) -> None:
    answer = table.ask(asked)
    assert (answer.intent, answer.say) == ("compare", "Crémant, the best of them here.")
    assert len(answer.picks) == 4


def test_a_doubt_puts_nothing_on_the_dish_and_the_answer_fits_one_line(table: Session) -> None:
    answer = table.ask("does chorizo n albariño work or is it too spicy")
    assert answer.say.startswith("It's fine: ")
    assert table.ask("say it in one line i can paste in the chat").text == answer.say


@pytest.mark.parametrize("asked", ["why isn't crémant champagne", "why is crémant not champagne"])
def test_one_wine_is_not_the_other_by_where_it_comes_from(table: Session, asked: str) -> None:
    said = table.ask(asked).say
    assert said == "Crémant comes above all from Alsace, Burgundy and Loire, Champagne from Champagne."
    assert "comes above all" not in table.ask("why isn't rioja as good as beaujolais").say
