"""A short name that stands for one sort of a dish, said of another sort."""

from __future__ import annotations

import pytest

from assistant.knowledge.diets import contents
from assistant.language.made_of import is_meat
from assistant.session import Session
from tests.language.conftest import Parse

SORTS = [
    ("spinach risotto", "food/spinach", "food/wild-mushrooms"),
    ("octopus taco", "food/octopus", "food/beef"),
    ("mutton rendang", "food/mutton", "food/beef"),
    ("trout bisque", "food/trout", "food/lobster"),
    ("what wine for turkey fajita", "food/turkey", "food/beef"),
    ("tofu curry", "food/tofu", "food/chicken"),
]
AS_SHIPPED = ["mushroom risotto", "beef taco", "pizza", "lentil soup", "risotto", "taco", "clam chowder"]


@pytest.mark.parametrize(("typed", "comes", "goes"), SORTS)
def test_what_the_dish_is_named_for_gives_way(parse: Parse, typed: str, comes: str, goes: str) -> None:
    (dish,) = parse(typed).dishes
    foods = {part.food for part in dish.parts}
    assert comes in foods
    assert goes not in foods
    assert len(foods) > 2


@pytest.mark.parametrize("typed", AS_SHIPPED)
def test_a_dish_of_the_shipped_sort_stays_whole(parse: Parse, typed: str) -> None:
    (dish,) = parse(typed).dishes
    assert len(dish.parts) == 1
    assert dish.called == ""


def test_the_answer_calls_it_what_it_is(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("which wine with spinach risotto")
    assert "spinach, risotto" in answer.text
    assert "mushroom" not in answer.text


@pytest.mark.parametrize("named", ["parsnip", "chestnut", "crab", "beef"])
def test_a_soup_is_of_what_is_named_and_of_no_tomato(parse: Parse, named: str) -> None:
    (dish,) = parse(f"wine for {named} soup").dishes
    foods = {part.food for part in dish.parts}
    assert f"food/{named}" in foods
    assert not foods & {"food/tomato-sauce", "food/mixed-vegetables"}


MADE_OF = [
    ("cabbage steak with miso butter", "food/cabbage"),
    ("grilled celeriac steak", "food/celeriac"),
    ("watermelon steak", "food/watermelon"),
    ("seafood lasagne", "food/seafood"),
    ("butternut squash and sage lasagne", "food/butternut-squash"),
    ("tofu satay with peanut sauce", "food/tofu"),
    ("lentil burgers", "food/lentil"),
    ("mushroom kebabs", "food/button-mushroom"),
    ("lentil shepherd's pie", "food/lentil"),
    ("celeriac wellington", "food/celeriac"),
    ("aubergine schnitzel", "food/aubergine"),
    ("cauliflower nuggets", "food/cauliflower"),
    ("lentil meatballs", "food/lentil"),
    ("tofu bacon", "food/tofu"),
    ("black bean chilli", "food/black-bean"),
    ("mushroom bourguignon", "food/button-mushroom"),
]


@pytest.mark.parametrize(("typed", "made"), MADE_OF)
def test_a_dish_of_meat_named_by_a_plant_or_fish_has_no_meat(
    parse: Parse, session: Session, typed: str, made: str
) -> None:
    (dish,) = parse(f"wine for {typed}").dishes
    foods = [part.food for part in dish.parts]
    assert made in foods
    assert not any(is_meat(food, session.knowledge) for food in foods)


@pytest.mark.parametrize(
    "typed", ["onion burger", "bacon burger", "mushroom bacon pasta", "beef lasagne", "steak with mushrooms"]
)
def test_what_lies_on_the_meat_takes_no_meat_away(parse: Parse, session: Session, typed: str) -> None:
    foods = [part.food for dish in parse(f"wine for {typed}").dishes for part in dish.parts]
    assert any(is_meat(food, session.knowledge) for food in foods)


def test_a_vegetarian_may_have_a_steak_of_celeriac_and_is_told_of_gravy(session: Session) -> None:
    session.new_conversation()
    session.ask("Ann is vegetarian")
    assert "Ann may have: celeriac steak" in session.ask("can Ann have the celeriac steak").text
    assert "Ask or read the label" in session.ask("can Ann have the lentil shepherd's pie").text


def test_what_is_inside_a_part_is_left_off_too(parse: Parse, session: Session) -> None:
    (dish,) = parse("mushroom risotto without butter").dishes
    assert not any("food/butter" in contents(part.food, session.knowledge) for part in dish.parts)


SPICED = [
    ("vegan chilli with black beans and dark chocolate", "food/vegan-chilli"),
    ("beef stew with stout and dark chocolate", "food/beef-stew"),
    ("chilli con carne with dark chocolate", "food/chilli-con-carne"),
    ("black bean chilli with cocoa", "food/black-bean"),
]


@pytest.mark.parametrize(("typed", "base"), SPICED)
def test_chocolate_in_a_stew_is_a_spice_of_it(parse: Parse, typed: str, base: str) -> None:
    (dish,) = parse(f"wine for {typed}").dishes
    assert dish.main.food == base
    assert dish.parts[-1].food in ("food/dark-chocolate-70", "food/cocoa")
    assert dish.parts[-1].mass < 3


def test_chocolate_behind_a_stew_is_the_pudding(parse: Parse) -> None:
    assert len(parse("what goes with beef stew and dark chocolate").dishes) == 2
