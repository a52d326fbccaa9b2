"""Bottles, grams, kit, shopping and cost."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.evening.bottles import bottles, cliffs, needed
from assistant.evening.facts import fact
from assistant.evening.numbers import numbers
from assistant.evening.portions import portions
from assistant.evening.records import FoodLine, WineLine
from assistant.session import Session
from tests.evening.made import evening, rows

USABLE = 712.5  # 750 ml less five in a hundred
COUNTS = st.integers(1, 500)
POURS = st.floats(15.0, 250.0)


@pytest.mark.parametrize(
    ("drinkers", "pour", "expected"),
    [(8, 60, 1), (12, 60, 2), (12, 55, 1), (20, 50, 2), (20, 60, 2), (0, 60, 0)],
)
def test_worked_examples(drinkers: int, pour: float, expected: int) -> None:
    """What the trade reckons with five in a hundred lost."""
    assert needed(drinkers, pour, USABLE) == expected


def test_a_cliff_on_a_whole_tenth_is_not_rounded_below_it() -> None:
    """Floats of tenths such as 59.3 * 10 may lie a hair below the whole number."""
    assert [cliffs(10, 1, tenth)[1] for tenth in (593.0, 711.0, 1151.0)] == [59.3, 71.1, 115.1]
    assert cliffs(5, 2, 712.5) == (142.5, 285.0)
    assert cliffs(12, 1, 712.5) == (None, 59.3)


def test_the_cliff_lies_between_55_and_60() -> None:
    saves, holds = cliffs(12, 2, USABLE)
    assert saves == 59.3
    assert holds == 118.7


@pytest.mark.parametrize(
    "row", [r for r in rows("event_quantities") if r["quantity"] == "pours per 750 ml bottle"]
)
def test_pours_of_a_bottle(row: dict[str, str]) -> None:
    """Without loss, a bottle serves exactly the whole pours of the table, and not one more."""
    pour = float(row["context"].split()[2])
    whole = int(float(row["high"]))
    assert needed(whole, pour, 750.0) == 1
    assert needed(whole + 1, pour, 750.0) == 2


def test_a_pour_lies_in_the_published_span() -> None:
    people = [float(r["low"]) for r in rows("event_quantities") if r["quantity"] == "people per bottle"]
    pour = fact("amounts", "bottle", "pour_ml")
    assert pour.low <= 750.0 / max(people) <= 750.0 / min(people) <= pour.high


@pytest.mark.parametrize(("meal", "contexts"), [
    ("tasting", ("before a meal", "hors d oeuvre or dessert tray", "before dinner, cheese shop rule")),
    ("supper", ("tray is the main meal", "cheese-only buffet")),
])  # fmt: skip
def test_cheese_lies_in_the_published_span(session: Session, meal: str, contexts: tuple[str, ...]) -> None:
    found = [r for r in rows("event_quantities") if r["context"] in contexts and "cheese" in (r["quantity"])]
    grams = [float(r[end]) * (28.35 if r["unit"] == "oz" else 1.0) for r in found for end in ("low", "high")]
    each = portions(evening(session, foods=("cheddar",), meal=meal), session.knowledge)[0].per_guest
    assert len(found) == len(contexts)
    assert min(grams) <= each <= max(grams)


def test_water_lies_in_the_published_span(session: Session) -> None:
    row = next(r for r in rows("event_quantities") if r["quantity"] == "water per guest")
    plan = numbers(evening(session), session)
    litres = next(p["amount"] for p in plan["shopping"] if p["item"] == "water")
    assert float(row["low"]) <= litres / 12 <= float(row["high"])


@given(drinkers=COUNTS, more=COUNTS, pour=POURS)
def test_more_guests_never_need_fewer_bottles(drinkers: int, more: int, pour: float) -> None:
    assert needed(drinkers + more, pour, USABLE) >= needed(drinkers, pour, USABLE)


@given(drinkers=COUNTS, pour=POURS)
def test_the_count_changes_at_the_cliffs(drinkers: int, pour: float) -> None:
    count = needed(drinkers, pour, USABLE)
    saves, holds = cliffs(drinkers, count, USABLE)
    assert needed(drinkers, holds or 0.0, USABLE) <= count < needed(drinkers, (holds or 0.0) + 0.2, USABLE)
    assert saves is None or needed(drinkers, saves, USABLE) < count


def test_what_is_owned_is_not_bought(session: Session) -> None:
    made = evening(session, guests=14)
    owned = replace(made, wines=tuple(replace(w, owned=1) for w in made.wines))
    assert [(b.needed, b.to_buy) for b in bottles(owned, session.knowledge)] == [(2, 1)] * 3
    plenty = replace(made, wines=tuple(replace(w, owned=9) for w in made.wines))
    assert {b.to_buy for b in bottles(plenty, session.knowledge)} == {0}


def test_a_magnum_counts_double(session: Session) -> None:
    made = evening(session, guests=14)
    magnums = replace(made, wines=tuple(replace(w, bottle_ml=1500.0) for w in made.wines))
    assert {b.needed for b in bottles(magnums, session.knowledge)} == {1}


def test_everybody_drinks_what_holds_no_alcohol(session: Session) -> None:
    made = evening(session, wines=("sparkling apple juice", "Malbec"), guests=14, non_drinkers=14)
    assert [b.needed for b in bottles(made, session.knowledge)] == [2, 0]


def test_two_cheeses_share_what_one_would_take(session: Session) -> None:
    one = portions(evening(session, foods=("cheddar",)), session.knowledge)
    two = portions(evening(session, foods=("cheddar", "brie")), session.knowledge)
    assert two[0].per_guest + two[1].per_guest == one[0].per_guest


def test_three_more_guests(session: Session) -> None:
    """Ten drink 600 ml, which a bottle holds; thirteen drink 780, which it does not."""
    more = numbers(evening(session), session)["if_more"]
    assert [row["more"] for row in more["bottles"]] == [1, 1, 1]
    assert all(row["grams"] > 0 for row in more["foods"])


def test_cost_is_the_sum_of_the_list(session: Session) -> None:
    made = evening(session, budget=45.0)
    made = replace(made, foods=(*made.foods[1:], FoodLine("cheddar", made.foods[0].dishes, 100.0, 2.0)))
    plan = numbers(made, session)
    total = sum(row["cost"] or 0.0 for row in plan["shopping"])
    cheddar = next(row for row in plan["shopping"] if row["item"] == "cheddar")
    assert cheddar["cost"] == pytest.approx(2.0 * cheddar["amount"] / 100.0)
    assert plan["cost"]["total"] == pytest.approx(total)
    assert plan["cost"]["per_head"] == pytest.approx(total / 12, abs=0.005)
    assert plan["cost"]["within_budget"] is True
    assert "water" in plan["cost"]["unpriced"]
    assert numbers(replace(made, budget=10.0), session)["cost"]["within_budget"] is False


def test_the_kit_grows_with_the_guests(session: Session) -> None:
    small, large = (numbers(evening(session, guests=n), session)["kit"] for n in (6, 24))
    counts = {row["item"]: row["count"] for row in small}
    assert counts["tasting glass of 210 to 350 ml"] == 12
    assert counts["spit cup"] == 3
    assert {row["need"] for row in large} == {"must", "nice"}
    assert all(row["count"] >= counts.get(row["item"], 0) for row in large)


def test_there_is_a_knife_for_every_cheese_and_none_for_the_rest(session: Session) -> None:
    for foods, knives in ((("cheddar", "brie", "salami"), 2), (("cheddar",), 1), (("salami", "almonds"), 0)):
        found = numbers(evening(session, foods=foods), session)["kit"]
        assert sum(row["count"] for row in found if row["item"] == "cheese knife") == knives


def test_food_that_is_there_is_not_bought_again(session: Session) -> None:
    made = evening(session, foods=("cheddar",))
    (whole,) = portions(made, session.knowledge)
    (some,) = portions(
        replace(made, foods=(replace(made.foods[0], grams=whole.to_buy - 100.0),)), session.knowledge
    )
    (plenty,) = portions(replace(made, foods=(replace(made.foods[0], grams=9000.0),)), session.knowledge)
    assert (some.needed, plenty.needed) == (whole.needed, whole.needed)
    assert plenty.to_buy == 0.0 < some.to_buy < whole.to_buy
    assert some.to_buy >= whole.needed - (whole.to_buy - 100.0)


def test_no_sparkling_wine_needs_no_sparkling_stopper(session: Session) -> None:
    names = {row["item"] for row in numbers(evening(session, wines=("Malbec",)), session)["kit"]}
    assert "stopper for sparkling wine" not in names
    assert "stopper for still wine" in names


def test_without_wines_and_foods_nothing_breaks(session: Session) -> None:
    plan = numbers(evening(session, (), (), guests=0, non_drinkers=0), session)
    assert plan["bottles"] == []
    assert plan["cost"]["per_head"] is None


def test_an_order_takes_only_its_wines(session: Session) -> None:
    made = evening(session)
    plan = numbers(made.pouring(("Malbec", "brut sparkling")), session)
    assert [row["wine"] for row in plan["bottles"]] == ["Malbec", "brut sparkling"]
    assert isinstance(made.wines[0], WineLine)


BREAD = "plain bread"
OWN = "bread kept apart for Dana and Lee, by a label that allows it"


def test_who_may_not_have_the_bread_gets_bread_apart(session: Session) -> None:
    asked = (("Dana", ["coeliac"]), ("Lee", ["gluten free"]), ("Tom", ["vegan"]))
    record = numbers(evening(session, foods=["Brie", "olives"], needs=asked), session)
    bought = {row["item"]: row["amount"] for row in record["shopping"]}
    assert 0 < bought[OWN] < bought[BREAD]
    away = {row["guest"]: BREAD in row["keep_away"] for row in record["needs"]}
    assert away == {"Dana": True, "Lee": True, "Tom": False}


def test_bread_that_is_on_the_table_is_no_better(session: Session) -> None:
    asked = (("Dana", ["coeliac"]), ("Lee", ["gluten free"]))
    bought = numbers(evening(session, foods=["Brie", "baguette"], needs=asked), session)["shopping"]
    assert OWN in [row["item"] for row in bought]


def test_nobody_needs_bread_apart_where_all_may_have_it(session: Session) -> None:
    record = numbers(evening(session), session)
    assert not [row["item"] for row in record["shopping"] if "kept apart" in row["item"]]


@pytest.mark.parametrize("asked", ["how much stilton do I need?", "how many grams of stilton"])
def test_a_food_of_the_table_is_as_much_as_the_plan_has(session: Session, asked: str) -> None:
    session.new_conversation()
    session.ask(
        "8 guests Saturday, we have Soave and Chianti with Brie, cheddar, Stilton, salami and lasagne"
    )
    answer = session.ask(asked)
    assert answer.say == "Stilton: about 200 g for 8 at a tasting, 344 g as supper."
    assert "The plan has 250 g to buy beside Brie and cheddar" in answer.text
    assert (
        "The plan has 750 g to buy in all: Brie, cheddar and Stilton." in session.ask("how much cheese").text
    )
    assert "The plan has 2200 g to buy" in session.ask("how much lasagne").text
    bought = session.ask("shopping list").text
    assert "Stilton: 250 g" in bought
    assert "lasagne: 2200 g" in bought


def test_a_food_that_is_not_on_the_table_is_of_no_plan(session: Session) -> None:
    session.new_conversation()
    session.ask("8 guests, we have Soave and Chianti with Brie and lasagne")
    assert "plan" not in session.ask("how much salmon for 8").text
