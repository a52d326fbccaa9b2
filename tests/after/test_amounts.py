"""What it cost, what was left, and what is counted next time."""

from __future__ import annotations

import pytest

from assistant.after.corrections import corrections_of, factor_of, new_factor
from assistant.evening.plan import plan
from assistant.evening.read import read_evening
from assistant.session import Session
from tests.after.conftest import DEMO


def test_the_factor_by_hand() -> None:
    assert new_factor(75.0, 600.0, 12) == pytest.approx(0.7 * 75 + 0.3 * 50)
    assert factor_of([50 / 75]) * 75 == pytest.approx(new_factor(75.0, 50.0, 1))
    assert factor_of([0.5, 0.5]) == pytest.approx(0.7 * (0.7 + 0.3 * 0.5) + 0.3 * 0.5)


def test_a_factor_keeps_within_bounds() -> None:
    assert factor_of([0.0] * 50) == 0.5
    assert factor_of([9.0] * 50) == 2.0


def test_the_cost_is_that_of_the_plan(evening: Session) -> None:
    answer = evening.ask("what did it cost per head")
    total = plan(read_evening(DEMO, evening), evening)["cost"]["total"]
    assert answer.intent == "plan"
    assert answer.say == f"{total / 12:.2f} USD a head: {total:.2f} USD for 12."
    assert "off-dry Riesling" in answer.text  # at hand, so not counted


def test_without_an_evening_it_says_what_to_do(bare: Session) -> None:
    answer = bare.ask("what did it cost per head")
    assert not answer.understood
    assert "--evening FILE" in answer.say


def test_what_was_left_is_kept_and_counted(evening: Session) -> None:
    answer = evening.ask("we had 400 g of 700 g plain crackers left")
    assert answer.say == "Noted: 400 g of 700 g plain cracker left, 25 g a head eaten."
    assert f"Next time count {0.7 * 50 + 0.3 * 25:.0f} g a head instead of 50 g." in answer.text
    assert corrections_of(evening) == {"bread": pytest.approx(0.7 + 0.3 * 25 / 50)}
    left, *_ = evening.taught.told()
    assert (left.kind, float(left.value["amount"]), left.value["people"]) == ("quantity", 400.0, 12)


def test_later_quantities_use_it_and_say_so(evening: Session) -> None:
    before = evening.ask("how much bread for 12").figures
    evening.ask("we had 400 g of 700 g plain crackers left")
    answer = evening.ask("how much bread for 12")
    (name,) = before
    assert answer.figures[name]["value"] == pytest.approx(before[name]["value"] * 0.85, abs=12)
    assert "Corrected by what was left at your evenings" in answer.text
    evening.ask("we had 400 g of 700 g plain crackers left")
    assert evening.ask("forget that").say.startswith("Taken back")


def test_what_is_told_again_of_an_evening_counts_once(evening: Session) -> None:
    evening.ask("we had 600 g of 700 g plain crackers left")
    evening.ask("we had 400 g of 700 g plain crackers left")
    assert corrections_of(evening)["bread"] == pytest.approx(0.85)


def test_buy_less(evening: Session) -> None:
    assert evening.ask("buy less bread?").say.startswith("I have no leftovers of white bread told")
    evening.ask("we had 400 g of 700 g plain crackers left")
    assert evening.ask("buy less bread?").say.startswith("Less bread and crackers next time: 42 g a head")
    assert evening.ask("what should we buy less of").say == "Less bread and crackers."


def test_bottles_next_time(evening: Session) -> None:
    plain = evening.ask("so next time how many bottles")
    assert plain.say == "4 bottles next time: 1 of each of 4 wines for 10."
    evening.ask("half the malbec left")
    answer = evening.ask("so next time how many bottles")
    used = 0.5 * 750 * 0.95 / 10
    assert f"Counted with {0.7 * 60 + 0.3 * used:.0f} ml a pour" in answer.text


def test_more_left_than_was_known_of_is_only_noted(evening: Session) -> None:
    answer = evening.ask("2 bottles of malbec left")
    assert answer.say.startswith("Noted: 2 bottles Malbec left; say ")
    assert corrections_of(evening) == {}


def test_without_a_notebook_nothing_counts(session: Session) -> None:
    session.new_conversation()
    assert "no notebook" in session.ask("we had 300 g cheddar left").say


@pytest.mark.parametrize(
    ("said", "amounts"),
    [
        ("we had 200 g manchego and 100 g salami left", {"manchego": 200.0, "salami": 100.0}),
        ("brie 150 g left, salami 80 g left", {"brie": 150.0, "salami": 80.0}),
        ("half the malbec and 2 bottles of the riesling left", {"malbec": 0.5, "off-dry-riesling": 2.0}),
        ("we had 400 g of 700 g plain crackers left", {"plain-cracker": 400.0}),
    ],
)
def test_each_thing_is_kept_with_its_own_amount(
    evening: Session, said: str, amounts: dict[str, float]
) -> None:
    evening.ask(said)
    kept = [one for one in evening.taught.told() if str(one.value["unit"]).endswith("left")]
    assert {one.about[0].rpartition("/")[2]: float(one.value["amount"]) for one in kept} == amounts


def test_all_that_was_left_is_said(evening: Session) -> None:
    assert evening.ask("we had 200 g manchego and 100 g salami left").say == (
        "Noted: 200 g Manchego and 100 g salami left."
    )


@pytest.mark.parametrize(
    ("typed", "left"),
    [
        ("two thirds of the malbec left", 0.66),
        ("three quarters of the malbec left", 0.75),
        ("a third of the malbec left", 0.33),
        ("half the malbec left", 0.5),
        ("half a bottle of malbec left", 0.5),
    ],
)
def test_parts_of_a_bottle_are_counted(evening: Session, typed: str, left: float) -> None:
    evening.ask(typed)
    told, *_ = evening.taught.told()
    assert float(told.value["amount"]) == pytest.approx(left)


def test_several_things_left_are_told_in_one_line(evening: Session) -> None:
    say = evening.ask("we had half the riesling left and most of the malbec and like a pound of crackers").say
    assert say == (
        "Noted: 0.5 of a bottle off-dry Riesling, 0.75 of a bottle Malbec and 454 g plain cracker left."
    )


def test_what_has_no_amount_beside_others_is_asked_for(evening: Session) -> None:
    answer = evening.ask("we had half the riesling left, some crackers and a third of the malbec")
    assert "How much plain cracker was left? I noted no amount of it." in answer.text


def test_the_size_of_the_bottle_counts_next_time_too(evening: Session) -> None:
    evening.ask("30 people")
    assert evening.ask("so next time how many bottles").say.startswith("12 bottles next time: 3 of each")
    assert evening.ask("so next time how many magnums").say.startswith("8 bottles next time: 2 of each")
