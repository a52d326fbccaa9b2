"""Published findings on taste, and whether the engine moves the way they found.

Each row of reference/pairing_science.csv that was read has a test here, or stands in
`NOT_EXPRESSED` with the reason. Only the direction is tested, never the size.
"""

from __future__ import annotations

import csv
from collections.abc import Callable
from pathlib import Path
from statistics import mean
from typing import TypeVar

import pytest

from assistant.pairing.engine import board
from tests.pairing_bench import (
    KNOWLEDGE,
    dish,
    engine,
    family,
    fired,
    glass,
    glass_with,
    plate,
    plate_with,
    poured,
    score,
    total,
)

TABLE = Path(__file__).parent / "reference" / "pairing_science.csv"
TESTED: set[str] = set()
NOT_EXPRESSED = {
    "ethanol mixtures": "the excerpt gives no direction, only that alcohol is not neutral",
    "serving temperature": "wines are poured at their usual temperature; a glass has none",
    "wine and cheese dynamics": "a method of judging pairs, without a direction",
}
ALSO_NOT_EXPRESSED = {
    "viscosity and astringency": "thickness without fat is no property of a plate",
    "capsaicin mouth burn": "the part on serving cold: a glass has no temperature",
    "taste interactions review": "salt and acid lifting each other while both are moderate",
    "sweet-sour suppression": "sugar on the plate does not lower its sourness",
    "wine and cheese experts": "white above red with cheese: the consumer study says the reverse",
    "wine and cheese consumers": "white mould as hard: published pairings praise it with many wines",
    "TRPV1": "the part on serving cool: a glass has no temperature",
}
AGAINST = {
    "viscosity and astringency": ("grip-turns-cream-chalky", "custom holds that grip dries cream out"),
    "sucrose and astringency": ("grip-with-sweet-food", "adaptation to sweet food is given more weight"),
}
REDS = ("pinot-noir", "sangiovese", "syrah", "cabernet-sauvignon")

Test = TypeVar("Test", bound=Callable[..., None])


def findings() -> dict[str, dict[str, str]]:
    """Rows by topic; a topic that comes again has its turn behind it."""
    found: dict[str, dict[str, str]] = {}
    with TABLE.open(encoding="utf-8") as file:
        for row in csv.DictReader(file):
            turn = 1 + sum(key.split(" #")[0] == row["topic"] for key in found)
            found[row["topic"] if turn == 1 else f"{row['topic']} #{turn}"] = row
    return found


def finding(key: str) -> Callable[[Test], Test]:
    """Marks a test as the one of this row."""

    def mark(test: Test) -> Test:
        TESTED.add(key)
        return test

    return mark


def test_each_finding_that_was_read_is_tested_or_listed() -> None:
    read = {key for key, row in findings().items() if row["read_or_memory"] == "read"}
    assert TESTED | set(NOT_EXPRESSED) == read
    assert not TESTED & set(NOT_EXPRESSED)
    assert set(ALSO_NOT_EXPRESSED) | set(AGAINST) <= TESTED


@pytest.mark.parametrize("key", AGAINST)
def test_rules_that_go_against_a_finding_are_listed_while_they_do(key: str) -> None:
    rule, _ = AGAINST[key]
    food = {"grip-turns-cream-chalky": {"trait": "cream"}, "grip-with-sweet-food": {"sugar": 2.5}}[rule]
    before, after = plate("penne"), plate_with("penne", **food)  # type: ignore[arg-type]
    grippy = glass_with("sangiovese", tannin=4.0)
    assert family(after, grippy, "tannin", "texture") < family(before, grippy, "tannin", "texture")
    assert f"rule/{rule}" in {f.rule for f in fired(after, grippy)}


# Grip


@finding("seafood and iron")
@pytest.mark.parametrize("food", ["scallop", "cod", "mussel"])
def test_iron_turns_seafood_fishy(food: str) -> None:
    low, high = glass_with("light-chilled-red", iron=0.5), glass_with("light-chilled-red", iron=3.5)
    assert total(plate(food), high) < total(plate(food), low)
    assert total(plate("steak"), high) == total(plate("steak"), low)


@finding("cheese and red wine")
@pytest.mark.parametrize("wine", REDS)
def test_cheese_softens_grip_and_oak_of_every_red(wine: str) -> None:
    bread = engine().plate(dish("white-bread"))
    cheese = engine().plate(dish("white-bread", ("cheddar", "topping", 60.0)))
    oaky = glass_with(wine, tannin=3.5, oak=3.5)
    assert family(cheese, oaky, "tannin") > family(bread, oaky, "tannin")
    assert family(cheese, oaky, "oak") >= family(bread, oaky, "oak")


@finding("fat and astringency")
@pytest.mark.parametrize("food", ["steak", "lentil", "baguette"])
def test_fat_and_grip_relieve_each_other(food: str) -> None:
    lean, fatty = plate_with(food, fat=0.5), plate_with(food, fat=3.5)
    grippy = glass_with("cabernet-sauvignon", tannin=4.0)
    assert family(fatty, grippy, "tannin") > family(lean, grippy, "tannin")
    sharp, soft = glass_with("sancerre", acid=4.0), glass_with("sancerre", acid=1.5)
    assert family(fatty, sharp, "acid") > family(fatty, soft, "acid")
    assert family(fatty, sharp, "acid") > family(lean, sharp, "acid")


@finding("lipids and tannin")
@pytest.mark.parametrize("food", ["lentil", "roast-beef", "aubergine"])
def test_a_spoon_of_oil_lowers_grip(food: str) -> None:
    plain, oiled = plate(food), plate(food, {"fat": 12.0})
    for wine in REDS[1:]:
        assert family(oiled, glass(wine), "tannin") > family(plain, glass(wine), "tannin"), wine


@finding("viscosity and astringency")
def test_cream_and_fat_lubricate_grip() -> None:
    plain = engine().plate(dish("penne"))
    creamy = engine().plate(dish("penne", ("cream-sauce", "sauce", 60.0)))
    for wine in REDS[1:]:
        assert family(creamy, glass(wine), "tannin") > family(plain, glass(wine), "tannin"), wine


@finding("sucrose and astringency")
def test_sugar_in_the_wine_lowers_dryness() -> None:
    lean = plate("chicory")
    dry, sweet = (glass_with("cabernet-sauvignon", tannin=4.0, sweetness=s) for s in (0.0, 2.0))
    assert family(lean, sweet, "tannin") > family(lean, dry, "tannin")


@finding("sweetener and bitterness")
def test_sugar_masks_bitterness_more_than_grip() -> None:
    bitter_lean = plate_with("chicory", bitter=3.0)
    dry, sweet = (glass_with("cabernet-sauvignon", tannin=4.0, sweetness=s) for s in (0.0, 3.0))
    relief = {}
    for name in ("bitter", "tannin"):
        before, after = family(bitter_lean, dry, name), family(bitter_lean, sweet, name)
        assert before < 0
        relief[name] = (after - before) / -before
    assert relief["bitter"] > relief["tannin"] > 0


@finding("tannin and fat")
def test_grip_and_fat_match_best_when_equal() -> None:
    for fat, near, far in ((0.5, 2.0, 4.5), (3.8, 4.5, 2.0)):
        meat = plate_with("steak", fat=fat)
        like, unlike = (glass_with("syrah", tannin=t) for t in (near, far))
        assert family(meat, like, "tannin") > family(meat, unlike, "tannin"), fat


@finding("tannin differences")
def test_varieties_stand_in_measured_order_of_grip() -> None:
    order = ["cabernet-sauvignon", "zinfandel", "merlot", "syrah", "pinot-noir"]
    grip = [glass(wine).points["tannin"] for wine in order]
    assert grip == sorted(grip, reverse=True)
    assert len(set(grip)) == len(grip)


# Aromas


@finding("rotundone pepper")
def test_peppery_wine_meets_pepper() -> None:
    plain, peppered = plate("steak"), plate_with("steak", trait="pepper")
    syrah, merlot = glass("syrah"), glass("merlot")
    assert total(peppered, syrah) > total(plain, syrah)
    assert total(peppered, merlot) == total(plain, merlot)


@finding("rotundone distribution")
def test_which_wines_are_peppery() -> None:
    gain = {}
    peppery, others = ["syrah", "shiraz", "gruner-veltliner"], ["cabernet-sauvignon", "chardonnay", "fino"]
    for wine in (*peppery, *others):
        plain, peppered = plate("steak"), plate_with("steak", trait="pepper")
        gain[wine] = family(peppered, glass(wine), "bridge") - family(plain, glass(wine), "bridge")
    assert [wine for wine, more in gain.items() if more > 0] == peppery


@finding("Sauvignon Blanc aroma")
def test_green_wine_meets_green_herbs() -> None:
    plain, herbed = plate("chicken-breast"), plate_with("chicken-breast", trait="herb")
    for wine in ("sauvignon-blanc", "marlborough-sauvignon-blanc"):
        assert {"aroma/green", "aroma/tropical"} <= glass(wine).smells
        assert total(herbed, glass(wine)) > total(plain, glass(wine)), wine
    assert total(herbed, glass("unoaked-chardonnay")) == total(plain, glass("unoaked-chardonnay"))


@finding("Sauvignon Blanc aroma #2")
def test_wines_aged_with_air_have_lost_green_and_tropical_notes() -> None:
    aired = [w for w in KNOWLEDGE.wines.values() if "aroma/oxidative" in w.smells]
    assert len(aired) > 10
    assert not [w.id for w in aired if w.smells & {"aroma/green", "aroma/tropical"}]
    young = glass("sauvignon-blanc").points["maturity"]
    assert young < glass("unoaked-chardonnay").points["maturity"]


# Chilli


@finding("ethanol and burn")
def test_alcohol_makes_chilli_hotter() -> None:
    hot = plate_with("chicken-breast", heat=3.0)
    burn = [family(hot, glass_with("syrah", alcohol=a), "heat") for a in (2.0, 3.2, 4.0)]
    assert burn == sorted(burn, reverse=True)
    assert burn[0] > burn[-1]
    vetoes = [any(f.cap is not None for f in fired(hot, glass_with("syrah", alcohol=a))) for a in (2.0, 4.0)]
    assert vetoes == [False, True]


@finding("TRPV1")
def test_alcohol_costs_more_the_hotter_the_plate() -> None:
    cost = []
    for heat in (0.0, 2.0, 3.0):
        food = plate_with("chicken-breast", heat=heat)
        strong, light = (family(food, glass_with("syrah", alcohol=a), "heat") for a in (4.0, 2.0))
        cost.append(light - strong)
    assert cost[0] == 0
    assert cost[0] < cost[1] < cost[2]


@finding("capsaicin mouth burn")
def test_a_little_sugar_calms_as_much_as_a_lot_and_alcohol_does_not() -> None:
    hot = plate_with("chicken-breast", heat=3.0)
    calm = {s: family(hot, glass_with("off-dry-riesling", sweetness=s), "heat") for s in (0.0, 2.0, 4.0)}
    assert calm[2.0] > calm[0.0]
    assert calm[4.0] == calm[2.0]
    drink = glass_with("dry-riesling", alcohol=0.5)
    assert family(hot, glass_with(drink, alcohol=1.5), "heat") <= family(hot, drink, "heat")


@finding("capsaicin mouth burn")
def test_milk_calms_chilli() -> None:
    curry = dish("chicken-breast", ("vindaloo-sauce", "sauce", 60.0))
    milky = dish("chicken-breast", ("vindaloo-sauce", "sauce", 60.0), ("yogurt", "stirred-in", 60.0))
    hot, calmed = engine().plate(curry), engine().plate(milky)
    assert calmed.points["heat"] < hot.points["heat"]
    assert family(calmed, glass("syrah"), "heat") > family(hot, glass("syrah"), "heat")


# Salt, sugar, sourness and bitterness


@finding("salt and bitterness")
def test_salt_lowers_bitterness() -> None:
    plain, salted = plate("chicory"), plate("chicory", {"sodium": 500.0})
    assert salted.points["bitter"] < plain.points["bitter"]
    for wine in REDS[1:]:
        assert family(salted, glass(wine), "bitter") > family(plain, glass(wine), "bitter"), wine


@finding("taste interactions review")
def test_much_salt_and_much_acid_suppress_each_other() -> None:
    plain, salty = plate_with("cod", salt=1.0), plate_with("cod", salt=3.5)
    sharp, mild = glass_with("sancerre", acid=4.0), glass_with("sancerre", acid=2.5)
    assert family(salty, sharp, "acid") > family(plain, sharp, "acid")
    assert family(salty, mild, "acid") == family(plain, mild, "acid")


@finding("sweet-sour suppression")
def test_sugar_and_salt_suppress_bitterness() -> None:
    plain = plate("chicory")
    for more in ({"sugar": 15.0}, {"sodium": 500.0}):
        assert plate("chicory", more).points["bitter"] < plain.points["bitter"], more
    bitter = plate_with("chicory", bitter=3.5)
    dry, sweet = (glass_with("off-dry-riesling", sweetness=s) for s in (0.5, 3.5))
    assert family(bitter, sweet, "bitter") > family(bitter, dry, "bitter")


@finding("sweet-sour suppression #2")
def test_acid_hides_sugar_and_sugar_allows_acid() -> None:
    soft, sharp = (poured("off-dry-riesling", acidity=a) for a in (5.5, 9.0))
    assert sharp.points["sweetness"] < soft.points["sweetness"]
    tart = plate_with("vanilla-ice-cream", sugar=2.5)
    assert family(tart, sharp, "sweet") < family(tart, soft, "sweet")


# Single foods


@finding("artichoke")
def test_artichoke_makes_the_wine_seem_sweeter() -> None:
    """What tastes sweeter than it is wants to be drier and sharper to begin with."""
    plain, thistle = plate("courgette"), plate_with("courgette", trait="artichoke")
    sharp, soft = glass_with("sancerre", acid=4.5), glass_with("sancerre", acid=2.0)
    gain = [total(thistle, g) - total(plain, g) for g in (sharp, soft)]
    assert gain[0] > gain[1]


@finding("artichoke variability")
def test_artichoke_is_a_caution_not_a_block() -> None:
    thistle = plate("artichoke")
    wines = list(engine().glasses.values())
    assert not [g.wine for g in wines if any(f.cap is not None for f in fired(thistle, g))]


@finding("serving temperature #2")
def test_cold_quietens_food() -> None:
    """Only the aroma: the sugar of a cold pudding is left alone, because it melts in the mouth and
    a wine that is not sweet enough is found out then."""
    ice, own = plate("vanilla-ice-cream"), KNOWLEDGE.food("food/vanilla-ice-cream").amounts
    assert ice.values["aroma"] < own["aroma"].typical
    assert ice.values["sugar"] == own["sugar"].typical


# Wine with cheese


@finding("wine and cheese liking")
@pytest.mark.parametrize("cheese", ["epoisses", "comte", "roquefort", "crottin-de-chavignol"])
def test_cheese_spoils_none_of_the_four_wines(cheese: str) -> None:
    wines = ("sweet-pacherenc", "sancerre", "red-burgundy", "madiran")
    found = {wine: score(plate(cheese), glass(wine)) for wine in wines}
    assert not [(w, round(s.total, 1)) for w, s in found.items() if s.verdict == "clash" or s.vetoed]


@finding("wine and cheese experts")
def test_dessert_wines_find_their_cheese_in_blue() -> None:
    sweet = ("icewine", "late-harvest-riesling", "vintage-port")
    for wine in sweet:
        blue = mean(total(plate(c), glass(wine)) for c in ("roquefort", "gorgonzola", "stilton"))
        mild = mean(total(plate(c), glass(wine)) for c in ("brie", "gouda", "mozzarella"))
        assert blue > mild, wine


@finding("wine and cheese consumers")
def test_cheddar_and_gruyere_suit_more_dry_wines_than_blue_does() -> None:
    wines = [w for w, g in engine().glasses.items() if w.startswith("wine/") and g.sugar_points < 1.5]
    fair = next(band.floor for band in KNOWLEDGE.bands if band.verdict == "fair")
    suits = {
        cheese: sum(m.score >= fair for m in engine().rank(board([f"food/{cheese}"]), wines))
        for cheese in ("cheddar", "gruyere", "roquefort", "stilton")
    }
    assert min(suits["cheddar"], suits["gruyere"]) > max(suits["roquefort"], suits["stilton"]), suits


@finding("Shiraz and Cheddar")
def test_cheddar_softens_shiraz() -> None:
    softened = family(plate("cheddar"), glass("shiraz"), "tannin")
    assert softened > 0
    assert softened > family(plate("plain-cracker"), glass("shiraz"), "tannin")


@finding("sweetness, acid, tannin on match")
@pytest.mark.parametrize("axis", ["sweetness", "acid", "tannin"])
def test_each_axis_of_the_wine_moves_the_match(axis: str) -> None:
    """On most foods; plain cod has nothing that sharpness could answer."""
    glasses = [glass_with("pinot-noir", **{axis: p}) for p in (0.5, 2.5, 4.5)]  # type: ignore[arg-type]
    foods = ("steak", "brie", "cod", "tomato")
    moved = [food for food in foods if len({round(total(plate(food), g), 3) for g in glasses}) > 1]
    assert len(moved) >= 3, moved
