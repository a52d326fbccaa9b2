"""Grams and standard drinks exactly as published."""

from __future__ import annotations

import re

import pytest

from assistant.evening.alcohol import alcohol, au_drinks, grams, kilocalories, uk_units, us_drinks
from assistant.session import Session
from tests.evening.made import evening, rows

TABLE = rows("alcohol_units")
CHECKS = [r for r in TABLE if r["kind"] == "computed check"]
BRITISH = [r for r in TABLE if r["kind"] == "worked example" and r["system"] == "UK"]
AMERICAN = [
    r for r in TABLE if r["kind"] == "worked example" and r["system"] == "US" and "-" not in r["volume_ml"]
]


@pytest.mark.parametrize("row", CHECKS)
def test_every_computed_row(row: dict[str, str]) -> None:
    ml, percent = float(row["volume_ml"]), float(row["abv_percent"])
    told = dict(re.findall(r"(US|UK|AU)\S* ([\d.]+)", row["units_or_drinks"]))
    assert grams(ml, percent) == pytest.approx(float(row["grams_ethanol"]), abs=0.0051)
    for name, measure in (("US", us_drinks), ("UK", uk_units), ("AU", au_drinks)):
        assert measure(ml, percent) == pytest.approx(float(told[name]), abs=0.0051)


@pytest.mark.parametrize("row", BRITISH)
def test_british_examples(row: dict[str, str]) -> None:
    """Published rounded to whole units or tenths."""
    units = uk_units(float(row["volume_ml"]), float(row["abv_percent"]))
    digits = len(row["units_or_drinks"].partition(".")[2])
    assert units == pytest.approx(float(row["units_or_drinks"]), abs=0.51 * 10.0**-digits)


@pytest.mark.parametrize("row", AMERICAN)
def test_american_examples(row: dict[str, str]) -> None:
    """Fluid ounces are rounded in the table, hence within a twentieth."""
    drinks = us_drinks(float(row["volume_ml"]), float(row["abv_percent"]))
    assert drinks == pytest.approx(float(row["units_or_drinks"]), rel=0.05)


def test_the_constants_are_those_published() -> None:
    defined = {r["item"]: r for r in TABLE if r["kind"] == "definition"}
    assert us_drinks(100.0, 14.0 / 0.789) == pytest.approx(1.0)
    assert float(defined["US standard drink"]["grams_ethanol"]) == 14.0
    assert float(defined["Australian standard drink"]["grams_ethanol"]) == 10.0
    assert float(defined["UK unit"]["ml_ethanol"]) == 10.0


def test_energy_by_the_factors_of_the_regulation() -> None:
    """Regulation (EU) No 1169/2011, Annex XIV: alcohol 7 kcal/g, carbohydrate 4 kcal/g."""
    ten_grams = 1000.0 / 0.789
    assert kilocalories(ten_grams, 1.0, 0.0) == pytest.approx(70.0)
    assert kilocalories(100.0, 0.0, 100.0) == pytest.approx(40.0)


def test_energy_is_asked_of_a_wine_by_its_own_figures(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("calories in 125 ml of port")
    amounts = session.knowledge.wines["wine/ruby-port"].amounts
    kcal = kilocalories(125.0, amounts["alcohol"].typical, amounts["residualSugar"].typical)
    assert answer.figures["kilocalories"]["value"] == pytest.approx(kcal, abs=5.0)


def test_an_evening_is_the_sum_of_its_pours(session: Session) -> None:
    """Five pours of 60 ml at 13 % hold 30.8 g, 2.2 US drinks."""
    labels = ("Malbec", "Merlot", "Pinot Noir", "Syrah", "Chardonnay")
    made = evening(session, wines=labels)
    lines = [type(line)(line.label, line.wine, alcohol_percent=13.0) for line in made.wines]
    found = alcohol(type(made)(**{n: getattr(made, n) for n in made.__slots__} | {"wines": tuple(lines)}),
                    session.knowledge)  # fmt: skip
    assert found["grams_per_drinker"] == pytest.approx(30.8, abs=0.05)
    assert found["us_drinks"] == pytest.approx(2.2, abs=0.005)


def test_nobody_drinks_nothing(session: Session) -> None:
    assert set(alcohol(evening(session, non_drinkers=12), session.knowledge).values()) == {0}
