"""Sweetness terms against Regulation (EU) 2019/33, Annex III (reference/eu_sugar_terms.csv)."""

from __future__ import annotations

import csv
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from assistant.knowledge.concepts import Amount, Wine
from assistant.knowledge.store import shipped
from assistant.pairing.sweetness import (
    SPARKLING_BAR,
    colour_word,
    still_term,
    sweetness_word,
)

CONSTANTS = shipped().constants
MEDIUM_SWEET_FROM, SWEET_FROM = CONSTANTS["medium-sweet-from"], CONSTANTS["sweet-from"]
TABLE = Path(__file__).parent / "reference" / "eu_sugar_terms.csv"
PART_B = "Regulation (EU) 2019/33, Annex III, Part B"
FGVB = "Annex III, Part B, as summarised by the Bordeaux growers federation"
OIV = "OIV standard for the labelling of wines, 3.1.6"
STEP = 0.1
ALLOWANCE = {"dry (acidity exception)": 2, "medium dry (acidity exception)": 10}
SOFT, SHARP = 0.0, 60.0

Row = dict[str, str]


def rows(category: str) -> list[Row]:
    """The rows of the reference table whose category begins with this word."""
    with TABLE.open(encoding="utf-8") as file:
        found = [row for row in csv.DictReader(file) if row["category"].startswith(category)]
    assert found, category
    return found


def terms(category: str) -> list[Row]:
    """Rows with bounds; rows on the choice of a term have none."""
    return [row for row in rows(category) if row["sugar_min_gl"]]


def fits(row: Row, sugar: float) -> bool:
    """Whether the sugar lies inside the row's bounds, edges as the row states them."""
    low, high = float(row["sugar_min_gl"]), row["sugar_max_gl"]
    above = sugar >= low if row["min_inclusive"] == "yes" else sugar > low
    if not high:
        return above
    below = sugar <= float(high) if row["max_inclusive"] == "yes" else sugar < float(high)
    return above and below


def bounds(category: str) -> list[tuple[str, str, float]]:
    """Every bound of every term with the points just below, on and just above it."""
    return [
        (row["category"], row["term"], round(float(row[side]) + step, 1))
        for row in terms(category)
        for side in ("sugar_min_gl", "sugar_max_gl")
        if row[side]
        for step in (-STEP, 0.0, STEP)
        if float(row[side]) + step >= 0
    ]


# Still wine


def still_permitted(category: str, sugar: float, acidity: float) -> set[str]:
    """The terms whose bounds, and whose acidity exception if it is one, hold."""
    return {
        row["term"].removesuffix(" (acidity exception)")
        for row in terms(category)
        if fits(row, sugar) and acidity >= sugar - ALLOWANCE.get(row["term"], sugar)
    }


def test_allowances_are_those_of_the_table() -> None:
    conditions = {row["term"]: row["extra_condition"] for row in terms("still")}
    for term, allowance in ALLOWANCE.items():
        assert f"TA >= RS - {allowance}" in conditions[term]


@pytest.mark.parametrize("acidity", [SOFT, SHARP])
@pytest.mark.parametrize(("category", "term", "sugar"), bounds("still"))
def test_still_term_is_permitted(category: str, term: str, sugar: float, acidity: float) -> None:
    """Soft wine meets the plain bounds, very sharp wine the widened ones."""
    permitted = still_permitted("still", sugar, acidity)
    found = still_term(sugar, acidity)
    assert found in permitted, (category, term)
    if found != "sweet":
        drier = [t for t in ("dry", "medium dry", "medium") if t in permitted]
        assert found == drier[0], (category, term)


@pytest.mark.parametrize(
    ("sugar", "acidity", "term", "source"),
    [
        (0.0, 0.0, "dry", PART_B),
        (4.0, 0.0, "dry", f"{PART_B}: dry is not more than 4"),
        (4.1, 2.0, "medium dry", f"{PART_B}: above 4 only with acidity at most 2 below sugar"),
        (4.1, 2.1, "dry", f"{PART_B}: acidity at most 2 below sugar"),
        (9.0, 7.0, "dry", f"{PART_B}: up to 9 with acidity at most 2 below sugar"),
        (9.0, 6.9, "medium dry", f"{PART_B}: acidity more than 2 below sugar"),
        (9.1, 60.0, "medium dry", f"{PART_B}: no acidity makes more than 9 dry"),
        (12.0, 0.0, "medium dry", f"{FGVB}: medium dry is not more than 12"),
        (12.1, 2.0, "medium", f"{FGVB}: above 12 only with acidity at most 10 below sugar"),
        (12.1, 2.1, "medium dry", f"{FGVB}: acidity at most 10 below sugar"),
        (18.0, 8.0, "medium dry", f"{FGVB}: up to 18 with acidity at most 10 below sugar"),
        (18.0, 7.9, "medium", f"{FGVB}: acidity more than 10 below sugar"),
        (18.1, 60.0, "medium", f"{FGVB}: no acidity makes more than 18 medium dry"),
        (44.9, 8.0, "medium", f"{FGVB}: medium is below 45"),
        (45.0, 8.0, "sweet", f"{FGVB}: sweet is at least 45"),
        (45.1, 60.0, "sweet", f"{OIV}: sweet is at least 45"),
        (400.0, 8.0, "sweet", f"{OIV}: sweet has no upper bound"),
    ],
)
def test_still_edges(sugar: float, acidity: float, term: str, source: str) -> None:
    assert still_term(sugar, acidity) == term, source


@pytest.mark.parametrize(
    "row", [r for r in rows("worked example") if r["term"] == "dry"], ids=lambda r: r["source"]
)
def test_worked_examples_of_dry(row: Row) -> None:
    """`RS 8 g/l is dry only if TA >= 6 g/l`, and 9 only from 7."""
    sugar = float(row["sugar_min_gl"])
    least = float(row["extra_condition"].split(">=")[1].split("g/l")[0])
    assert still_term(sugar, least) == "dry"
    assert still_term(sugar, least - STEP) == "medium dry"


@pytest.mark.parametrize(
    ("allowance", "low", "high", "term"), [(2, 41, 90, "dry"), (10, 121, 180, "medium dry")]
)
def test_exception_holds_to_the_tenth_of_a_gram(allowance: int, low: int, high: int, term: str) -> None:
    """Acidity exactly at the allowance counts for every tenth, whatever binary fractions do."""
    for tenths in range(low, high + 1):
        sugar = Decimal(tenths) / 10
        acidity = sugar - allowance
        assert still_term(float(sugar), float(acidity)) == term, sugar
        assert still_term(float(sugar), float(acidity - Decimal("0.1"))) != term, sugar


# What a wine is called


def wine(sugar: float, acidity: float, pressure: float) -> Wine:
    """A shipped wine with these amounts in its place."""
    found = shipped().wines["wine/cava"]
    stated = {"residualSugar": sugar, "acidity": acidity, "pressure": pressure}
    amounts = {name: Amount(value, value, value, "judged", "source/judged") for name, value in stated.items()}
    return replace(found, amounts={**found.amounts, **amounts})


@pytest.mark.parametrize(
    ("sugar", "acidity", "pressure", "word"),
    [
        (4.0, 0.0, 0.0, "dry"),
        (4.1, 2.0, 0.0, "off-dry"),
        (9.0, 7.0, 0.0, "dry"),
        (9.1, 9.0, 0.0, "off-dry"),
        (11.9, 6.0, 5.0, "dry"),
        (17.0, 6.0, SPARKLING_BAR, "dry"),
        (17.0, 6.0, SPARKLING_BAR - STEP, "off-dry"),
        (17.1, 9.0, 5.0, "off-dry"),
    ],
)
def test_dry_is_what_the_law_calls_dry(sugar: float, acidity: float, pressure: float, word: str) -> None:
    """Sparkling wine is called dry up to extra dry, however sweet it tastes."""
    assert sweetness_word(wine(sugar, acidity, pressure), perceived=1.0, c=CONSTANTS) == word
    if word == "dry":
        assert sweetness_word(wine(sugar, acidity, pressure), perceived=4.0, c=CONSTANTS) == word


@pytest.mark.parametrize(
    ("perceived", "word"),
    [
        (MEDIUM_SWEET_FROM - STEP, "off-dry"),
        (MEDIUM_SWEET_FROM, "medium-sweet"),
        (SWEET_FROM - STEP, "medium-sweet"),
        (SWEET_FROM, "sweet"),
        (5.0, "sweet"),
    ],
)
def test_above_dry_the_taste_decides(perceived: float, word: str) -> None:
    assert sweetness_word(wine(40.0, 7.0, 0.0), perceived, c=CONSTANTS) == word


def test_a_sparkling_wine_is_dry_up_to_where_extra_dry_ends() -> None:
    extra_dry = next(row for row in terms("sparkling") if row["term"] == "extra dry")
    assert extra_dry["max_inclusive"] == "yes"
    last = float(extra_dry["sugar_max_gl"])
    words = [sweetness_word(wine(sugar, 6.0, 5.0), 1.0, c=CONSTANTS) for sugar in (last, last + STEP)]
    assert words == ["dry", "off-dry"]


def test_colour_words() -> None:
    words = {colour_word(w.colour) for w in shipped().wines.values()}
    assert words == {"white", "rosé", "red", "orange"}
