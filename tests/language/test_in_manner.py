"""A place or a wine inside a dish's name is no wine that is asked of."""

from __future__ import annotations

import pytest

from tests.language.conftest import Parse

NO_WINE = {
    "wine for marsala chicken": "food/chicken-marsala",
    "wine for tripas a moda do Porto": "food/tripas-a-moda-do-porto",
    "wine for carne de porco à alentejana": "food/porco-a-alentejana",
    "wine for sole a la normande": "food/sole-normande",
    "wine for champagne risotto": "food/plain-risotto",
    "wine for kidneys in madeira": "food/kidney",
    "wine for kidneys in sherry": "food/kidney",
    "wine for mussels in Chablis": "food/mussel",
    "wine for tripe in the style of Porto": "food/tripe",
    "wine for chicken a la marsala": "food/chicken",
    "wine for octopus a la Rioja": "food/octopus",
}


@pytest.mark.parametrize(("typed", "food"), NO_WINE.items())
def test_what_a_dish_is_made_like_is_no_wine(parse: Parse, typed: str, food: str) -> None:
    frame = parse(typed)
    assert (frame.intent, frame.wines, frame.preferences) == ("wines-for-food", (), ())
    assert [dish.main.food for dish in frame.dishes] == [food]


@pytest.mark.parametrize(
    "typed", ["does champagne go with risotto", "does port go with Stilton", "cherries in Barolo"]
)
def test_a_wine_beside_a_food_is_a_wine(parse: Parse, typed: str) -> None:
    assert len(parse(typed).wines) == 1


KIN = {
    "rib-eye steak": "food/ribeye",
    "mushroom pithivier": "food/mushroom-pie",
    "leek and gruyere pithivier": "food/savoury-pithivier",
    "mushroom and chestnut wellington": "food/mushroom-wellington",
    "kimchijeon": "food/kimchi-pancake",
    "misir wat": "food/misir-wat",
    "pelmeni": "food/pelmeni",
    "eggs florentine": "food/eggs-florentine",
    "apricot tart": "food/fruit-tart",
    "white lasagne": "food/white-lasagne",
}


@pytest.mark.parametrize(("typed", "food"), KIN.items())
def test_a_dish_with_a_name_of_its_own_is_no_other(parse: Parse, typed: str, food: str) -> None:
    assert [dish.main.food for dish in parse(f"wine for {typed}").dishes] == [food]


@pytest.mark.parametrize(
    ("typed", "sauce"),
    [
        ("saltfish fritters with pepper sauce", "food/hot-sauce"),
        ("suya with pepper sauce", "food/hot-sauce"),
        ("steak with pepper sauce", "food/peppercorn-sauce"),
    ],
)
def test_pepper_sauce_is_of_the_kitchen_of_its_dish(parse: Parse, typed: str, sauce: str) -> None:
    (dish,) = parse(typed).dishes
    assert dish.parts[-1].food == sauce
