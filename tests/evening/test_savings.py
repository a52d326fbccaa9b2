"""What could be saved, reckoned again from the prices and the bottles."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from assistant.evening.bottles import bottles
from assistant.evening.plan import plan
from assistant.evening.records import Evening
from assistant.session import Session
from tests.evening.made import evening

PRICES = {
    "brut sparkling": 8.0,
    "off-dry Riesling": 11.0,
    "Malbec": 14.0,
    "Sauternes": 17.0,
    "Pinot Noir": 20.0,
}


def priced(session: Session, **said: Any) -> Evening:
    """Fourteen guests, of whom twelve drink: one bottle of each wine is just too little at 60 ml."""
    made = evening(session, wines=tuple(PRICES), foods=("brie", "ham"), guests=14, **said)
    return replace(made, wines=tuple(replace(line, price=PRICES[line.label]) for line in made.wines))


@pytest.fixture(scope="module")
def all_five(session: Session) -> dict[str, Any]:
    """The plan that pours every wine."""
    return plan(priced(session), session)


def test_a_smaller_pour_saves_the_second_bottle_of_each(all_five: dict[str, Any]) -> None:
    assert [row["to_buy"] for row in all_five["bottles"]] == [2] * 5
    row = all_five["savings"][0]
    assert row == {
        "say": "Pour 59 ml: fewer bottles of 5 wines, 70.00 EUR less.",
        "saved": pytest.approx(sum(PRICES.values())),
        "pour_ml": 59,
    }


def test_a_wine_that_is_at_hand_saves_nothing(session: Session) -> None:
    night = priced(session)
    owned = replace(night, wines=tuple(replace(w, owned=2 * (w.label == "Pinot Noir")) for w in night.wines))
    row = plan(owned, session)["savings"][0]
    assert "Pinot Noir" not in row["say"]
    assert [wine for wine in PRICES if wine in row["say"]] == [
        wine for wine in PRICES if wine != "Pinot Noir"
    ]
    assert row["saved"] == pytest.approx(sum(PRICES.values()) - PRICES["Pinot Noir"])


def test_that_pour_is_the_largest_at_which_one_bottle_does(session: Session) -> None:
    def bought(ml: float) -> set[int]:
        return {row.to_buy for row in bottles(priced(session, pour_ml=ml), session.knowledge)}

    assert (bought(59.0), bought(60.0)) == ({1}, {2})


def test_fewer_wines_save_the_price_of_those_left_out(all_five: dict[str, Any], session: Session) -> None:
    row = all_five["savings"][1]
    kept = [wine for wine in PRICES if wine in row["say"]]
    assert 1 <= len(kept) < len(PRICES)
    assert row["saved"] == pytest.approx(2 * sum(price for wine, price in PRICES.items() if wine not in kept))
    assert f"{row['saved']:.2f} EUR less" in row["say"]
    night = priced(session)
    fewer = plan(replace(night, wines=tuple(line for line in night.wines if line.label in kept)), session)
    assert all_five["cost"]["total"] - fewer["cost"]["total"] == pytest.approx(row["saved"])
    assert fewer["gaps"] == all_five["gaps"]


def test_what_must_be_poured_is_never_saved(session: Session, all_five: dict[str, Any]) -> None:
    night = priced(session)
    dearest = replace(night, wines=tuple(replace(w, must=w.label == "Pinot Noir") for w in night.wines))
    row = next(row for row in plan(dearest, session)["savings"] if row["say"].startswith("Pour only"))
    assert "Pinot Noir" not in all_five["savings"][1]["say"]
    assert "Pinot Noir" in row["say"]


def test_up_to_four_wines_are_named(session: Session) -> None:
    row = plan(priced(session, choose=3), session)["savings"][0]
    named = [wine for wine in PRICES if wine in row["say"]]
    assert len(named) == 3
    assert row["saved"] == pytest.approx(sum(PRICES[wine] for wine in named))
