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
    sparkling_term,
    still_term,
    sweetness_word,
)

CONSTANTS = shipped().constants
MEDIUM_SWEET_FROM, SWEET_FROM = CONSTANTS["medium-sweet-from"], CONSTANTS["sweet-from"]
TABLE = Path(__file__).parent / "reference" / "eu_sugar_terms.csv"
PART_A = "Regulation (EU) 2019/33, Annex III, Part A"
PART_B = "Regulation (EU) 2019/33, Annex III, Part B"
FGVB = "Annex III, Part B, as summarised by the Bordeaux growers federation"
OIV = "OIV standard for the labelling of wines, 3.1.6"
STEP = 0.1
DRIEST_FIRST = ("brut nature", "extra brut", "brut", "extra dry", "sec", "demi-sec", "doux")
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


# Sparkling wine


@pytest.mark.parametrize(("category", "term", "sugar"), bounds("sparkling"))
def test_sparkling_term_is_the_driest_that_the_table_permits(category: str, term: str, sugar: float) -> None:
    permitted = {
        row["term"] for row in terms("sparkling") if row["category"] == category and fits(row, sugar)
    }
    assert sparkling_term(sugar, dosage=False) == min(permitted, key=DRIEST_FIRST.index), term
    sweetened = permitted - {"brut nature"}
    assert sparkling_term(sugar) == min(sweetened, key=DRIEST_FIRST.index), term


@pytest.mark.parametrize(
    ("sugar", "dosage", "term", "source"),
    [
        (0.0, False, "brut nature", PART_A),
        (2.9, False, "brut nature", PART_A),
        (2.9, True, "extra brut", f"{PART_A}: brut nature only without sugar after the second fermentation"),
        (3.0, False, "extra brut", f"{PART_A}: brut nature is less than 3"),
        (0.0, True, "extra brut", f"{PART_A}: extra brut is 0 to 6"),
        (6.0, True, "extra brut", f"{PART_A}: extra brut is 0 to 6"),
        (6.1, True, "brut", PART_A),
        (11.9, True, "brut", f"{PART_A}: brut is less than 12"),
        (12.0, True, "extra dry", f"{PART_A}: extra dry is 12 to 17"),
        (17.0, True, "extra dry", f"{PART_A}: extra dry and sec both hold 17, the drier is given"),
        (17.1, True, "sec", f"{PART_A}: sec is 17 to 32"),
        (32.0, True, "sec", f"{PART_A}: sec and demi-sec both hold 32, the drier is given"),
        (32.1, True, "demi-sec", f"{PART_A}: demi-sec is 32 to 50"),
        (50.0, True, "demi-sec", f"{PART_A}: doux is greater than 50"),
        (50.1, True, "doux", f"{PART_A}: doux is greater than 50"),
        (300.0, False, "doux", f"{PART_A}: doux has no upper bound"),
    ],
)
def test_sparkling_edges(sugar: float, dosage: bool, term: str, source: str) -> None:
    assert sparkling_term(sugar, dosage) == term, source


def test_tolerance_of_the_label_does_not_widen_the_term() -> None:
    """9 g/l may be labelled three ways within 3 g/l; the term itself is the one it fits."""
    example = next(row for row in rows("worked example") if row["term"] == "sparkling")
    sugar, labels = float(example["sugar_min_gl"]), {"extra brut", "brut", "extra dry"}
    near = {
        row["term"]
        for row in terms("sparkling")
        if row["sugar_max_gl"] and any(fits(row, sugar + step / 10) for step in range(-30, 31))
    }
    assert near == labels
    assert sparkling_term(sugar) == "brut"


@pytest.mark.parametrize("term", ["brut", "extra dry", "sec"])
def test_limits_before_july_2009_are_not_used(term: str) -> None:
    """The old limits were wider; today's demi-sec holds all of the old one."""
    old = next(row for row in rows("historic") if row["term"] == term)
    today = next(row for row in terms("sparkling") if row["term"] == term)
    widened = [s / 10 for s in range(600) if fits(old, s / 10) and not fits(today, s / 10)]
    assert widened
    assert all(sparkling_term(sugar) != term for sugar in widened)


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


def test_colour_words() -> None:
    words = {colour_word(w.colour) for w in shipped().wines.values()}
    assert words == {"white", "rosé", "red", "orange"}
