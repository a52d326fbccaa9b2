"""Dishes as eaten: worked examples, methods, traits of parts, and what one taste hides of another."""

from __future__ import annotations

import pytest

from assistant.knowledge.store import Knowledge
from assistant.pairing.dish import Dish, single, table_of, with_amounts
from assistant.pairing.engine import Engine
from assistant.pairing.plate import Plate, bites_of, recipe
from assistant.session import Session
from tests.pairing.made import dish, part

NEAR = 0.2
LEAVES, DRESSING = 80.0, 20.0


@pytest.fixture(scope="module")
def engine(session: Session) -> Engine:
    """The engine on the shipped knowledge."""
    return session.engine


@pytest.fixture(scope="module")
def knowledge(engine: Engine) -> Knowledge:
    """The shipped knowledge."""
    return engine.knowledge


def salad(engine: Engine, dressing: str) -> Plate:
    """80 g of leaves with 20 g of a dressing."""
    return engine.plate(dish(part("lettuce", "base", LEAVES), part(dressing, "dressing", DRESSING)))


@pytest.mark.parametrize(
    ("dressing", "taste", "points"),
    [
        ("vinaigrette", "acid", 3.7),
        ("vinaigrette", "fat", 3.5),
        ("ranch-dressing", "acid", 1.5),
        ("ranch-dressing", "fat", 2.7),
        ("honey-mustard-dressing", "sugar", 2.6),
    ],
)
def test_worked_examples_of_dressed_leaves(engine: Engine, dressing: str, taste: str, points: float) -> None:
    assert salad(engine, dressing).points[taste] == pytest.approx(points, abs=NEAR)


@pytest.mark.parametrize("leaves", ["lettuce", "salad-leaves", "frisee"])
def test_a_sharp_dressing_is_sharp_on_any_leaf(engine: Engine, leaves: str) -> None:
    sharp = engine.plate(dish(part(leaves, "base", LEAVES), part("vinaigrette", "dressing", DRESSING)))
    creamy = engine.plate(dish(part(leaves, "base", LEAVES), part("ranch-dressing", "dressing", DRESSING)))
    assert sharp.points["acid"] >= 3.0 > 2.5 > creamy.points["acid"]


def test_dressing_has_more_than_its_weight_of_the_contact(engine: Engine) -> None:
    assert salad(engine, "vinaigrette").shares == pytest.approx((80 / 130, 50 / 130))


@pytest.mark.parametrize(
    ("role", "contact"),
    [("dip", 0.5), ("stirred-in", 1.0), ("topping", 1.5), ("sauce", 2.0), ("dressing", 2.5)],
)
def test_the_role_sets_how_much_a_gram_meets_the_tongue(engine: Engine, role: str, contact: float) -> None:
    shares = engine.plate(dish(part("chicken", "base", 100.0), part("vinaigrette", role, 20.0))).shares
    assert shares[1] == pytest.approx(20 * contact / (100 + 20 * contact))


def test_coating_points_are_those_of_the_sauce_alone(engine: Engine) -> None:
    plain = engine.plate(single("food/lettuce"))
    dressed = salad(engine, "vinaigrette")
    alone = engine.plate(single("food/vinaigrette"))
    assert (plain.points["coatingAcid"], plain.points["coatingSugar"]) == (0.0, 0.0)
    assert dressed.points["coatingAcid"] == pytest.approx(alone.points["acid"])
    assert dressed.points["coatingAcid"] > dressed.points["acid"]


def test_a_composed_dish_brings_its_own_sauce(engine: Engine) -> None:
    assert engine.plate(single("food/sweet-and-sour-pork")).points["coatingSugar"] > 2.0


def test_amounts_put_on_top_are_added_in_their_units(engine: Engine) -> None:
    plain = engine.plate(single("food/salmon"))
    salted = engine.plate(dish(part("salmon", "base", 100.0), sodium=400.0, titratableAcidity=-9.0))
    assert salted.values["sodium"] == pytest.approx(plain.values["sodium"] + 400.0)
    assert salted.values["titratableAcidity"] == 0.0
    assert salted.points["salt"] > plain.points["salt"]


# --- methods


def test_a_method_adds_its_amounts_and_traits(engine: Engine, knowledge: Knowledge) -> None:
    method = knowledge.methods["method/deep-fried"]
    plain = engine.plate(dish(part("cod", "base", 100.0)))
    fried = engine.plate(dish(part("cod", "base", 100.0, "deep-fried")))
    assert fried.values["fat"] == pytest.approx(plain.values["fat"] * method.concentrate + method.adds["fat"])
    assert method.traits
    assert method.traits <= fried.traits
    assert not method.traits & plain.traits
    assert fried.points["weight"] > plain.points["weight"]


def test_a_method_changes_only_the_part_it_is_applied_to(engine: Engine) -> None:
    def plate(on_base: tuple[str, ...], on_side: tuple[str, ...]) -> Plate:
        return engine.plate(
            dish(part("chicken", "base", 100.0, *on_base), part("button-mushroom", "topping", 5.0, *on_side))
        )

    assert plate(("char-grilled",), ()).points["smoke"] > plate((), ("char-grilled",)).points["smoke"] > 0


def test_methods_apply_in_turn(engine: Engine) -> None:
    once = engine.plate(dish(part("salmon", "base", 100.0, "smoked")))
    twice = engine.plate(dish(part("salmon", "base", 100.0, "smoked", "grilled")))
    assert twice.values["smoke"] > once.values["smoke"]


def test_an_unknown_food_or_method_is_an_error(engine: Engine) -> None:
    with pytest.raises(KeyError):
        engine.plate(dish(part("unobtainium", "base", 100.0)))
    with pytest.raises(KeyError):
        engine.plate(dish(part("cod", "base", 100.0, "teleported")))


# --- traits of parts


def test_a_small_part_keeps_only_its_loud_traits(engine: Engine, knowledge: Knowledge) -> None:
    food = knowledge.food("food/blue-cheese-dressing")
    loud = food.traits & knowledge.loud_traits
    assert loud != food.traits
    share = knowledge.constants["small-part-share"]

    def traits(touch: float) -> frozenset[str]:
        small = part("blue-cheese-dressing", "garnish", 100.0 * touch / (1 - touch))
        return engine.plate(dish(part("steak", "base", 100.0), small)).traits

    assert food.traits <= traits(share + 0.01)
    assert not (food.traits - loud - knowledge.food("food/steak").traits) & traits(share - 0.01)
    assert loud <= traits(share - 0.01)


def test_a_pinch_of_seasoning_keeps_all_its_traits(engine: Engine, knowledge: Knowledge) -> None:
    food = knowledge.food("food/rosemary")
    assert food.traits
    seasoned = engine.plate(dish(part("lamb", "base", 100.0), part("rosemary", "seasoning", 0.5)))
    assert food.traits <= seasoned.traits


def test_kinds_are_those_of_the_main_part(engine: Engine, knowledge: Knowledge) -> None:
    found = engine.plate(dish(part("lobster", "base", 100.0), part("butter", "topping", 20.0)))
    assert found.kinds[0] == "food/lobster"
    assert set(knowledge.food("food/lobster").kinds) <= set(found.kinds)
    assert "food/butter" not in found.kinds


# --- what one taste does to another


def test_mushroom_with_meat_multiplies_umami(engine: Engine, knowledge: Knowledge) -> None:
    factor = knowledge.constants["umami-synergy"]
    assert factor > 1
    together = engine.plate(dish(part("beef", "base", 100.0), part("porcini", "topping", 40.0)))
    beef, porcini = (engine.plate(single(f"food/{f}")).values["glutamate"] for f in ("beef", "porcini"))
    assert together.values["glutamate"] == pytest.approx(factor * (100 * beef + 60 * porcini) / 160)


@pytest.mark.parametrize("food", ["porcini", "camembert", "truffle-gouda"])
def test_an_earthy_food_by_itself_multiplies_nothing(engine: Engine, knowledge: Knowledge, food: str) -> None:
    own = knowledge.food(f"food/{food}")
    assert "trait/earthy" in own.traits
    found = engine.plate(single(own.id)).values["glutamate"]
    assert found == pytest.approx(own.amounts["glutamate"].typical)


def with_points(engine: Engine, **added: float) -> Plate:
    """Boiled potato with amounts added on top: plain enough to show one taste after another."""
    return engine.plate(dish(part("boiled-potato", "base", 100.0), **added))


def test_sugar_and_salt_hide_bitterness(engine: Engine, knowledge: Knowledge) -> None:
    c = knowledge.constants
    bare = with_points(engine, bitterness=4.0, sodium=-9999.0)
    sweet = with_points(engine, bitterness=4.0, sodium=-9999.0, sugar=20.0)
    salty = with_points(engine, bitterness=4.0, sodium=1000.0)
    hidden = c["bitter-per-sugar"] * (sweet.points["sugar"] - bare.points["sugar"])
    assert sweet.points["bitter"] == pytest.approx(bare.points["bitter"] - hidden)
    assert salty.points["bitter"] < bare.points["bitter"]


def test_fat_above_two_points_carries_heat_off(engine: Engine, knowledge: Knowledge) -> None:
    lean = with_points(engine, scoville=1000.0)
    rich = with_points(engine, scoville=1000.0, fat=30.0)
    assert lean.points["fat"] < 2
    off = knowledge.constants["heat-per-fat"] * (rich.points["fat"] - 2)
    assert rich.points["heat"] == pytest.approx(lean.points["heat"] - off)


def test_cream_calms_heat(engine: Engine, knowledge: Knowledge) -> None:
    calm = knowledge.constants["heat-of-cream"]
    wings = (part("chicken", "base", 100.0), part("hot-sauce", "sauce", 10.0))
    plain, creamy = (engine.plate(dish(*wings, part(f, "topping", 10.0))) for f in ("butter", "sour-cream"))
    assert ("trait/cream" in plain.traits, "trait/cream" in creamy.traits) == (False, True)
    assert creamy.points["heat"] <= plain.points["heat"] - calm / 2


@pytest.mark.parametrize("food", ["cream", "sour-cream", "yogurt", "greek-yogurt", "raita"])
def test_cream_and_yoghurt_count_as_cream(engine: Engine, food: str) -> None:
    assert "trait/cream" in engine.plate_of_food(f"food/{food}").traits


def test_ice_cold_food_smells_less(engine: Engine, knowledge: Knowledge) -> None:
    own = knowledge.food("food/vanilla-ice-cream").amounts["aroma"].typical
    found = engine.plate(single("food/vanilla-ice-cream"))
    assert "trait/cold" in found.traits
    assert found.values["aroma"] == pytest.approx(own * (1 - knowledge.constants["cold-loss"]))


def test_points_lie_between_zero_and_five(engine: Engine, knowledge: Knowledge) -> None:
    for food in knowledge.of_type("Food"):
        points = dict(engine.plate_of_food(food).points)
        assert -1 <= points.pop("lean") <= 1, food
        assert all(0 <= value <= 5 for value in points.values()), (food, points)


def test_richer_food_weighs_more(engine: Engine) -> None:
    assert with_points(engine, fat=30.0).points["weight"] > with_points(engine).points["weight"]


def test_the_colour_custom_is_that_of_the_main_part_shifted_by_its_coat(
    engine: Engine, knowledge: Knowledge
) -> None:
    own = knowledge.food("food/salmon").lean
    sauces = [f for f in map(knowledge.food, knowledge.members("kind/sauce")) if f.role == "role/sauce"]
    whitening = min(sauces, key=lambda f: f.lean or 0.0)
    assert own is not None
    assert whitening.lean is not None
    assert whitening.lean < 0
    sauce = part(whitening.id.removeprefix("food/"), "sauce", 20.0)
    assert engine.plate_of_food("food/salmon").points["lean"] == pytest.approx(own)
    coated = engine.plate(dish(part("salmon", "base", 100.0), sauce))
    assert coated.points["lean"] == pytest.approx(max(-1.0, own + whitening.lean))


# --- dishes, recipes and tables


def test_a_dish_without_a_part_is_the_dish_less_it() -> None:
    toppings = part("cheddar", "topping", 20.0), part("tomato", "topping", 20.0)
    burger = dish(part("steak", "base", 100.0), *toppings)
    assert [p.food for p in burger.without("food/cheddar").parts] == ["food/steak", "food/tomato"]


def test_a_dish_without_a_part_loses_its_name_and_keeps_what_was_put_on_top() -> None:
    called = Dish(
        (part("steak", "base", 100.0), part("cheddar", "topping", 20.0)), {"salt": 0.5}, "cheeseburger"
    )
    assert called.without("food/cheddar") == Dish(called.parts[:1], {"salt": 0.5})


def test_amounts_are_added_by_the_share_of_the_part() -> None:
    plain = dish(part("steak", "base", 150.0), part("cheddar", "topping", 50.0), salt=0.5, fat=1.0)
    richer = with_amounts(plain, {"food/cheddar": {"fat": 8.0, "acid": 2.0}, "food/brie": {"fat": 50.0}})
    assert richer.parts == plain.parts
    assert richer.added == pytest.approx({"salt": 0.5, "fat": 1.0 + 8.0 * 50 / 200, "acid": 0.5})
    assert plain.added == {"salt": 0.5, "fat": 1.0}


def test_amounts_of_two_parts_add_up_and_those_of_no_part_change_nothing() -> None:
    plain = dish(part("steak", "base", 100.0), part("cheddar", "topping", 100.0))
    both = with_amounts(plain, {"food/steak": {"fat": 4.0}, "food/cheddar": {"fat": 6.0}})
    assert both.added == pytest.approx({"fat": 5.0})
    assert with_amounts(plain, {"food/brie": {"fat": 4.0}}) is plain


def test_the_main_part_is_the_first_base_else_the_first_part() -> None:
    pesto, pasta = part("pesto", "sauce", 20.0), part("linguine", "base", 100.0)
    assert dish(pesto, pasta).main is pasta
    assert dish(pesto).main is pesto


def test_bites_of_a_table_sum_to_one() -> None:
    table = table_of([single("food/brie"), single("food/steak"), single("food/fig")], [1.0, 2.0, 1.0])
    assert [bite.share for bite in table] == [0.25, 0.5, 0.25]
    assert [bite.share for bite in table_of([single("food/brie"), single("food/fig")])] == [0.5, 0.5]


def test_a_recipe_without_numbers_of_its_own_is_eaten_in_bites(knowledge: Knowledge) -> None:
    food = next(
        f
        for f in map(knowledge.food, knowledge.members("kind/dish"))
        if not f.amounts and any(p.role == "role/side" for p in f.parts)
    )
    bites = bites_of(single(food.id), knowledge)
    assert len(bites) > 1
    assert sum(share for _, share in bites) == pytest.approx(1.0)
    assert all(p.role != "role/side" for p in bites[0][0].parts)


def test_a_plain_food_is_one_bite(knowledge: Knowledge) -> None:
    brie = single("food/brie")
    assert bites_of(brie, knowledge) == [(brie, 1.0)]


def test_every_recipe_can_be_composed(engine: Engine, knowledge: Knowledge) -> None:
    composed = [f for f in map(knowledge.food, knowledge.of_type("Food")) if f.parts]
    assert len(composed) > 100
    for food in composed:
        inner: Dish = recipe(food)
        assert sum(engine.plate(inner).shares) == pytest.approx(1.0), food.id
