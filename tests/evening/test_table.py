"""What a plan says of wines and foods is what the engine finds, and nothing is claimed beyond it."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest

from assistant.evening.board_part import board, food_order
from assistant.evening.choose_task import Task, value
from assistant.evening.facts import wording
from assistant.evening.leftovers import allergens_of, storage
from assistant.evening.plan import plan
from assistant.evening.saturation import Reach, reaches, saturates_at
from assistant.evening.styles import style_words
from assistant.evening.tasting import taste
from assistant.knowledge.diets import allergens
from assistant.knowledge.store import shipped
from assistant.pairing.dish import table_of
from assistant.pairing.engine import Engine
from assistant.session import Session
from tests.evening.made import evening, scores

C = shipped().constants
WINES = ("brut sparkling", "off-dry Riesling", "Malbec", "Sauternes", "Pinot Noir")
FOODS = ("brie", "Stilton", "oysters", "dark chocolate", "vindaloo", "plain bread")


@pytest.fixture(scope="module")
def made(session: Session) -> dict[str, Any]:
    """A plan with friends and foes."""
    return plan(evening(session, wines=WINES, foods=FOODS), session)


def test_best_and_worst_are_the_engines(made: dict[str, Any], session: Session, engine: Engine) -> None:
    lines = evening(session, wines=WINES, foods=FOODS)
    for line, row in zip(lines.foods, made["pairings"], strict=True):
        ranked = engine.rank(table_of(list(line.dishes)), [wine.wine for wine in lines.wines])
        verdicts = {wine.label: m.verdict for m in ranked for wine in lines.wines if wine.wine == m.wine}
        scored = {wine.label: m.score for m in ranked for wine in lines.wines if wine.wine == m.wine}
        assert scored[row["best"]["wine"]] == max(scored.values())
        assert scored[row["worst"]["wine"]] == min(scored.values())
        assert all(row[end]["verdict"] == verdicts[row[end]["wine"]] for end in ("best", "worst"))
        assert {told["wine"]: told["verdict"] for told in row["verdicts"]} == verdicts


def test_a_friend_is_at_least_fair_and_a_foe_hurts(made: dict[str, Any]) -> None:
    loves = [row["loves"] for row in made["flight"] if row["loves"]]
    fights = [row["fights"] for row in made["flight"] if row["fights"]]
    assert loves
    assert fights
    assert {row["verdict"] for row in loves} <= {"strong", "good", "fair"}
    assert {row["verdict"] for row in fights} <= {"poor", "clash"}
    assert all(row["why"] for row in (*loves, *fights))
    assert wording()("text", "no-reason") not in {row["why"] for row in (*loves, *fights)}


def test_a_wine_that_does_nothing_for_the_food_has_no_friend(session: Session, engine: Engine) -> None:
    night = evening(session, wines=("Malbec",), foods=("oysters",))
    row = plan(night, session)["flight"][0]
    verdict = engine.judge(table_of(list(night.foods[0].dishes)), night.wines[0].wine).verdict
    assert verdict in ("poor", "clash")
    assert row["loves"] is None
    assert (row["fights"]["food"], row["fights"]["verdict"]) == ("oysters", verdict)


def test_the_board_of_a_plan_is_looked_at_with_its_wines(made: dict[str, Any]) -> None:
    found = made["board"]
    assert found["gaps"] == made["gaps"]
    assert found["balance"]
    assert {*found["traps"], *found["gaps"], *found["bridges"]}


def test_a_wine_that_hurts_nothing_has_no_foe(session: Session) -> None:
    row = plan(evening(session, wines=("Muscadet",), foods=("oysters",)), session)["flight"][0]
    assert row["fights"] is None
    assert row["loves"]["food"] == "oysters"


def test_gaps_are_foods_without_a_fair_wine(made: dict[str, Any]) -> None:
    rows = {row["food"]: row["best"]["verdict"] for row in made["pairings"] if row["food"] != "plain bread"}
    unfair = [food for food, verdict in rows.items() if verdict not in ("strong", "good", "fair")]
    assert made["gaps"] == unfair
    assert made["coverage"]["served"] == len(rows) - len(unfair)
    assert made["coverage"]["foods"] == 5


def test_bread_rests_the_palate(made: dict[str, Any]) -> None:
    assert made["food_order"][-1] == {
        "food": "plain bread",
        "reason": "between the others, to rest the palate.",
    }
    assert all(row["loves"] is None or row["loves"]["food"] != "plain bread" for row in made["flight"])


def test_sweet_and_hot_food_is_eaten_late(session: Session) -> None:
    foods = ("dark chocolate", "vindaloo", "goat cheese", "brie")
    order = [row["food"] for row in food_order(evening(session, foods=foods), session)]
    assert order.index("goat cheese") < order.index("vindaloo")
    assert order[-1] == "dark chocolate"


@pytest.mark.parametrize(
    ("means", "gaps", "found"),
    [
        ((10.0, 15.0, 15.5, 15.6), (0, 0, 0, 0), 2),
        ((10.0, 15.0, 15.5, 17.0), (0, 0, 0, 0), None),
        ((10.0, 15.0, 15.5, 15.6), (2, 1, 1, 0), None),
        ((10.0, 10.1), (0, 0), 1),
        ((10.0, 20.0), (0, 0), None),
        ((10.0,), (0,), None),
    ],
)
def test_saturation_is_claimed_only_where_nothing_later_adds(
    means: tuple[float, ...], gaps: tuple[int, ...], found: int | None
) -> None:
    rows = [Reach(i, m, g, True) for i, (m, g) in enumerate(zip(means, gaps, strict=True), 1)]
    assert saturates_at(rows, C) == found
    assert saturates_at([*rows[:-1], rows[-1]._replace(proven=False)], C) is None


def test_reach_is_that_of_the_best_sets() -> None:
    given = scores({"red": [30.0, -10.0, 40.0], "white": [20.0, 20.0, 0.0], "pink": [20.0, 2.0, 2.0]})
    one, two, three = reaches(given, 6)
    assert (one.mean, one.gaps) == (pytest.approx(20.0), 1)
    assert (two.mean, two.gaps) == (pytest.approx(30.0), 0)
    assert three.mean == pytest.approx(value(Task(given, 3, 0.0), ("red", "white", "pink")))


@pytest.mark.parametrize(
    ("wine", "words"),
    [
        ("wine/cava", "dry sparkling white"),
        ("wine/sauternes", "sweet oaky white"),
        ("wine/barolo", "dry grippy red"),
        ("wine/muscadet", "dry crisp white"),
    ],
)
def test_style_in_three_words(engine: Engine, wine: str, words: str) -> None:
    assert style_words(wine, engine.glasses[wine], engine.knowledge) == words


def test_every_wine_has_three_words(engine: Engine) -> None:
    for wine, glass in engine.glasses.items():
        assert len(style_words(wine, glass, engine.knowledge).split()) == 3


def test_allergens_of_a_kind_are_those_of_all_its_members(session: Session) -> None:
    known = session.knowledge
    found = allergens_of(["kind/nut"], known)
    has = [set(allergens(food, known)[0]) for food in known.members("kind/nut")]
    assert set(found["allergens_present"]) == set.intersection(*has)
    assert set.union(*has) <= {*found["allergens_present"], *found["allergens_unknown"]}


def test_a_dish_keeps_as_long_as_its_part_that_keeps_least(session: Session) -> None:
    lines = evening(session, foods=("parmesan", "oysters", "honey")).foods
    both = replace(lines[0], dishes=(*lines[0].dishes, *lines[1].dishes))
    assert storage(both, session.knowledge) == storage(lines[1], session.knowledge)
    assert storage(lines[0], session.knowledge) != storage(lines[1], session.knowledge)
    assert storage(lines[2], session.knowledge) is None


def test_nothing_is_put_on_that_a_guest_is_allergic_to(session: Session, engine: Engine) -> None:
    """Without nuts the board lacks a crunch; with the allergy another thing must give it."""
    foods = ("brie", "Stilton", "goat cheese", "cheddar", "salami", "grapes", "cornichons", "baguette")
    made = {}
    for name, needs in (("all", []), ("allergic", [("R.", ["tree nut allergy", "peanut allergy"])])):
        night = evening(session, foods=foods, needs=needs)
        made[name] = board(night, taste(night, engine), session)
    nuts = {engine.knowledge.label(food) for food in engine.knowledge.members("kind/nut")}
    assert made["all"]["add"]["into"] in nuts
    offered = [made["allergic"][change] for change in ("swap", "add")]
    assert not any(change and change["into"] in nuts for change in offered)
    assert made["all"]["traps"] == made["allergic"]["traps"] == ["cornichons"]


def test_a_dry_wine_after_a_sweet_one_is_reset(session: Session) -> None:
    made = plan(evening(session, wines=("Sauternes", "Malbec", "vintage port")), session)
    sweet = {"Sauternes", "vintage port"}
    rows = made["pour_order"]
    for before, after in pairwise(rows):
        assert after["reset"] is (before["wine"] in sweet and after["wine"] not in sweet)


def test_savings_are_true(session: Session) -> None:
    night = evening(session, wines=WINES, foods=FOODS, guests=14)
    found = plan(night, session)
    assert found["savings"]
    pour = next(row for row in found["savings"] if row["pour_ml"])
    smaller = plan(replace(night, pour_ml=float(pour["pour_ml"])), session)
    assert found["cost"]["total"] - smaller["cost"]["total"] == pytest.approx(pour["saved"])
