"""The sentences of the host's sheet about wines and foods, each for a row that is written out here."""

from __future__ import annotations

from typing import Any

import pytest

from assistant.evening.table_text import leftovers, on_the_table

BOARD: dict[str, Any] = {
    "balance": [], "bridges": [], "gaps": [], "traps": [], "lonely": [], "swap": None, "add": None,
}  # fmt: skip


def wine(**said: Any) -> dict[str, Any]:
    """A row of the flight about which nothing but the needful is known."""
    return {
        "wine": "Malbec", "name": None, "style": "full red", "celsius": [16.0, 18.0], "loves": None,
        "fights": None, "stand_ins": [], "keeps_open_range": None,
    } | said  # fmt: skip


def lines(section: str, **said: Any) -> list[str]:
    """The lines of a section of a plan in which everything else is empty."""
    plan = {
        "flight": [], "pour_order": [], "why_chosen": [], "pairings": [], "food_order": [],
        "alcohol_free": [], "coverage": None, "chosen_is_best": True, "gaps": [], "weakest": None,
        "one_more": None, "board": BOARD,
    }  # fmt: skip
    return on_the_table(plan | said)[section]


def of_wine(
    row: dict[str, Any], why: list[dict[str, str]] | None = None, swapped: str | None = None
) -> list[str]:
    """The lines of a single wine."""
    order = [{"reason": "it is last", "wine": row["wine"], "if_swapped": swapped}]
    return [line.strip() for line in lines("wines", flight=[row], pour_order=order, why_chosen=why or [])]


def test_a_wine_has_its_number_style_and_degrees() -> None:
    assert of_wine(wine())[0] == "1. Malbec (full red), 16 to 18 °C"
    assert (
        of_wine(wine(name="Harbour Bell", celsius=[8.0, 8.0]))[0]
        == "1. Malbec, Harbour Bell (full red), 8 °C"
    )


def test_a_wine_has_why_it_is_in_why_here_and_what_a_swap_breaks() -> None:
    assert of_wine(wine())[1:] == ["Here: it is last"]
    told = of_wine(wine(), [{"why": "it suits the ham"}], "Swap them, and it is hardly smelled.")
    assert told[1:] == ["In: it suits the ham.", "Here: it is last", "Swap them, and it is hardly smelled."]


def test_stand_ins_and_days_open_are_told_where_there_are_some() -> None:
    assert len(of_wine(wine())) == 2
    told = of_wine(wine(stand_ins=["Syrah", "Tannat", "Merlot"], keeps_open_range=[3, 5]))
    assert "If it is not to be had: Syrah, Tannat or Merlot." in told
    assert "Open, stoppered and cold, it keeps 3 to 5 days." in told
    assert "keeps 3 days." in of_wine(wine(keeps_open_range=[3, 3]))[-1]


@pytest.mark.parametrize(
    ("has", "may", "line"),
    [
        (["milk", "nuts"], ["egg"], "brie: contains milk and nuts; read the label for egg"),
        (["milk"], [], "brie: contains milk"),
        ([], ["egg", "soya"], "brie: read the label for egg and soya"),
        ([], [], "brie: no allergen known in it"),
    ],
)
def test_allergens_are_never_taken_for_absent(has: list[str], may: list[str], line: str) -> None:
    row = {"food": "brie", "allergens_present": has, "allergens_unknown": may, "storage": None}
    assert list(leftovers(row)) == [line]


def test_what_is_left_over_is_kept_as_said() -> None:
    row = {"food": "brie", "allergens_present": [], "allergens_unknown": [], "storage": "cold, five days"}
    assert list(leftovers(row))[1].strip() == "Left over: cold, five days."


def pairing(worst: str) -> dict[str, Any]:
    """A food that goes best with Malbec."""
    return {
        "food": "brie",
        "best": {"wine": "Malbec", "verdict": "good"},
        "worst": {"wine": worst, "verdict": "poor"},
    }


def test_a_food_names_its_best_and_worst_wine_once() -> None:
    both, one = lines("pairings", pairings=[pairing("Muscadet"), pairing("Malbec")])
    assert both == "brie: best Malbec (good), worst Muscadet (poor)"
    assert one == "brie: Malbec (good)"


COVERAGE = {"foods": 4, "served": 3, "saturates_at": None, "say": "3 of 4."}
WEAKEST = {"food": "crackers", "verdict": "neutral", "wine": "Malbec"}


def test_coverage_tells_what_is_weakest_where_nothing_is_left_out() -> None:
    assert lines("coverage") == []
    assert lines("coverage", coverage=COVERAGE, weakest=WEAKEST) == [
        "3 of 4.",
        "Weakest: crackers, neutral with Malbec.",
    ]


def test_coverage_tells_what_is_left_out_and_what_was_not_tried() -> None:
    told = lines("coverage", coverage=COVERAGE, weakest=WEAKEST, gaps=["eel", "kale"], chosen_is_best=False)
    assert told == [
        "3 of 4.",
        "These are the best found; not every choice could be tried.",
        "No fair wine for eel or kale.",
    ]


@pytest.mark.parametrize(
    ("saturated", "saturates_at", "told"),
    [(True, 3, False), (True, None, True), (False, 3, True), (False, None, True)],
)
def test_one_more_bottle_is_told_unless_that_was_said(
    saturated: bool, saturates_at: int | None, told: bool
) -> None:
    found = lines(
        "coverage",
        coverage=COVERAGE | {"saturates_at": saturates_at},
        weakest=WEAKEST,
        one_more={"say": "One more.", "saturated": saturated},
    )
    assert ("One more." in found) is told


def test_a_board_in_balance_says_so_and_nothing_else() -> None:
    row = pairing("Malbec")
    assert lines("board", pairings=[row]) == ["In balance."]
    assert lines("board", board=BOARD | {"balance": ["Too soft."]}) == []
    assert lines("board", pairings=[row], board=BOARD | {"balance": ["Too soft."]}) == ["Too soft."]


def test_a_board_tells_bridges_gaps_traps_and_what_would_help() -> None:
    board = BOARD | {
        "bridges": ["brie", "ham"], "gaps": ["eel", "kale"], "traps": ["herring", "chilli"],
        "lonely": ["port", "Fino"], "swap": {"into": "Comté", "out": "feta"}, "add": {"into": "walnuts"},
    }  # fmt: skip
    assert lines("board", pairings=[pairing("Malbec")], board=board) == [
        "In balance.",
        "Good with most of the wines: brie and ham.",
        "No fair wine for eel or kale.",
        "Plate apart: herring and chilli.",
        "Few friends on the board: port and Fino.",
        "Best swap: Comté for feta.",
        "Best addition: walnuts.",
    ]


def test_a_drink_without_alcohol_tells_its_foods_or_its_best() -> None:
    row = {"drink": "cold tea", "food": "brie", "verdict": "good"}
    told = lines("alcohol_free", alcohol_free=[row | {"foods": ["ham", "eel"]}, row | {"foods": []}])
    assert told == ["cold tea: for ham and eel", "cold tea: good with brie too"]
