"""Answers out of a list: picks name its bottles, prices are kept to, what is left is told."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.answers.record import Answer
from assistant.knowledge.files import corpus_dir
from assistant.session import Session
from assistant.stock.asked import price_asked
from assistant.stock.reading import read_stock
from assistant.stock.records import Stock
from tests.answer_schema import faults, sums_wrong
from tests.stock.conftest import Read

LIST = corpus_dir() / "evenings" / "quay-house-bottles.csv"


@pytest.fixture
def host(conversation: Session) -> Iterator[Session]:
    """The session with the list of the demo house."""
    conversation.stock = read_stock(LIST, conversation.knowledge, conversation.parser)
    yield conversation
    conversation.stock = Stock()
    conversation.new_conversation()


def sound(answer: Answer) -> Answer:
    """The answer, which must keep to the schema."""
    record = json.loads(json.dumps(answer.as_json()))
    assert faults(record) == []
    assert sums_wrong(record) == []
    return answer


def prices(answer: Answer) -> list[float]:
    """What the bottles of the picks cost."""
    return [bottle["price"] for item in answer.picks for bottle in item.bottles]


def test_the_demo_list_is_sound() -> None:
    session = Session()
    stock = read_stock(LIST, session.knowledge, session.parser)
    assert (stock.count, stock.told, stock.left_out, stock.unused) == (30, (), 0, ())


def test_picks_name_their_bottles_first(host: Session) -> None:
    answer = sound(host.ask("what goes with spicy Thai curry"))
    assert all(item.bottles for item in answer.picks)
    first = answer.picks[0]
    bottle = first.bottles[0]
    line = answer.text.splitlines()[1]
    assert line.lower().startswith(f"{first.label}: {bottle['label']}, $".lower())
    assert line.endswith(f"{bottle['in_stock']} in stock.")


def test_without_a_list_nothing_is_added(conversation: Session) -> None:
    answer = sound(conversation.ask("what goes with brie, under 20"))
    assert all(item.bottles == () for item in answer.picks)
    assert "list" not in answer.text.replace("listed", "")
    assert "under 20" not in price_words(answer)


def price_words(answer: Answer) -> str:
    """What the text says was limited."""
    return next((line for line in answer.text.splitlines() if line.startswith("Limit")), "")


def test_a_price_is_kept_to(host: Session) -> None:
    answer = sound(host.ask("a red under $15 for steak"))
    assert 0 < max(prices(answer)) <= 15
    assert all(host.knowledge.wines[item.id].colour == "colour/red" for item in answer.picks)
    assert answer.left_out == ()


def test_a_price_alone_asks_of_the_dish_that_stands(host: Session) -> None:
    host.ask("what goes with garlic cheddar")
    answer = sound(host.ask("under 13?"))
    assert (answer.intent, max(prices(answer)) <= 13) == ("wines-for-food", True)
    assert "garlic cheddar" in answer.text


def test_a_price_nothing_keeps_to_is_told(host: Session) -> None:
    answer = sound(host.ask("what goes with oysters, under 3"))
    assert "Nothing in your list keeps to that price." in answer.text
    assert all(item.id in host.stock.of for item in answer.picks)


def test_the_cheapest_that_goes(host: Session) -> None:
    host.ask("what goes with garlic cheddar")
    answer = sound(host.ask("cheapest red that goes with this"))
    assert answer.say == "Anchor Row 2023, $11.50: the cheapest of your list that goes."
    assert prices(answer) == sorted(prices(answer))
    assert all(host.knowledge.wines[item.id].colour == "colour/red" for item in answer.picks)
    host.new_conversation()
    assert host.ask("cheapest white").say == "Sailmaker 2025, $11: the cheapest of your list."


def test_what_is_left(host: Session) -> None:
    bottles = [b for found in host.stock.of.values() for b in found]
    total, wines = sum(b.left or 0 for b in bottles), sum(b.left != 0 for b in bottles)
    assert host.ask("what's left").say == f"{total} bottles of {wines} wines are left."
    answer = sound(host.ask("what's left under 12"))
    cheap = [b for b in bottles if b.price and b.price < 12]
    assert all(b.label in answer.text for b in cheap)
    assert len(answer.text.splitlines()) == 1 + len(cheap)
    assert "Mast House" not in host.ask("which whites are left").text


def test_what_is_sold_out_is_no_pick(host: Session) -> None:
    answer = host.ask("does viognier go with lobster")
    assert "none left" in answer.text
    host.top = 1000
    assert "wine/viognier" not in [item.id for item in host.ask("what goes with lobster").picks]


def test_bottles_are_chosen_out_of_the_list(host: Session) -> None:
    answer = sound(host.ask("choose three wines for brie, salami and dark chocolate"))
    assert (len(answer.picks), all(item.bottles for item in answer.picks)) == (3, True)
    host.new_conversation()
    one = sound(host.ask("one bottle for sushi, burgers and caesar salad"))
    assert one.picks[0].bottles
    assert "with each" in one.text


def test_a_wine_that_is_not_in_it_is_marked(host: Session, read: Read) -> None:
    host.stock = read("label,style,price\nHarbour Bell,brut sparkling,18\n")
    answer = sound(host.ask("a red for steak"))
    assert not answer.picks[0].bottles
    assert "Not in your list: " in answer.text
    assert "Not in your list: " in host.ask("what goes with venison stew").text


def test_the_table_comes_before_the_list(host: Session) -> None:
    host.ask("got a Syrah and a Tempranillo")
    answer = sound(host.ask("what goes with brie"))
    assert {item.id for item in answer.picks} == {"wine/syrah", "wine/tempranillo"}
    assert "Syrah: Black Buoy 2022, $18, 5 in stock." in answer.text
    assert "Not in your list: Tempranillo." in answer.text


@pytest.mark.parametrize(
    ("typed", "price"),
    [
        ("under 20", (None, 19.99)),
        ("up to 20", (None, 20.0)),
        ("a red below €15,50 for steak", (None, 15.49)),
        ("over $30", (30.01, None)),
        ("at least $30", (30.0, None)),
        ("more than 10 and no more than 20 euros", (10.01, 20.0)),
        ("wine under 12% alcohol", (None, None)),
        ("under 12 % for oysters", (None, None)),
        ("up to 12 people", (None, None)),
        ("no more than 3 bottles", (None, None)),
        ("serve it under 10 °C", (None, None)),
        ("what goes with brie", (None, None)),
    ],
)
def test_prices_asked(typed: str, price: tuple[float | None, float | None]) -> None:
    assert price_asked(typed) == pytest.approx(price)


def test_a_plan_by_talk_pours_out_of_the_list(host: Session) -> None:
    host.ask("12 people, wines are Malbec and Tempranillo, food is brie and salami")
    text = host.ask("plan it").text
    assert "Three Lanterns 2023" in text
    assert "Malbec: 2 needed, 0 to buy" in text
    assert "Tempranillo: 2 needed, 2 to buy" in text


def test_an_evening_may_name_bottles_of_the_list(host: Session, tmp_path: Path) -> None:
    from assistant.evening.labels import wine_of

    assert wine_of("Grey Heron 2025", host) == "wine/off-dry-riesling"
