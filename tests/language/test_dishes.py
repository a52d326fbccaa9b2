"""Composed dishes: which food is the base, what is a part of it in which role, and what stands alone."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from assistant.pairing.dish import BASE, Dish
from assistant.session import Session
from tests.language.conftest import Parse


@dataclass(frozen=True, slots=True)
class Wanted:
    """A dish by local names: base, methods of the base, and parts as `role/food`, in any order."""

    base: str
    methods: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()


def seen(dish: Dish) -> Wanted:
    """A dish as it was read."""
    rest = sorted(f"{_local(p.role)}/{_local(p.food)}" for p in dish.parts if p is not dish.main)
    return Wanted(_local(dish.main.food), tuple(map(_local, dish.main.methods)), tuple(rest))


def _local(name: str) -> str:
    return name.split("/", 1)[1]


def read(parse: Parse, text: str) -> list[Wanted]:
    """The dishes of a text."""
    return [seen(dish) for dish in parse(text).dishes]


COMPOSED = {
    "grilled chicken with creamy mushroom sauce": Wanted(
        "chicken", ("grilled",), ("sauce/creamy-mushroom-sauce",)
    ),
    "roast lamb with mint sauce": Wanted("lamb", ("roasted",), ("sauce/mint-sauce",)),
    "pan-fried cod in lemon butter": Wanted("cod", ("pan-fried",), ("sauce/lemon-butter",)),
    "tomato sauce over spaghetti": Wanted("spaghetti", (), ("sauce/tomato-sauce",)),
    "pork chop with maple glaze": Wanted("pork-chop", (), ("sauce/maple-glaze",)),
    "lamb chops, mint jelly on the side": Wanted("lamb-chop", (), ("dip/mint-jelly",)),
    "baked potato with sour cream and chives": Wanted(
        "baked-potato", (), ("garnish/chives", "topping/sour-cream")
    ),
    "shrimp wrapped in bacon": Wanted("shrimp", (), ("topping/bacon",)),
    "grilled aubergine with tahini sauce": Wanted("aubergine", ("grilled",), ("sauce/tahini-sauce",)),
    "poached salmon with hollandaise": Wanted("salmon", ("poached",), ("sauce/hollandaise",)),
    "lobster with melted butter": Wanted("lobster", (), ("topping/butter",)),
    "steak with blue cheese butter": Wanted("steak", (), ("topping/blue-cheese-butter",)),
    "chicken grilled": Wanted("chicken", ("grilled",)),
    "smoked trout with horseradish cream": Wanted("smoked-trout", (), ("dip/horseradish-cream",)),
    "deep-fried tofu with soy sauce": Wanted("tofu", ("deep-fried",), ("seasoning/soy-sauce",)),
    "barbecued pork rib with barbecue sauce": Wanted("pork-rib", ("barbecued",), ("sauce/barbecue-sauce",)),
    "rosemary lamb": Wanted("lamb", (), ("seasoning/rosemary",)),
    "gnocchi with gorgonzola and walnuts": Wanted("gnocchi", (), ("topping/gorgonzola", "topping/walnut")),
    "cod with lemon and garlic": Wanted("cod", (), ("topping/garlic", "topping/lemon")),
    "tuna with wasabi and soy sauce": Wanted("tuna", (), ("seasoning/soy-sauce", "seasoning/wasabi")),
    "roasted carrots with honey glaze": Wanted("carrot", ("roasted",), ("sauce/honey-glaze",)),
    "grilled swordfish with salsa verde": Wanted("swordfish", ("grilled",), ("sauce/salsa-verde",)),
    "grilled sardines with lemon": Wanted("sardine", ("grilled",), ("topping/lemon",)),
    "hollandaise over the poached salmon": Wanted("salmon", ("poached",), ("sauce/hollandaise",)),
    "chicken w/ pesto": Wanted("chicken", (), ("sauce/pesto",)),
    "pesto chicken": Wanted("chicken", (), ("sauce/pesto",)),
    "chicken, braised, with olives": Wanted("chicken", ("braised",), ("topping/mixed-olives",)),
    "sweet potatoes with marshmallow": Wanted("sweet-potato", (), ("topping/marshmallow",)),
    "pasta with shrimp": Wanted("plain-pasta", (), ("topping/shrimp",)),
    "rice with sausage": Wanted("white-rice", (), ("topping/sausage",)),
    "slow-cooked beef in peppercorn sauce": Wanted("beef", ("slow-cooked",), ("sauce/peppercorn-sauce",)),
}  # fmt: skip


@pytest.mark.parametrize("text", COMPOSED)
def test_composed_dish(parse: Parse, text: str) -> None:
    assert read(parse, text) == [COMPOSED[text]]


def test_there_are_twenty_composed_dishes() -> None:
    assert len(COMPOSED) >= 20


@pytest.mark.parametrize(
    ("text", "bases"),
    [
        ("brie, gouda and manchego", ["brie", "gouda", "manchego"]),
        ("brie & gouda", ["brie", "gouda"]),
        ("tamales, sweet potatoes with marshmallows, pecan pie", ["tamale", "sweet-potato", "pecan-pie"]),
        ("chocolate and marshmallows", ["chocolate-bar", "marshmallow"]),
        ("steak plus cheesecake", ["steak", "cheesecake"]),
        ("salmon with dill sauce and boiled potatoes", ["salmon", "boiled-potato"]),
        ("cheddar with chutney, walnuts and salami", ["cheddar", "walnut", "salami"]),
        ("steamed broccoli and carrots", ["broccoli", "carrot"]),
        ("steak with french fries", ["steak", "french-fries"]),
        ("brie and grilled chicken", ["brie", "chicken"]),
        ("smoked salmon, roasted duck and seared scallops", ["smoked-salmon", "duck", "scallop"]),
        ("steak with grilled asparagus", ["steak", "asparagus"]),
    ],
)
def test_dishes_side_by_side(parse: Parse, text: str, bases: list[str]) -> None:
    assert [dish.base for dish in read(parse, text)] == bases


def test_a_method_belongs_to_the_food_behind_it(parse: Parse) -> None:
    first, second = read(parse, "seared scallops and grilled chicken")
    assert (first.base, first.methods) == ("scallop", ("seared",))
    assert (second.base, second.methods) == ("chicken", ("grilled",))


def test_each_sauce_goes_to_its_own_dish(parse: Parse) -> None:
    first, second = read(parse, "cod with hollandaise and steak with chimichurri")
    assert (first.base, first.parts) == ("cod", ("sauce/hollandaise",))
    assert (second.base, second.parts) == ("steak", ("sauce/chimichurri",))


def test_what_is_named_first_is_a_part_of_the_name_behind_it(parse: Parse) -> None:
    (dish,) = read(parse, "mushroom tortellini")
    assert (dish.base, dish.parts) == ("tortellini", ("topping/button-mushroom",))


@pytest.mark.parametrize(
    ("text", "gone"),
    [
        ("cheeseburger without the cheese", "cheddar"),
        ("burger, no onion", "raw-onion"),
        ("burger, hold the gherkin", "gherkin"),
        ("poached salmon with hollandaise, no hollandaise", "hollandaise"),
    ],
)
def test_a_part_that_is_left_out_is_gone(parse: Parse, text: str, gone: str) -> None:
    (dish,) = parse(text).dishes
    assert len(dish.parts) > 1 or dish.main.food == "food/salmon"
    assert gone not in [_local(p.food) for p in dish.parts]


def test_leaving_out_what_is_not_there_changes_nothing(parse: Parse) -> None:
    assert read(parse, "cod without anchovies") == [Wanted("cod")]


def test_leaving_out_the_base_keeps_it(parse: Parse) -> None:
    assert read(parse, "cod, no cod") == [Wanted("cod")]


def test_a_dressing_that_is_named_takes_the_place_of_the_usual_one(session: Session, parse: Parse) -> None:
    usual = session.knowledge.food("food/green-salad").parts
    assert "food/vinaigrette" in [p.food for p in usual]
    (dish,) = parse("green salad with ranch dressing").dishes
    dressings = [p.food for p in dish.parts if p.role == "role/dressing"]
    assert dressings == ["food/ranch-dressing"]
    assert {p.food for p in usual} - {"food/vinaigrette"} <= {p.food for p in dish.parts}


def test_a_sauce_alone_becomes_the_dish(parse: Parse) -> None:
    (dish,) = parse("vinaigrette").dishes
    assert [p.role for p in dish.parts] == [BASE]


def test_a_method_alone_is_no_dish(parse: Parse) -> None:
    assert read(parse, "grilled") == []


def test_the_usual_share_sets_the_mass(session: Session, parse: Parse) -> None:
    (dish,) = parse("cod with hollandaise").dishes
    share = session.knowledge.food("food/hollandaise").share
    assert share is not None
    sauce = dish.parts[1].mass
    assert sauce / (dish.main.mass + sauce) == pytest.approx(share / 100)


@pytest.mark.parametrize("text", ["pork chop glazed with maple glaze", "potato topped with sour cream"])
def test_words_that_link_parts_are_not_left_out(parse: Parse, text: str) -> None:
    assert parse(text).text.left_out == ()


def test_cheeses_named_without_commas_are_a_board_and_no_recipe(parse: Parse) -> None:
    assert [dish.base for dish in read(parse, "brie gouda manchego")] == ["brie", "gouda", "manchego"]


def test_a_kitchen_brings_its_dishes(session: Session, parse: Parse) -> None:
    dishes = parse("Thai food").dishes
    thai = set(session.knowledge.cuisine("region/thailand"))
    assert 1 < len(dishes) <= 6
    assert {dish.main.food for dish in dishes} <= thai


@pytest.mark.parametrize("text", ["carbonara without bacon", "Caesar salad without anchovies"])
def test_what_cannot_be_left_out_is_told(parse: Parse, text: str) -> None:
    """The sauce is known as a whole only: its numbers with and without this part are not."""
    assert parse(text).text.left_out == (text.split()[-1],)


def test_what_is_not_there_needs_no_leaving_out(parse: Parse) -> None:
    assert parse("salmon, no sauce").text.left_out == ()


@pytest.mark.parametrize(
    ("text", "food", "cooked"),
    [
        ("beef cheek in red wine", "stewing-beef", "cooked-red-wine"),
        ("chicken in a white wine with mushrooms", "chicken", "cooked-white-wine"),
        ("lamb braised in Barolo, which wine", "lamb", "cooked-red-wine"),
        ("rabbit in cider", "rabbit", "cooked-cider"),
    ],
)
def test_wine_that_is_cooked_in_is_part_of_the_dish(parse: Parse, text: str, food: str, cooked: str) -> None:
    frame = parse(text)
    (dish,) = frame.dishes
    assert seen(dish).base == food
    assert f"sauce/{cooked}" in seen(dish).parts
    assert not frame.preferences
    assert not frame.wines


@pytest.mark.parametrize("text", ["steak with red wine", "is there sugar in white wine", "sulphites in red"])
def test_wine_that_is_drunk_is_no_part_of_the_dish(parse: Parse, text: str) -> None:
    parts = [part.food for dish in parse(text).dishes for part in dish.parts]
    assert not [food for food in parts if food.startswith("food/cooked-")]


@pytest.mark.parametrize(
    ("typed", "foods"),
    [
        ("what wine for tapas night: prawns, chorizo and olives", {"shrimp", "chorizo", "mixed olives"}),
        ("we have prawns and chorizo for tapas night", {"shrimp", "chorizo"}),
        ("what wine for tapas night", {"tapas"}),
        ("tapas with prawns", {"tapas", "shrimp"}),
    ],
)
def test_a_spread_heads_what_is_named_beside_it(session: Session, typed: str, foods: set[str]) -> None:
    dishes = session.parser.parse(typed).dishes
    assert {session.knowledge.label(part.food) for dish in dishes for part in dish.parts} == foods


@pytest.mark.parametrize("chutney", ["coconut chutney", "mint chutney", "green chutney", "tamarind chutney"])
def test_a_chutney_of_its_own_is_one_food(session: Session, chutney: str) -> None:
    (dish,) = session.parser.parse(f"what goes with {chutney}").dishes
    (part,) = dish.parts
    assert session.knowledge.label(part.food).endswith("chutney")
    assert part.food != "food/fruit-chutney"


@pytest.mark.parametrize("text", ["lamb tagine and apricots", "lamb tagine, apricots"])
def test_what_a_recipe_holds_is_not_served_twice(parse: Parse, text: str) -> None:
    assert [seen(dish) for dish in parse(text).dishes] == [seen(parse("lamb tagine with apricots").dishes[0])]


APART = {
    "brie, salami, olives and rosemary crackers": [
        Wanted("brie"),
        Wanted("salami"),
        Wanted("mixed-olives"),
        Wanted("plain-cracker", (), ("seasoning/rosemary",)),
    ],
    "fish with lemon potatoes": [Wanted("fish"), Wanted("boiled-potato", (), ("topping/lemon",))],
    "lamb with mint sauce and rosemary potatoes": [
        Wanted("lamb", (), ("sauce/mint-sauce",)),
        Wanted("boiled-potato", (), ("seasoning/rosemary",)),
    ],
}


@pytest.mark.parametrize("text", APART)
def test_a_compound_name_takes_only_what_belongs_to_it(parse: Parse, text: str) -> None:
    assert read(parse, text) == APART[text]


def test_a_compound_name_of_two_takes_both(parse: Parse) -> None:
    assert [dish.base for dish in read(parse, "cheese and onion pie")] == ["cheese-and-onion-pie"]


def test_a_kitchen_is_known_by_dishes_of_its_own(session: Session) -> None:
    """Tafelspitz is at home in Spain as well, and stands for no Spanish night."""
    spain = session.knowledge.cuisine("region/spain")
    assert "food/gazpacho" in spain
    assert not {"food/tafelspitz", "food/zaalouk"} & set(spain)


@pytest.mark.parametrize(
    ("text", "alone"),
    [
        ("cheeses: brie, gouda. plus fig chutney, walnuts, sourdough", "food/fruit-chutney"),
        ("plus fig chutney, walnuts and sourdough", "food/fruit-chutney"),
        ("board: brie, gouda, honey, crackers", "food/honey"),
    ],
)
def test_a_spread_between_commas_is_an_item_of_the_list(parse: Parse, text: str, alone: str) -> None:
    dishes = parse(text).dishes
    assert [dish.main.food for dish in dishes].count(alone) == 1
    assert all(len(dish.parts) == 1 for dish in dishes)
