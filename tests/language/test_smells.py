"""What a wine should smell of, and where it should come from, as told in plain words."""

from __future__ import annotations

import pytest

from assistant.language.frame import labels_of
from tests.language.conftest import Parse


@pytest.mark.parametrize(
    ("text", "labels"),
    [
        ("an earthy red for duck", ["earthy", "red wine"]),
        ("a spicy, earthy red with lamb", ["spicy", "earthy", "red wine"]),
        ("something nutty for Comté", ["nutty"]),
        ("nothing smoky with trout", ["not smoky"]),
        ("a red that's fruity for ribs", ["fruity", "red wine"]),
        ("we want a white which is really buttery with our chicken", ["buttery", "white wine"]),
        ("a mineral white for oysters", ["mineral", "white wine"]),
        ("a fruity Italian red for the salami", ["fruity", "from Italy", "red wine"]),
    ],
)
def test_a_smell_asked_of_the_wine_is_a_limit(parse: Parse, text: str, labels: list[str]) -> None:
    frame = parse(text)
    assert sorted(labels_of(frame.preferences)) == sorted(labels)
    assert frame.text.left_out == ()


@pytest.mark.parametrize(
    "text",
    [
        "spicy red lentil soup, what wine",
        "creamy white beans, what wine",
        "which red for spicy lamb",
        "is Beaujolais fruity",
        "a peppery Syrah for steak",
    ],
)
def test_what_a_food_or_a_wine_named_is_like_limits_nothing(parse: Parse, text: str) -> None:
    assert "spicy" not in labels_of(parse(text).preferences)
    assert all(limit.property != "smell" for limit in parse(text).preferences)


@pytest.mark.parametrize(
    "text",
    [
        "My Sauvignon Blanc smells of wet cardboard, what do I do?",
        "Learn this: ofe nsala is a peppery white soup",
        "Remember this: Dravinka is a dry white grape, very lemony, and it's great with trout.",
    ],
)
def test_what_is_told_where_no_wine_is_sought_limits_nothing(parse: Parse, text: str) -> None:
    frame = parse(text)
    assert frame.preferences == ()
    assert not {"food/black-pepper", "food/lemon-juice"}.intersection(r.id for r in frame.text.readings)


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("does a peppery Syrah go with steak", ("peppery",)),
        ("what goes with a smoky, earthy Rioja", ("smoky", "earthy")),
        ("an earthy red for duck", ()),
    ],
)
def test_what_a_wine_named_is_called_beside_its_name_is_told_as_not_used(
    parse: Parse, text: str, left: tuple[str, ...]
) -> None:
    assert parse(text).text.left_out == left


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("nothing high in alcohol for suya", "not strong"),
        ("something low in alcohol for coleslaw", "low in alcohol"),
        ("a wine with high acidity for ceviche", "sharp"),
        ("a wine with soft tannins for stroganoff", "low in tannin"),
        ("a wine of medium weight with meatloaf", "medium-bodied"),
        ("which wine for ham, it has to be Spanish", "from Spain"),
        ("an Austrian for the schnitzel", "from Austria"),
        ("Italian please, for the lamb", "from Italy"),
        ("which wine for ribs, only Californian will do", "from California"),
        ("which wine for ribs, keep it American", "from United States"),
        ("nobody in this family likes tannin, wine for ribs", "not tannic"),
        ("none of us drinks red, what with ribs", "no red wine"),
        ("what wine would go with ribs, dad only drinks red", "red wine"),
        ("something not too tannic for ribs cause Ben moans", "not tannic"),
    ],
)
def test_one_limit_is_read(parse: Parse, text: str, label: str) -> None:
    assert labels_of(parse(text).preferences) == [label]


@pytest.mark.parametrize(
    "text",
    [
        "my Spanish friend brought chorizo, which wine",
        "I'm cooking Italian tonight, lasagne, which wine",
        "only British cheese, which wine",
    ],
)
def test_the_home_of_people_or_of_a_kitchen_limits_no_wine(parse: Parse, text: str) -> None:
    assert not parse(text).preferences


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("which wine with lamb on a hot day in Durban", ()),
        ("nobody in Baton Rouge sells Comté, which wine with Brie instead", ()),
        ("a red from Hobart with lamb", ("Hobart",)),
        ("Durban curry, which wine", ("Durban",)),
    ],
)
def test_where_a_host_is_was_no_name_missed(parse: Parse, text: str, left: tuple[str, ...]) -> None:
    assert parse(text).text.left_out == left


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Which wines shall I buy for raclette? Please only organic ones.", ("organic",)),
        ("natural wine for pizza", ("natural wine",)),
        ("a sustainable white for cod", ("sustainable",)),
        ("kosher wine for brisket", ("kosher",)),
        ("organic chicken with rice, which wine", ()),
        ("which wine for tofu, my sister is vegan", ()),
        ("what is organic wine", ()),
    ],
)
def test_how_a_wine_that_is_sought_is_made_is_told_as_not_used(
    parse: Parse, text: str, told: tuple[str, ...]
) -> None:
    frame = parse(text)
    assert frame.text.left_out == told
    assert not frame.wines


@pytest.mark.parametrize(
    ("text", "labels"),
    [
        ("just one bottle for lasagne, italian, 20 dollars max", ["from Italy"]),
        ("red for steak, argentinian, 15 euros", ["red wine", "from Argentina"]),
        ("a bottle for sushi, german, off-dry, cheap", ["from Germany", "off-dry"]),
        ("chinese, sweet and sour pork, wine?", []),
        ("what wine tonight, indian, chicken curry", []),
        ("wine for brie, italian ham, olives", []),
    ],
)
def test_a_home_between_commas_is_asked_of_the_wine_behind_foods_alone(
    parse: Parse, text: str, labels: list[str]
) -> None:
    assert sorted(labels_of(parse(text).preferences)) == sorted(labels)


def test_that_foods_are_to_stand_is_told_as_not_used(parse: Parse) -> None:
    frame = parse("Pinot gris. Give me three savoury bites for it that can sit out an hour.")
    assert (frame.intent, frame.text.left_out) == ("foods-for-wine", ("sit out",))
