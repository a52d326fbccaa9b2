"""The whole plan: every field of the contract, kept to its schema, and fields that agree with one another."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import replace
from itertools import combinations
from typing import Any

import pytest

from assistant.evening.bottles import bottles
from assistant.evening.choose_task import value
from assistant.evening.facts import fact
from assistant.evening.plan import plan
from assistant.evening.read import read_evening
from assistant.evening.records import Evening, WineLine
from assistant.evening.selecting import select
from assistant.evening.tasting import taste
from assistant.knowledge.files import corpus_dir
from assistant.pairing.engine import Engine
from assistant.pairing.flight import order_cost, pour_order
from assistant.session import Session
from tests.evening.made import evening
from tests.plan_schema import disagreements, faults, validator

QUAY = corpus_dir() / "evenings" / "quay-house.toml"
MANY = (
    "brut sparkling", "off-dry Riesling", "Malbec", "oaked Chardonnay", "Pinot Noir", "Sauternes",
    "Muscadet", "dry rosé", "tawny port", "Cabernet Sauvignon",
)  # fmt: skip
BOARD = ("brie", "Stilton", "salami", "goat cheese", "dark chocolate", "crackers", "grilled salmon", "olives")
MADE: dict[str, dict[str, Any]] = {
    "plain": {},
    "chosen": {"wines": MANY, "foods": BOARD, "choose": 4},
    "in a budget": {"wines": MANY, "foods": BOARD, "choose": 3, "budget": 30.0},
    "no choice": {"wines": MANY, "choose": 3, "budget": 5.0},
    "needs": {"needs": [("R.", ["pregnant", "tree nut allergy"]), ("Mo", ["vegan"])], "foods": BOARD},
    "one of each": {"wines": ("Malbec",), "foods": ("brie",)},
    "bread alone": {"foods": ("plain bread",)},
    "nothing": {"wines": (), "foods": ()},
    "no wine": {"wines": ()},
    "no food": {"foods": ()},
    "nobody drinks": {"non_drinkers": 12},
    "no date": {"start": None},
    "twins": {"wines": ("Malbec", "Argentine Malbec", "red from Mendoza"), "choose": 2},
    "supper": {"meal": "supper", "foods": ("steak with pepper sauce", "vindaloo", "apple pie"), "guests": 40},
    "a drink": {"wines": ("sparkling apple juice", "Malbec")},
}


class Plans(dict[str, dict[str, Any]]):
    """A plan of each evening made, when it is first asked for."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session

    def __missing__(self, name: str) -> dict[str, Any]:
        self[name] = plan(evening(self.session, **MADE[name]), self.session)
        return self[name]


@pytest.fixture(scope="module")
def plans(session: Session) -> Plans:
    """The plans of this module."""
    return Plans(session)


@pytest.mark.parametrize("name", MADE)
def test_a_plan_keeps_to_the_schema(plans: Plans, name: str) -> None:
    assert faults(plans[name]) == []
    assert set(plans[name]) == set(validator().schema["properties"])
    assert disagreements(plans[name]) == []


def test_a_plan_begins_with_what_the_file_says(plans: Plans, session: Session) -> None:
    head = {"title": "Test", "start": "2027-02-12T19:00", "meal": "tasting", "guests": 12, "drinkers": 10}
    assert {key: plans["plain"][key] for key in (*head, "pour_ml")} == {**head, "pour_ml": 60.0}
    bare = plan(evening(session, title="", start=None, meal="supper", non_drinkers=5), session)
    assert [bare[key] for key in ("title", "start", "meal", "drinkers")] == [None, None, "supper", 7]


def test_the_example_keeps_to_the_schema(session: Session) -> None:
    made = plan(read_evening(QUAY, session), session)
    assert faults(made) == []
    assert disagreements(made) == []
    assert len(made["chosen"]) == 4
    assert made["problems"] == []


def test_the_schema_sees_what_is_missing_or_wrong(plans: Plans) -> None:
    for name in plans["chosen"]:
        assert faults({key: value for key, value in plans["chosen"].items() if key != name}), name
    wrong = deepcopy(plans["chosen"])
    wrong["pairings"][0]["best"]["verdict"] = "97 %"
    wrong["clock"][0]["at"] = "tonight"
    assert len(faults(wrong)) == 2


def test_the_choice_is_the_best_of_all_that_are_allowed(session: Session) -> None:
    """Against every set, with the same worth, in the money that the food leaves."""
    made = evening(session, wines=MANY, foods=BOARD, choose=4, budget=60.0)
    lines = tuple(replace(line, price=5.0 + 3 * i, must=i == 4) for i, line in enumerate(made.wines))
    made = replace(made, wines=lines)
    tasting = taste(made, session.engine)
    assert tasting is not None
    found = select(made, tasting, session.engine)
    assert found.task is not None
    prices = {line.label: line.price or 0.0 for line in lines}
    sets = [
        s
        for s in combinations(sorted(MANY), 4)
        if "Pinot Noir" in s and _cost(s, made, prices, session) <= 60.0
    ]
    assert 1 < len(sets) < 84
    best = max(value(found.task, s) for s in sets)
    assert value(found.task, sorted(found.poured)) == pytest.approx(best)


def _cost(wines: tuple[str, ...], made: Evening, prices: dict[str, float], session: Session) -> float:
    return sum(b.to_buy * prices[b.wine] for b in bottles(made.pouring(wines), session.knowledge))


def test_everything_is_for_the_wines_chosen(plans: Plans) -> None:
    made = plans["chosen"]
    left = set(MANY) - set(made["chosen"])
    assert len(made["chosen"]) == 4
    bought = {row["item"] for row in made["shopping"] if row["unit"] == "bottle"}
    assert bought == set(made["chosen"])
    assert not any(wine in row["task"] for row in made["clock"] for wine in left)
    assert made["alcohol"]["grams_per_drinker"] < 4 * 60 * 0.2 * 0.789


def test_wines_are_poured_in_the_order_that_carries_least(
    plans: Plans, session: Session, engine: Engine
) -> None:
    made = evening(session, wines=MANY).pouring(tuple(plans["chosen"]["chosen"]))
    glasses = [engine.glasses[line.wine] for line in made.wines]
    c = engine.knowledge.constants
    assert order_cost(glasses, c) == pytest.approx(order_cost(pour_order(glasses, c), c))


def test_must_and_owned_bottles_are_in(session: Session) -> None:
    made = evening(session, wines=MANY, foods=BOARD, choose=3)
    usual = plan(made, session)["chosen"]
    odd = [label for label in MANY if label not in usual][:2]

    def line(wine: WineLine) -> WineLine:
        return replace(wine, must=wine.label == odd[0], owned=int(wine.label == odd[1]))

    found = plan(replace(made, wines=tuple(map(line, made.wines))), session)
    assert set(odd) < set(found["chosen"])
    why = {row["wine"]: row["why"] for row in found["why_chosen"]}
    assert why[odd[0]].startswith("you want it poured")
    assert why[odd[1]].startswith("you have it")


def test_too_many_owned_bottles_are_chosen_among(session: Session) -> None:
    made = evening(session, wines=MANY, foods=BOARD, choose=3)
    owned = replace(made, wines=tuple(replace(line, owned=1) for line in made.wines))
    assert plan(owned, session)["chosen"] == plan(made, session)["chosen"]


def test_the_budget_is_kept_with_the_food(session: Session) -> None:
    made = evening(session, wines=MANY, foods=BOARD, choose=3)
    foods = tuple(replace(line, price=4.0) for line in made.foods)
    made = replace(
        made, foods=foods, wines=tuple(replace(w, price=6.0 + i) for i, w in enumerate(made.wines))
    )
    free = plan(made, session)
    tight = plan(replace(made, budget=free["cost"]["total"] - 1.0), session)
    assert tight["problems"] == []
    assert tight["cost"]["within_budget"] is True
    assert tight["chosen"] != free["chosen"]


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ({"choose": 3, "budget": 5.0}, ("no 3 of these wines", "5.00 EUR", "30.00 EUR")),
        ({"choose": 3, "budget": 25.0}, ("no 3 of these wines", "choose = 2")),
        ({"choose": 3, "budget": 35.0, "guests": 14}, ("no 3 of these wines", "60.00 EUR", "pour 59 ml")),
        ({"non_drinkers": 12}, ("all 12 guests are non-drinkers", "drinks without alcohol")),
    ],
)
def test_what_to_loosen_is_said_in_one_sentence(
    session: Session, said: dict[str, Any], told: tuple[str, ...]
) -> None:
    found = plan(evening(session, wines=MANY, **said), session)
    assert found["chosen"] == []
    assert found["bottles"] == []
    assert len(found["problems"]) == 1
    for words in told:
        assert words in found["problems"][0]


def test_more_musts_than_wines_is_told(session: Session) -> None:
    made = evening(session, wines=MANY, choose=2)
    made = replace(made, wines=tuple(replace(line, must=i < 3) for i, line in enumerate(made.wines)))
    told = plan(made, session)["problems"][0]
    assert "3 wines must be poured, but choose is 2" in told
    assert "Write choose = 3" in told


def test_more_wines_than_beginners_keep_apart_are_told(session: Session) -> None:
    most = int(fact("amounts", "flight", "wines").high)
    assert most < len(MANY)
    told = plan(evening(session, wines=MANY), session)["coverage"]["say"]
    assert f"{len(MANY)} wines want spit cups and two hours; beginners keep {most} apart." in told
    assert "spit cups" not in plan(evening(session, wines=MANY[:most]), session)["coverage"]["say"]


def test_wines_of_one_style_keep_their_own_labels(plans: Plans) -> None:
    assert len(set(plans["twins"]["chosen"])) == 2


def test_nobody_drinks_a_drink_is_still_poured(session: Session) -> None:
    said = {"wines": ("sparkling apple juice", "Malbec"), "non_drinkers": 12}
    assert plan(evening(session, **said), session)["chosen"] == ["sparkling apple juice"]
