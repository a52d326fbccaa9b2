"""What a bottle costs, told in talk: kept for the plan, told back, and no strength and no year."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from assistant.session import Session
from tests.tables import mains, poured

CAVA, RIESLING, RIOJA, PORT = "wine/cava", "wine/dry-riesling", "wine/rioja", "wine/ruby-port"


@pytest.fixture
def table(session: Session) -> Iterator[Session]:
    """Four wines and a cheese for eight."""
    with poured(session, CAVA, RIESLING, RIOJA, PORT):
        session.ask("put Brie on the table")
        session.ask("8 guests on Saturday at 7")
        yield session


@pytest.mark.parametrize(
    ("told", "prices"),
    [
        ("the cava is 8 and the rioja 14", {CAVA: 8, RIOJA: 14}),
        ("cava £12, riesling £9.50", {CAVA: 12, RIESLING: 9.5}),
        ("the port cost me 20 quid", {PORT: 20}),
        ("rioja 10 euros a bottle", {RIOJA: 10}),
        ("cava's 11, riesling 14, port 13", {CAVA: 11, RIESLING: 14, PORT: 13}),
        ("the cava was $28 and the rioja was 16", {CAVA: 28, RIOJA: 16}),
    ],
)
def test_prices_are_noted_and_told_back(table: Session, told: str, prices: dict[str, float]) -> None:
    answer = table.ask(told)
    assert dict(table.tonight.prices) == prices
    assert answer.text.startswith("Noted, a bottle: ")
    assert (table.tonight.wines, mains(table)) == ((CAVA, RIESLING, RIOJA, PORT), ["food/brie"])
    assert not answer.left_out
    assert table.tonight.budget is None


@pytest.mark.parametrize(
    "told",
    [
        "the rioja is 14 %",
        "the cava is 2019",
        "the port is 20 years old",
        "the cava is for 8",
        "the riesling is at 8 degrees",
        "is the cava 8?",
        "cava 2 bottles, riesling 3 bottles",
    ],
)
def test_other_numbers_are_no_prices(table: Session, told: str) -> None:
    table.ask(told)
    assert not table.tonight.prices


def test_all_of_them_are_added_up_and_counted_in_the_plan(table: Session) -> None:
    table.ask("the cava is 8 and the rioja 14")
    text = table.ask("riesling 11.50, port 20").text
    assert "One of each comes to 53.50." in text
    for asked in ("what does it cost", "what does it all cost", "whats the damage"):
        assert "6.69 a head" in table.ask(asked).text


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ("cava 12 quid, riesling 9, rioja 10, port 20. does that fit 90", "That is within 90."),
        ("cava 12 quid, riesling 9, rioja 10, port 20, we have 45", "That is 6 more than 45."),
        ("cava 12 quid, riesling 9. does that fit 90", "once every wine has its price."),
    ],
)
def test_another_number_beside_the_prices_is_held_against_them(table: Session, asked: str, told: str) -> None:
    assert told in table.ask(asked).text


def test_a_dear_bottle_has_a_price_where_a_coin_is_named(table: Session) -> None:
    table.ask("the rioja was £1200")
    assert dict(table.tonight.prices) == {RIOJA: 1200}


def test_a_price_told_anew_stands(table: Session) -> None:
    table.ask("the cava is 8")
    table.ask("no, the cava was 9")
    assert dict(table.tonight.prices) == {CAVA: 9}


def test_a_wine_that_goes_takes_its_price_along(table: Session) -> None:
    table.ask("the cava is 8 and the rioja 14")
    table.ask("take the cava off the table")
    assert dict(table.tonight.prices) == {RIOJA: 14}


def test_a_bottle_called_by_its_kind_has_a_price_and_is_not_bought(conversation: Session) -> None:
    told = conversation.ask("we have Champagne, a rosé and Rioja. foods: Brie")
    assert "not to buy: 1 Champagne, 1 Provence rosé and 1 Rioja" in told.text
    assert "Provence rosé 9 and Rioja 12" in conversation.ask("the rosé was 9 and the Rioja 12").text
    assert "Champagne 30" in conversation.ask("the Champagne was 30").text
