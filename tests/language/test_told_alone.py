"""What is told by itself between stops is asked of the wine that is sought."""

from __future__ import annotations

import pytest

from assistant.language.frame import labels_of
from assistant.session import Session
from tests.language.conftest import Parse


@pytest.mark.parametrize(
    ("text", "labels"),
    [
        ("a single light red, Italian, no oak, for mushroom risotto", ["light red", "from Italy", "unoaked"]),
        ("The shop is out of Sancerre, what instead, not French, still crisp?", ["not from France", "sharp"]),
        ("No more Amarone, what can I take instead? Italian, full-bodied.", ["from Italy", "full-bodied"]),
        ("two bottles for roast chicken, no reds, keep 'em all American",
         ["no red wine", "from United States"]),
        ("something for pork belly, not Italian, not too strong", ["not from Italy", "not strong"]),
        ("which red for lamb? low tannin o, and make it fruity", ["red wine", "low in tannin", "fruity"]),
        ("a wine for scallops, mineral and dry", ["mineral", "dry"]),
        ("what wine with kare-kare, a little sweet and low alcohol sana", ["off-dry", "low in alcohol"]),
        ("a light red for tuna, new world please", ["light red", "from the New World"]),
        ("a European white for sushi", ["from Europe", "white wine"]),
        ("a lighter style red, Loire if you can, for pork chops", ["red wine", "light", "from Loire"]),
        ("wine for duck, must be French, mustn't be Burgundy", ["from France", "no red Burgundy"]),
        ("a white for mackerel, 11 percent tops", ["white wine", "under 11 % alcohol"]),
        ("what white has the least oak for lobster roll", ["white wine", "unoaked"]),
        ("no bubbles no sweetness just a white for cod", ["no sparkling wine", "not sweet", "white wine"]),
        ("a not too heavy red with mushroom risotto", ["red wine", "no full red"]),
        ("a dessert wine that's not too sticky for lemon tart", ["sweet wine"]),
        ("nothing heavier than a pinot for roast turkey", []),
        ("he is off reds, what with steak", ["no red wine"]),
        ("young and fruity for sausages", ["young", "fruity"]),
        ("out of Picpoul, what instead, a crisp white but not French", ["crisp white", "not from France"]),
        ("a white for snapper that's been nowhere near oak", ["white wine", "unoaked"]),
        ("what red with mutton, nothing too heavy mind", ["red wine", "not full-bodied"]),
        ("what is cheaper than Champagne, it has to be bubbly n dry", ["sparkling wine", "dry"]),
    ],
)  # fmt: skip
def test_a_wish_told_by_itself_is_a_limit(parse: Parse, text: str, labels: list[str]) -> None:
    assert sorted(labels_of(parse(text).preferences)) == sorted(labels)


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("Chinese, sweet and sour pork, what wine", "from China"),
        ("tonight it's Italian, lasagne, what wine", "from Italy"),
        ("mushroom soup, earthy, what wine", "earthy"),
        ("beef, proper peppery, which wine", "peppery"),
        ("which red for jollof rice, she says it dries her mouth", "dry"),
        ("what is tannin, in plain English", "tannic"),
    ],
)
def test_what_is_told_of_the_food_or_of_people_limits_no_wine(parse: Parse, text: str, label: str) -> None:
    assert label not in labels_of(parse(text).preferences)


def test_a_wine_that_is_not_wanted_is_not_asked_about(parse: Parse) -> None:
    frame = parse("no shiraz, everyone brings shiraz, what red for lamb")
    assert (frame.intent, frame.wines) == ("wines-for-food", ())
    assert "no Shiraz" in labels_of(frame.preferences)


def test_the_rest_of_a_name_may_hold_a_slip(parse: Parse) -> None:
    frame = parse("Gruner Veltiner with schnitzel")
    assert frame.wines == ("wine/gruner-veltliner",)
    assert frame.text.left_out == ()


def test_a_part_of_the_world_holds_its_countries(session: Session) -> None:
    session.new_conversation()
    homes = [
        session.knowledge.countries(session.knowledge.wines[item.id].homes)
        for ask in ("a southern hemisphere red for lamb", "a red for lamb, not European")
        for item in session.ask(ask).picks
    ]
    held = set(session.knowledge.entry("region/southern-hemisphere")["holdsCountry"])
    assert all(countries & held for countries in homes[:3])
    assert all(
        countries.isdisjoint(session.knowledge.entry("region/europe")["holdsCountry"])
        for countries in homes[3:]
    )
