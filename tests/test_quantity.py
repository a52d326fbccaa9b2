"""How much and how many: numbers are read by what they count, and the sums are the planner's."""

from __future__ import annotations

from math import ceil, floor

import pytest

from assistant.answers.record import Answer
from assistant.evening.facts import fact
from assistant.language.quantities import numbers, quantities
from assistant.session import Session

USABLE = 750 * 0.95  # a bottle less the 5 % that is lost: ontology/evening/amounts.toml


def ask(session: Session, typed: str) -> Answer:
    session.new_conversation()
    answer = session.ask(typed)
    assert answer.intent == "quantity"
    return answer


def figure(answer: Answer, name: str) -> float:
    return float(answer.figures[name]["value"])


@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("twenty five guests", 25),
        ("two dozen glasses", 24),
        ("a dozen people", 12),
        ("four 75 ml pours", 4),
        ("two hundred", 200),
        ("7 of us", 7),
    ],
)
def test_number_words(typed: str, value: float) -> None:
    assert numbers(typed.split())[0][2] == value


@pytest.mark.parametrize("typed", ["inf", "nan", "infinity guests", "9" * 400, "1e9 people", "٣ guests"])
def test_what_is_no_number_a_table_can_hold_counts_nothing(typed: str) -> None:
    assert numbers(typed.split()) == []


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("12 people, 5 wines, 60 ml", {"people": 12, "wines": 5, "ml": 60}),
        ("how many bottles for fourteen", {"people": 14}),
        ("3 bottles for 20 guests at 2 oz", {"bottles": 3, "people": 20, "ml": 2 * 29.5735}),
        ("a magnum for ten of us", {"people": 10, "bottle_ml": 1500}),
        ("24 guests, four are teetotal", {"people": 24, "non_drinkers": 4}),
        ("20 guests, half don't drink", {"people": 20, "non_drinkers": 10}),
        ("how much for 2 hours", {"people": None}),
        ("how much alcohol in 150 ml of 13.5 % wine", {"percent": 13.5, "wines": None}),
        ("glass of 14 % shiraz, 150 ml", {"percent": 14, "ml": 150}),
    ],
)
def test_numbers_are_read_by_what_they_count(
    session: Session, typed: str, expected: dict[str, float | None]
) -> None:
    found = quantities(session.parser.parse(typed).text)
    assert {name: getattr(found, name) for name in expected} == expected


@pytest.mark.parametrize(("people", "ml", "wines"), [(12, 60, 5), (12, 55, 5), (8, 60, 3), (20, 50, 4)])
def test_bottles_are_whole_bottles_of_each_wine(session: Session, people: int, ml: int, wines: int) -> None:
    answer = ask(session, f"how many bottles for {people} people, {wines} wines, {ml} ml pours")
    assert figure(answer, "bottles") == wines * ceil(people * ml / USABLE)


def test_the_pour_at_which_the_count_changes_is_told(session: Session) -> None:
    assert "59.3 ml or less" in ask(session, "how many bottles for 12 people, 5 wines, 60 ml").text


@pytest.mark.parametrize(
    ("typed", "starts"),
    [
        ("are 3 bottles of cava enough for 20 people", "Yes: 106 ml"),
        ("is 1 bottle enough for 20 people", "No: only 35 ml"),
    ],
)
def test_enough_or_not(session: Session, typed: str, starts: str) -> None:
    assert ask(session, typed).say.startswith(starts)


def test_pours_of_a_bottle(session: Session) -> None:
    assert figure(ask(session, "how many 50 ml pours out of a bottle"), "pours") == USABLE // 50


def test_food_is_counted_by_its_kind(session: Session) -> None:
    answer = ask(session, "how much cheddar for 10 people")
    low, high = 57 * 10, 90 * 10  # the range of cheese at a tasting
    assert low <= figure(answer, "grams_cheddar") <= high


def test_ice_and_water(session: Session) -> None:
    assert figure(ask(session, "how much ice for 12 bottles"), "ice") == 4
    assert figure(ask(session, "how much water for 20 guests"), "water") == 10


def test_alcohol_is_that_of_the_published_measures(session: Session) -> None:
    """By the density of ethanol, over 14 g, 10 ml and 10 g: sources in ontology/evening/alcohol.toml."""
    answer = ask(session, "how many standard drinks in a 150 ml glass at 13.5 %")
    grams = 150 * 0.135 * 0.789
    assert figure(answer, "grams_alcohol") == pytest.approx(grams, abs=0.05)
    assert figure(answer, "uk_units") == pytest.approx(150 * 13.5 / 1000, abs=0.05)
    assert figure(answer, "us_drinks") == pytest.approx(grams / 14, abs=0.05)
    assert figure(answer, "au_drinks") == pytest.approx(grams / 10, abs=0.05)
    assert "drive" not in answer.text


def test_glasses_are_counted_by_guests_and_by_wines(conversation: Session) -> None:
    answer = conversation.ask("how many glasses do I need for 10 people and 5 wines")
    each = fact("amounts", "glasses", "per_guest").typical
    assert answer.figures["glasses"] == {"value": 10 * each, "unit": "glass"}
    assert "A clean glass for every wine would be 50." in answer.text
    conversation.new_conversation()
    assert "clean glass" not in conversation.ask("how many glasses for 10 people").text
    bottle = conversation.ask("how many glasses from a bottle").figures["pours"]["value"]
    assert bottle == 11.0  # 750 ml less 5 %, at 60 ml


@pytest.mark.parametrize(
    ("said", "ml", "percent"),
    [
        ("how many units in a 125 ml glass of port", 125.0, 20.0),
        ("how much alcohol in a bottle of port", 750.0, 20.0),
    ],
)
def test_alcohol_is_that_of_the_wine_named(
    conversation: Session, said: str, ml: float, percent: float
) -> None:
    """By the density of ethanol, over 14 g, 10 ml and 10 g, as above."""
    found = {name: row["value"] for name, row in conversation.ask(said).figures.items()}
    grams = ml * percent / 100 * 0.789
    assert found["grams_alcohol"] == pytest.approx(grams, abs=0.06)
    assert found["us_drinks"] == pytest.approx(grams / 14, abs=0.06)
    assert found["au_drinks"] == pytest.approx(grams / 10, abs=0.06)
    assert found["uk_units"] == pytest.approx(ml * percent / 1000, abs=0.06)


def test_what_cannot_be_got_is_asked_for_where_nothing_is_named(conversation: Session) -> None:
    answer = conversation.ask("they were out of it, what else")
    assert (answer.intent, answer.understood, answer.picks) == ("substitute", False, ())
    assert answer.clarify == answer.text.splitlines()[0]


def test_foods_of_a_class_share_what_a_guest_eats_of_it(session: Session) -> None:
    """Three cheeses for ten are no three times the cheese: as in a plan."""
    alone = figure(ask(session, "how much comté for 10"), "grams_Comté")
    answer = ask(session, "how much comté, roquefort and manchego for 10")
    together = sum(figure(answer, f"grams_{name}") for name in ("Comté", "Roquefort", "Manchego"))
    assert together == pytest.approx(alone, rel=0.05)


@pytest.mark.parametrize(
    ("asked", "ml"),
    [
        ("calories in a glass of prosecco", 150),
        ("calories in two glasses of malbec", 300),
        ("how many calories in a small glass of chablis", 125),
        ("calories in a large glass of merlot", 250),
        ("grams of alcohol in 3 glasses of shiraz", 450),
        ("how many grams of alcohol in a bottle of shiraz", 750),
        ("grams of alcohol in 2 glasses of 100 ml shiraz", 200),
    ],
)
def test_a_glass_is_no_bottle(session: Session, asked: str, ml: int) -> None:
    assert f" in {ml} ml" in ask(session, asked).say


def test_some_who_share_a_bottle_are_not_all_guests(session: Session) -> None:
    session.new_conversation()
    session.ask("on the table: cava, beaujolais, turkey and brie for 14 guests")
    line = (
        "seven people want seconds of the beaujolais and theres only one bottle left how much does each get"
    )
    ml = floor(USABLE / 7)
    assert session.ask(line).say == f"{ml} ml each for 7, some {ml / 29.5735:.1f} fl oz."
    assert session.tonight.guests == 14
