"""What any wine course teaches, one mechanism a test: which way it moves a pair, and never by how much.

All of it is common practice; where two plates or glasses are compared, only one thing differs between them.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from assistant.pairing import choose
from assistant.pairing.glass import glass_of
from tests.pairing.made import match
from tests.pairing_bench import KNOWLEDGE, fired, glass, glass_with, plate, plate_with, total


def strength(rule: str, food: str, wine: str) -> float:
    """How strongly a rule speaks of a shipped food with a shipped wine."""
    return sum(f.strength for f in fired(plate(food), glass(wine)) if f.rule == f"rule/{rule}")


@pytest.mark.parametrize("rule", ["flowers-meet-floral-wine", "spice-meets-floral-wine"])
def test_roses_under_grip_are_no_floral_wine(rule: str) -> None:
    food = "mutton-curry"
    assert strength(rule, food, "off-dry-riesling") == 1.0
    assert strength(rule, food, "barolo") == 0.0


def test_a_hot_dish_forgives_an_off_dry_wine_and_no_dessert_wine() -> None:
    for rule in ("sweet-wine-on-savoury-plate", "sweet-wine-before-dessert"):
        mild, hot = (
            {
                sweet: sum(
                    f.strength
                    for f in fired(plate_with("chicken", heat=heat), glass_with("semillon", sweetness=sweet))
                    if f.rule == f"rule/{rule}"
                )
                for sweet in (2.4, 3.6)
            }
            for heat in (0.0, 3.0)
        )
        assert hot[2.4] < mild[2.4]
        assert hot[3.6] == mild[3.6] > 0


def test_a_sweet_white_is_still_white_beside_a_roast() -> None:
    assert strength("white-where-red-belongs", "steak", "sauternes") == 1.0
    assert strength("white-where-red-belongs", "aged-cheddar", "sauternes") == 0.0


def test_dark_meat_in_thin_gravy_is_still_meat() -> None:
    rule = "grip-with-nothing-to-hold"
    stew, beans = plate("beef-stew"), plate_with("black-bean", **plate("beef-stew").points)
    found = {
        name: sum(f.strength for f in fired(food, glass("barolo")) if f.rule == f"rule/{rule}")
        for name, food in (("stew", stew), ("beans", beans))
    }
    assert 0 < found["stew"] < 0.5 * found["beans"]


@pytest.mark.parametrize("food", ["salami", "mutton-curry"])
def test_cold_slices_and_curries_hold_half_the_grip(food: str) -> None:
    shipped = plate(food)
    plain = plate_with("steak", **shipped.points)
    rule = "rule/grip-meets-protein"
    half, whole = (
        sum(f.strength for f in fired(there, glass("madiran")) if f.rule == rule)
        for there in (shipped, plain)
    )
    assert half == pytest.approx(0.5 * whole, abs=1e-4)


@pytest.mark.parametrize(
    ("food", "wine"),
    [("walnut", "lbv-port"), ("vanilla-ice-cream", "pedro-ximenez"), ("creme-caramel", "tawny-port")],
)
def test_a_small_glass_after_the_meal_is_forgiven_its_size(food: str, wine: str) -> None:
    poured, large = glass(wine), glass_with(wine)
    large = replace(large, kinds=tuple(kind for kind in large.kinds if kind != "kind/fortified-sweet"))
    assert total(plate(food), poured) > total(plate(food), large)


def test_dry_sherry_stands_beside_soup_and_not_beside_a_spiced_one() -> None:
    rule = "dry-fortified-wine-with-soup"
    assert strength(rule, "mushroom-soup", "amontillado") == 1.0
    assert strength(rule, "gazpacho", "amontillado") == 0.0
    assert strength(rule, "tom-yum", "amontillado") == 0.0
    assert strength(rule, "mushroom-soup", "lbv-port") == 0.0


def test_garlic_and_herbs_of_the_south_ask_for_pink() -> None:
    rule = "pink-with-southern-food"
    assert strength(rule, "ratatouille", "provence-rose") == 1.0
    assert strength(rule, "poached-egg", "provence-rose") == 0.0
    assert strength(rule, "ratatouille", "white-zinfandel") < 1.0


def test_a_fortified_wine_calms_no_chilli() -> None:
    hot = plate_with("tofu", heat=3.0)
    calmed = {
        alcohol: sum(
            f.strength
            for f in fired(hot, glass_with("off-dry-riesling", alcohol=alcohol))
            if f.rule == "rule/chilli-met-with-sugar"
        )
        for alcohol in (2.0, 5.0)
    }
    assert calmed == {2.0: 1.0, 5.0: 0.0}


def test_the_drier_madeiras_taste_drier_than_their_sugar() -> None:
    sercial = KNOWLEDGE.wines["wine/sercial-madeira"]
    assert sercial.reads_drier > 0
    assert glass("sercial-madeira").points["sweetness"] < glass_of(sercial, KNOWLEDGE).sugar_points - 1
    assert glass("sercial-madeira").points["sweetness"] < glass("bual-madeira").points["sweetness"]


def test_the_sauce_decides_the_colour_of_pale_meat() -> None:
    assert plate("chicken").points["lean"] < 0
    assert plate("coq-au-vin").points["lean"] > 0
    assert plate("chicken-in-mole-poblano").points["lean"] > 0


def test_three_bottles_to_choose_from_are_not_three_with_bubbles() -> None:
    few = [("champagne", 30.0), ("prosecco", 29.0), ("cava", 28.5), ("muscadet", 27.0), ("sancerre", 26.0)]
    ranked = [match(f"wine/{wine}", score, KNOWLEDGE) for wine, score in few]
    named = {m.wine for m in choose.picks(ranked, 3, KNOWLEDGE, at_hand=True)}
    assert named == {"wine/champagne", "wine/muscadet", "wine/sancerre"}


def test_bubbles_that_are_far_better_are_named_all_the_same() -> None:
    few = [("champagne", 40.0), ("prosecco", 39.0), ("muscadet", 12.0), ("sancerre", 11.0)]
    ranked = [match(f"wine/{wine}", score, KNOWLEDGE) for wine, score in few]
    named = {m.wine for m in choose.picks(ranked, 3, KNOWLEDGE, at_hand=True)}
    assert {"wine/champagne", "wine/prosecco"} < named


def test_a_hotter_curry_of_its_own_is_hotter() -> None:
    assert plate("lamb-madras").points["heat"] > plate("mutton-curry").points["heat"] + 0.5


def test_a_dry_white_is_no_wine_for_a_chocolate_pudding() -> None:
    rule = "chocolate-on-dry-white"
    assert strength(rule, "chocolate-mousse", "sauvignon-blanc") == 1.0
    assert strength(rule, "chocolate-mousse", "sauternes") == 0.0
    assert strength(rule, "chicken-in-mole-poblano", "sauvignon-blanc") == 0.0


def test_pink_beside_dark_meat_loses_half_of_what_white_does() -> None:
    rule = "white-where-red-belongs"
    white, pink = (strength(rule, "steak", wine) for wine in ("sauvignon-blanc", "provence-rose"))
    assert pink == pytest.approx(0.5 * white)
    assert strength(rule, "steak", "malbec") == 0.0


def test_red_fruit_answers_a_fruit_sauce_on_meat() -> None:
    rule = "sweetness-floor"
    plain, fruity = (
        sum(f.strength for f in fired(plate("duck-with-cherry-sauce"), wine) if f.rule == f"rule/{rule}")
        for wine in (replace(glass_with("pinot-noir"), smells=frozenset()), glass("pinot-noir"))
    )
    assert fruity == pytest.approx(0.5 * plain, abs=1e-4)
