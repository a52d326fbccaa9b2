"""Names that stand for something else in a turn of phrase, and names that do not."""

from __future__ import annotations

import pytest

from assistant.knowledge.store import shipped
from assistant.language.parse import Parser

FOODS = ("food", "garnish", "sauce")


@pytest.fixture(scope="module")
def parser() -> Parser:
    return Parser(shipped())


def _foods(parser: Parser, typed: str) -> set[str]:
    return {r.label for r in parser.parse(typed).text.readings if r.kind in FOODS}


@pytest.mark.parametrize(
    ("elsewhere", "eaten", "food"),
    [
        ("date night, what wine", "what wine with dates and walnuts", "date"),
        ("which grape is in Barolo", "which wine for cheese and grapes", "red grape"),
        ("how many bottles for a wedding toast", "pâté on toast, what wine", "toast"),
        ("red all over the cream carpet", "a tart with cream, what wine", "cream"),
        ("am I nuts to pour Malbec", "are nuts good with sherry", "nuts"),
        ("the wine is warm as soup", "which wine for soup", "plain vegetable soup"),
        ("how much sugar is in Asti", "more sugar in the dressing, which wine", "sugar"),
        ("this white is too tart", None, "tart"),
    ],
)
def test_a_name_in_a_turn_of_phrase_is_no_food(
    parser: Parser, elsewhere: str, eaten: str | None, food: str
) -> None:
    assert food not in _foods(parser, elsewhere)
    assert eaten is None or food in _foods(parser, eaten)


def test_a_word_of_such_a_phrase_is_not_reported(parser: Parser) -> None:
    assert parser.parse("date night, what wine with steak").text.left_out == ()


def test_a_longer_name_behind_an_article_wins(parser: Parser) -> None:
    labels = [r.label for r in parser.parse("does a white zinfandel go with ham").text.readings]
    assert labels[0] == "white Zinfandel"


@pytest.mark.parametrize(
    "typed", ["what must I buy in the shop", "which wines I must to buy", "when must we open it"]
)
def test_what_has_to_be_done_is_no_must(parser: Parser, typed: str) -> None:
    assert not parser.parse(typed).terms


def test_must_is_asked_for(parser: Parser) -> None:
    assert parser.parse("what is must").terms == ("term/must",)


def test_on_earth_asks_for_no_smell_of_it(parser: Parser) -> None:
    read = parser.parse("what on earth do I open with oysters").text.readings
    assert [reading.text for reading in read] == ["oysters"]
    assert "aroma" in {r.kind for r in parser.parse("does earth in a wine suit mushrooms").text.readings}


@pytest.mark.parametrize(
    "typed",
    [
        "prawns with garlic and chili, which wine",
        "spaghetti with clams, garlic and chili",
        "if I leave the chili out of the pad thai, what wine",
        "tacos without the chili",
        "mango and chili salad",
        "noodles with chili",
    ],
)
def test_a_dish_is_an_ingredient_beside_what_it_is_cooked_with(parser: Parser, typed: str) -> None:
    assert "food/chilli-pepper" in {r.id for r in parser.parse(typed).text.readings}


@pytest.mark.parametrize(
    "typed",
    [
        "cornbread and chili",
        "hot dogs and chili",
        "bowl of chili",
        "chili with rice",
        "add chili to the menu",
    ],
)
def test_a_dish_is_itself_beside_other_dishes(parser: Parser, typed: str) -> None:
    assert "food/chilli-con-carne" in {r.id for r in parser.parse(typed).text.readings}


@pytest.mark.parametrize(
    "typed",
    [
        "we live in Bordeaux, what wine with duck",
        "I'm in Porto this week, which wine with duck",
        "nobody in Accra stocks it, which wine with duck",
        "our friends from Leicester bring duck, which wine",
        "a party in Basel with duck, which wine",
        "dinner near Orange, which wine with duck",
        "never chop am before, which wine with duck",
        "guests can handle spice, which wine with duck",
    ],
)
def test_a_town_or_a_turn_of_phrase_is_no_food_and_no_wine(parser: Parser, typed: str) -> None:
    frame = parser.parse(typed)
    assert [r.id for r in frame.text.readings] == ["food/duck"]
    assert (frame.wines, frame.preferences, frame.text.left_out) == ((), (), ())


def test_what_comes_from_a_town_is_still_a_wine(parser: Parser) -> None:
    assert [p.wanted for p in parser.parse("wine from Bordeaux for lamb").preferences] == [
        "region/france-bordeaux"
    ]
    assert parser.parse("which grapes are in champagne").wines == ("wine/champagne",)


@pytest.mark.parametrize(
    ("typed", "wine"),
    [
        ("does a spoon in the neck keep the fizz in Champagne", "wine/champagne"),
        ("the prosecco lost its fizz", "wine/prosecco"),
        ("fizz gone, what now with the cremant", "wine/cremant"),
    ],
)
def test_the_fizz_of_a_wine_is_no_wine(parser: Parser, typed: str, wine: str) -> None:
    frame = parser.parse(typed)
    assert (frame.wines, frame.preferences) == ((wine,), ())


@pytest.mark.parametrize(
    "typed",
    [
        "At what temperature should I serve Fleurie on a hot Lagos evening?",
        "wine for brie in a Manchester kitchen",
        "which wine for the lamb at our Durban dinner",
        "a Chicago winter, which red for stew",
    ],
)
def test_a_place_before_what_is_of_it_is_not_told(parser: Parser, typed: str) -> None:
    assert parser.parse(typed).text.left_out == ()
