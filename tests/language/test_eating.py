"""What somebody does not eat is on no dish and on no list."""

from __future__ import annotations

import pytest

from assistant.knowledge.diets import Fit, fit, holds, lineage
from assistant.session import Session
from tests.language.conftest import Parse

NOT_EATEN = [
    ("I don't eat pork, what goes with syrah?", "food/pork"),
    ("she won't touch brie, which wine for the rest: gouda, figs", "food/brie"),
    ("we hate blue cheese, what else goes with port", "kind/blue-cheese"),
    ("nut-free food for sherry", "food/nuts"),
    ("snacks for cava, no seafood", "kind/seafood"),
    ("without stilton, what goes with figs", "food/stilton"),
    ("he's not a fan of olives, gouda and riesling?", "food/mixed-olives"),
    ("nothing with shrimp please, food for chablis", "food/shrimp"),
]
EATEN = [
    "what do I do with brie and riesling",
    "why don't you like brie with malbec",
    "no reds with the gouda",
    "is the cheese free of charge",
    "I can't wait for steak, what red?",
]
DIETS = [
    ("what goes with syrah, vegetarian", "diet/vegetarian"),
    ("vegan snacks for a riesling", "diet/vegan"),
    ("plant-based food for prosecco", "diet/vegan"),
    ("gluten free nibbles for prosecco", "diet/no-gluten"),
    ("dairy free food for malbec, what works", "diet/no-milk"),
    ("halal dishes for a big red", "diet/no-pork"),
    ("meat-free ideas for rioja", "diet/vegetarian"),
]


@pytest.mark.parametrize(("typed", "food"), NOT_EATEN)
def test_a_food_not_eaten_is_on_no_dish(parse: Parse, typed: str, food: str) -> None:
    frame = parse(typed)
    assert food in frame.barred
    assert not any(food == part.food for dish in frame.dishes for part in dish.parts)


@pytest.mark.parametrize("typed", EATEN)
def test_what_only_sounds_like_it_bars_nothing(parse: Parse, typed: str) -> None:
    assert parse(typed).barred == ()


@pytest.mark.parametrize(("typed", "diet"), DIETS)
def test_diets_are_read(parse: Parse, typed: str, diet: str) -> None:
    assert parse(typed).diets == (diet,)


@pytest.mark.parametrize(("typed", "diet"), [d for d in DIETS if "what" in d[0] or "for" in d[0]][:5])
def test_every_food_listed_surely_fits_the_diet(session: Session, typed: str, diet: str) -> None:
    session.new_conversation()
    session.top = 40
    try:
        answer = session.ask(typed)
    finally:
        session.top = 3
    assert len(answer.picks) > 2
    assert all(fit(item.id, diet, session.knowledge) is Fit.YES for item in answer.picks)
    assert session.knowledge.label(diet) in answer.text


@pytest.mark.parametrize(
    ("typed", "name"),
    [("I don't eat beef, food for malbec", "beef"), ("no fish please, what goes with chablis", "fish")],
)
def test_nothing_listed_holds_what_is_not_eaten(session: Session, typed: str, name: str) -> None:
    session.new_conversation()
    answer = session.ask(typed)
    assert answer.picks
    for item in answer.picks:
        has, may = holds(item.id, session.knowledge)
        marks = has | may | lineage(item.id, session.knowledge)
        assert not marks & {f"care/{name}", f"allergen/{name}", f"food/{name}"}, item.label


def test_a_plate_that_does_not_fit_is_told(session: Session) -> None:
    session.new_conversation()
    assert "Mind, not for “vegetarian”: steak" in session.ask("wine for a vegetarian, steak with chips").text
    session.new_conversation()
    assert "For “vegetarian”, as far as I know: hummus" in session.ask("wine for a vegetarian, hummus").text


def test_a_kind_fits_only_where_all_its_members_do(session: Session) -> None:
    session.new_conversation()
    assert "Mind, perhaps not for “vegan”: cheese" in session.ask("wine for a vegan with cheese").text
    assert fit("kind/cheese", "diet/vegan", session.knowledge) is Fit.UNKNOWN
    assert fit("kind/seafood", "diet/vegetarian", session.knowledge) is Fit.NO
    assert fit("kind/cheese", "diet/no-nuts", session.knowledge) is not Fit.NO


def test_a_diet_beside_a_safety_question_is_answered_too(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("is the brie safe for my vegan pregnant friend")
    assert answer.intent == "safety"
    assert "Mind, not for “vegan”: Brie" in answer.text


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        (
            "my sister has gone vegan, is ragu ok with chianti",
            "Mind, not for “vegan”: ",
        ),
        ("a pescatarian asks, does the ham go with riesling", "Mind, not for “pescatarian”: "),
        ("two bottles for a vegetarian: steak and hummus", "Mind, not for “vegetarian”: steak"),
    ],
)
def test_a_plate_that_does_not_fit_is_told_whatever_is_asked_of_it(
    session: Session, typed: str, told: str
) -> None:
    session.new_conversation()
    assert told in session.ask(typed).text


def test_a_pescatarian_eats_fish_and_no_meat(session: Session) -> None:
    assert fit("food/salmon", "diet/pescatarian", session.knowledge) is Fit.YES
    assert fit("food/salami", "diet/pescatarian", session.knowledge) is Fit.NO
    assert fit("food/parmesan", "diet/pescatarian", session.knowledge) is Fit.NO
