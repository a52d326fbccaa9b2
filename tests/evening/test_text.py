"""The host's sheet, word by word, for a plan that is written out here."""

from __future__ import annotations

from datetime import datetime
from typing import Any

import pytest

from assistant.evening.records import Evening, WineLine
from assistant.evening.text import text

NOTHING: dict[str, Any] = {
    "chosen": ["Malbec"], "problems": [], "rescue": [], "flight": [], "pour_order": [], "why_chosen": [],
    "pairings": [], "coverage": None, "food_order": [], "board": None, "alcohol_free": [], "bottles": [],
    "refill": {"ml": 60.0, "bottles": 1}, "drinkers": 10, "shopping": [], "savings": [], "temperatures": [],
    "from_list": [], "clock": [], "kit": [], "needs": [], "foods": [], "cautions": [],
    "cost": {
        "total": 0.0, "per_head": None, "currency": "", "unpriced": [], "within_budget": None, "left": None,
    },
    "alcohol": {"grams_per_drinker": 40.0, "us_drinks": 2.9, "uk_units": 5.1, "au_drinks": 4.0},
}  # fmt: skip


def night(**said: Any) -> Evening:
    """An evening with one wine."""
    usual: dict[str, Any] = {
        "title": "Friday", "start": datetime(2027, 2, 12, 19, 5), "zone": None, "guests": 12,
        "non_drinkers": 2, "meal": "tasting", "pour_ml": 60.0, "budget": None, "currency": "EUR",
        "choose": None, "room_celsius": 21.0, "wines": (WineLine("Malbec", "wine/malbec"),),
        "foods": (), "needs": (),
    }  # fmt: skip
    return Evening(**(usual | said))


def blocks(evening: Evening | None = None, **told: Any) -> dict[str, list[str]]:
    """The lines of the sheet by the line above them, without their indentation."""
    sheet = text(evening or night(), NOTHING | told).split("\n\n")
    return {head: [line.strip() for line in rest] for head, *rest in (block.split("\n") for block in sheet)}


@pytest.mark.parametrize(
    ("said", "head"),
    [
        ({}, "Friday, 2027-02-12 19:05: 12 guests, 10 drinking wine, 60 ml a pour"),
        (
            {"start": None, "pour_ml": 62.5},
            "Friday, no date yet: 12 guests, 10 drinking wine, 62.5 ml a pour",
        ),
        (
            {"title": "", "non_drinkers": 0},
            "The evening, 2027-02-12 19:05: 12 guests, 12 drinking wine, 60 ml a pour",
        ),
    ],
)
def test_the_sheet_begins_with_title_time_and_guests(said: dict[str, Any], head: str) -> None:
    assert next(iter(blocks(night(**said)))) == head


def test_sections_without_lines_are_left_out() -> None:
    assert list(blocks())[1:] == ["Cost", "Alcohol"]


def test_where_no_choice_can_be_made_only_what_to_put_right_is_told() -> None:
    found = blocks(chosen=[], problems=["Too dear."], savings=[{"say": "Pour less."}])
    assert list(found.values()) == [[], ["Too dear."]]
    assert "Cost" in blocks(night(non_drinkers=12), chosen=[], problems=["All are non-drinkers."])


def test_a_row_of_bottles_and_the_refill() -> None:
    row = {"wine": "Malbec", "needed": 2, "to_buy": 1, "cliff_ml": None}
    told = blocks(bottles=[row])["Bottles"]
    assert told == [
        "Malbec: 2 needed, 1 to buy; the count changes at - ml a pour",
        "A refill of the favourite, 60 ml for every drinker, takes 1 more bottle.",
    ]
    assert "takes 2 more bottles." in blocks(bottles=[row], refill={"ml": 30.5, "bottles": 2})["Bottles"][1]
    assert len(blocks(bottles=[row], drinkers=0)["Bottles"]) == 1


def test_purchases_have_their_unit_and_cost() -> None:
    rows = [
        {"item": "Malbec", "amount": 1, "unit": "bottle", "cost": 12.5},
        {"item": "Fino", "amount": 2, "unit": "bottle", "cost": None},
    ]
    found = [lines for head, lines in blocks(shopping=rows).items() if "buy" in head.lower()]
    assert found == [["Malbec: 1 bottle, 12.50 EUR", "Fino: 2 bottles"]]


@pytest.mark.parametrize(
    ("said", "lines"),
    [
        (
            {"total": 66.0, "per_head": 4.714, "currency": "EUR"},
            ["still to spend 66.00 EUR, 4.71 EUR a head"],
        ),
        ({"total": 66.0}, ["still to spend 66.00, ? a head"]),
        (
            {"total": 9.0, "per_head": 1.0, "unpriced": ["ice", "bread"], "within_budget": True, "left": 3.5},
            [
                "still to spend 9.00, 1.00 a head",
                "without a price: ice and bread",
                "within budget, 3.50 left",
            ],
        ),
        (
            {"total": 9.0, "per_head": 1.0, "currency": "GBP", "within_budget": False, "left": -2.0},
            ["still to spend 9.00 GBP, 1.00 GBP a head", "over budget by 2.00 GBP"],
        ),
    ],
)
def test_the_cost_with_what_is_left_or_lacking(said: dict[str, Any], lines: list[str]) -> None:
    assert blocks(cost=NOTHING["cost"] | said)["Cost"] == lines


def test_a_guest_has_what_may_be_had_and_what_may_not() -> None:
    row = {"guest": "R.", "needs": ["vegan", "no nuts"], "may_have": ["olives"], "keep_away": ["brie", "ham"]}
    found = blocks(needs=[row | {"check_label": []}])
    lines = next(lines for lines in found.values() if lines[:1] == ["R. (vegan and no nuts)"])
    assert lines[1:] == ["may have: olives", "keep away: brie and ham"]
    again = blocks(needs=[row | {"may_have": [], "keep_away": [], "check_label": ["bread"]}])
    assert ["R. (vegan and no nuts)", "label first: bread"] in again.values()


def test_a_step_of_the_clock_has_its_day_and_time() -> None:
    found = blocks(clock=[{"at": "2027-02-12T18:30", "task": "open every bottle"}])
    assert ["2027-02-12 18:30  open every bottle"] in found.values()


def test_degrees_and_minutes_that_are_not_known_are_a_dash() -> None:
    row = {
        "wine": "Malbec", "celsius": [16.0, 18.5], "minutes_fridge": 25, "minutes_ice": None,
        "minutes_in_glass": None, "note": "",
    }  # fmt: skip
    lines = [line for lines in blocks(temperatures=[row]).values() for line in lines]
    assert any(
        line.startswith("Malbec: 16 to 18.5 °C; 25 min in the fridge or - min in ice and water")
        for line in lines
    )
