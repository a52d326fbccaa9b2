"""What bottles come to by prices told in talk, the budget, and what is bought or left out for it."""

from __future__ import annotations

import pytest

from assistant.session import Session

TABLE = (
    "tonight we have prosecco, cava, gruner veltliner and rioja with burrata, prawns, koftas and lemon tart"
)
PRICES = "prosecco's 9, cava's 11, gruner 14, rioja 13"


@pytest.fixture
def laid(bare: Session) -> Session:
    """A table laid, nobody counted, no price told."""
    bare.ask(TABLE)
    return bare


@pytest.fixture
def priced(laid: Session) -> Session:
    """The same with guests, a price for each bottle and a budget."""
    for line in ("we're nine", PRICES, "budget is 140 quid for the wine"):
        laid.ask(line)
    return laid


@pytest.mark.parametrize(
    "asked",
    [
        "what did that come to",
        "how much did we spend",
        "what's the damage",
        "how much is that altogether",
        "what does the wine come to",
    ],
)
def test_the_sum_is_told_by_the_prices_told(priced: Session, asked: str) -> None:
    lines = priced.ask(asked).text.splitlines()
    assert lines[0] == "47 in all: 1 Prosecco, 1 Cava, 1 Grüner Veltliner and 1 Rioja."
    assert "5.22 a head for 9." in lines


@pytest.mark.parametrize(
    "asked",
    [
        "are we under budget",
        "is that within budget",
        "how much is left of the 140",
        "have we blown the budget",
    ],
)
def test_the_budget_comes_first_where_it_is_asked(priced: Session, asked: str) -> None:
    assert priced.ask(asked).say == "Within the budget: 47 of 140, so 93 is left."
    priced.ask("budget is 40 quid for the wine")
    assert priced.ask(asked).say == "Over the budget: 47 against 40, which is 7 over."


def test_a_price_that_is_missing_is_asked_for(laid: Session) -> None:
    assert laid.ask("are we under budget").say.startswith("I know no prices yet")
    laid.ask("budget is 140 quid for the wine")
    assert "140 for 4 bottles: up to 35 each" in laid.ask("are we under budget").text
    laid.ask("cava's 11, gruner 14")
    text = laid.ask("what did that come to").text
    assert text.startswith("25 so far: 1 Cava and 1 Grüner Veltliner.")
    assert "No price yet for Prosecco and Rioja" in text


@pytest.mark.parametrize(
    "asked", ["with 140 pounds what else should I buy", "what else can I get for the 140 quid"]
)
def test_what_is_bought_with_the_rest_is_what_the_table_lacks(priced: Session, asked: str) -> None:
    text = priced.ask(asked).text
    assert text.startswith("To buy for lemon tart, where nothing here does well: ")
    assert "47 of 140 is spent on what is here, so 93 is left." in text


@pytest.mark.parametrize("asked", ["make it cheaper", "can we do this cheaper", "how can I save some money"])
def test_cheaper_leaves_out_what_is_missed_least(priced: Session, asked: str) -> None:
    text = priced.ask(asked).text
    assert text.startswith("Leave out the Grüner Veltliner: every food keeps a wine that does as well.")
    assert "That saves 14 a bottle; the rest comes to 33." in text


def test_cheaper_needs_neither_guests_nor_prices(laid: Session) -> None:
    assert laid.ask("make it cheaper").say.startswith("Leave out the ")


@pytest.mark.parametrize(
    "asked",
    ["what should we buy for next time under 20 dollars", "next time what should I get for under 20 bucks"],
)
def test_for_next_time_styles_are_named_that_are_not_here(laid: Session, asked: str) -> None:
    answer = laid.ask(asked)
    assert answer.say.startswith("For next time: ")
    assert not [wine for wine in ("Prosecco", "Cava", "Grüner", "Rioja") if wine in answer.say]
    assert "I take 20 as for one bottle" in answer.text
    assert laid.ask("under 20 total or a bottle?").say.startswith("A bottle, ")


def test_an_evening_file_keeps_its_own_sums(evening: Session) -> None:
    assert "a head" in evening.ask("what did it cost per head").say
    assert "Leave out the" not in evening.ask("make it cheaper").text


def test_bottles_there_already_are_priced_as_they_are_told(bare: Session) -> None:
    bare.ask("we're a book club of eight in Leeds")
    bare.ask("budget is 100")
    told = bare.ask("I've already got four bottles: a Soave £11, a Chianti £14 and a Riesling £9.50")
    assert "Soave 11, Chianti 14 and" in told.say
    assert "comes to 34.50." in told.say
    assert "more than" not in told.text  # four are bottles, and no money
    assert not told.left_out
    left = bare.ask("what have I spent and what's left of the hundred")
    assert left.say.startswith("Within the budget: 34.50 of 100, so 65.50 is left.")
