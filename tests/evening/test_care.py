"""What each guest may have; what is not known counts as unsafe."""

from __future__ import annotations

import re

import pytest

from assistant.evening.alcohol import alcohol
from assistant.evening.care import stands
from assistant.evening.needs import understood
from assistant.evening.numbers import numbers
from assistant.knowledge.diets import Fit
from assistant.session import Session
from tests.evening.made import evening, rows

UNFIT = re.compile(r"\b(safe|fit|able|ok|okay|fine|allowed) to (drive|ride)", re.I)
ALLERGENS = [r["allergen"] for r in rows("allergens") if r["regime"] in ("EU/UK", "US")]


def worst(said: str, food: str, session: Session) -> Fit:
    """How a food stands to a need in words."""
    needs = understood(said, session)
    assert needs
    found = {stands(food, need, session.knowledge) for need in needs}
    return next(fit for fit in (Fit.NO, Fit.UNKNOWN, Fit.YES) if fit in found)


@pytest.mark.parametrize("allergen", ALLERGENS)
def test_every_declared_allergen_is_understood(session: Session, allergen: str) -> None:
    """By the name of the law, alone and in a sentence, as marks of the knowledge."""
    for said in (allergen, f"allergic to {allergen}", f"{allergen} allergy"):
        needs = understood(said, session)
        assert any(mark.startswith("allergen/") for need in needs for mark in need.marks), said
        assert all(need.allergy for need in needs)


@pytest.mark.parametrize(
    ("said", "food", "expected"),
    [
        ("pregnant", "food/brie", Fit.NO),
        ("pregnant", "food/cheddar", Fit.UNKNOWN),  # the label says whether the milk is pasteurised
        ("pregnant", "food/salami", Fit.NO),
        ("pregnant", "food/almond", Fit.YES),
        ("pregnant", "wine/malbec", Fit.NO),
        ("tree nut allergy", "food/almond", Fit.NO),
        ("tree nut allergy", "food/peanut", Fit.NO),  # a nut to most guests: its kind is left out
        ("peanut allergy", "food/almond", Fit.YES),
        ("nut allergy", "food/almond", Fit.NO),
        ("vegan", "food/brie", Fit.NO),
        ("vegan", "wine/malbec", Fit.UNKNOWN),
        ("vegetarian", "food/parmesan", Fit.NO),
        ("vegetarian", "food/brie", Fit.UNKNOWN),
        ("lactose intolerant", "food/parmesan", Fit.UNKNOWN),
        ("lactose intolerant", "food/brie", Fit.NO),
        ("milk allergy", "food/parmesan", Fit.NO),  # next to no lactose, all the protein
        ("coeliac", "food/plain-cracker", Fit.NO),
        ("coeliac", "food/salami", Fit.UNKNOWN),  # nothing but a label counts
        ("coeliac", "food/red-grape", Fit.YES),
        ("gluten free", "food/plain-cracker", Fit.NO),
        ("halal", "food/salami", Fit.NO),
        ("halal", "wine/malbec", Fit.NO),
        ("halal", "food/steak", Fit.UNKNOWN),
        ("kosher", "food/cheddar", Fit.UNKNOWN),
        ("no pork", "food/salami", Fit.NO),
        ("no beef", "food/steak", Fit.NO),
        ("designated driver", "wine/malbec", Fit.NO),
        ("12 years old", "wine/malbec", Fit.NO),
        ("on antibiotics", "wine/malbec", Fit.NO),
        ("diabetic", "food/almond", Fit.UNKNOWN),
        ("hates olives", "food/green-olive", Fit.NO),
        ("hates olives", "food/brie", Fit.YES),
        ("strawberry allergy", "food/strawberry", Fit.NO),
        ("strawberry allergy", "food/brie", Fit.UNKNOWN),  # no law has it declared
        ("no blue cheese", "food/roquefort", Fit.NO),
        ("no blue cheese", "food/cheddar", Fit.YES),
    ],
)
def test_stands(session: Session, said: str, food: str, expected: Fit) -> None:
    assert worst(said, food, session) is expected


PREGNANCY = [row for row in rows("food_safety") if row["topic"] == "pregnancy: cheese"]


def cheeses_named(session: Session, row: dict[str, str]) -> list[str]:
    """The foods a statement names by a word of their own; `Danish` names a kitchen."""
    read = [session.parser.parse(word) for word in re.findall(r"[A-Z][a-z]+", row["statement"])]
    named = [frame for frame in read if any(r.type in ("Food", "Kind") for r in frame.text.readings)]
    return [frame.dishes[0].main.food for frame in named if frame.dishes]


@pytest.mark.parametrize("row", PREGNANCY)
def test_no_cheese_passes_unread_in_pregnancy(session: Session, row: dict[str, str]) -> None:
    """Every public body names some cheese to avoid; none of those it names may pass."""
    for food in cheeses_named(session, row):
        assert worst("pregnant", food, session) is not Fit.YES


def test_public_bodies_do_name_cheeses(session: Session) -> None:
    assert {"food/brie", "food/camembert", "food/roquefort"} <= {
        food for row in PREGNANCY for food in cheeses_named(session, row)
    }


def test_a_kind_is_as_unsure_as_its_members(session: Session) -> None:
    assert worst("nut allergy", "kind/nut", session) is Fit.NO
    assert worst("pregnant", "kind/cheese", session) is Fit.UNKNOWN
    assert worst("vegetarian", "kind/cheese", session) is Fit.UNKNOWN


def test_everything_stands_in_one_list(session: Session) -> None:
    made = evening(session, needs=[("R.", ["pregnant", "tree nut allergy"]), ("Mo", ["vegan"])])
    for guest in numbers(made, session)["needs"]:
        listed = [*guest["may_have"], *guest["keep_away"], *guest["check_label"]]
        assert sorted(listed) == sorted([line.label for line in (*made.wines, *made.foods)])
    first = numbers(made, session)["needs"][0]
    assert {"brie", "salami", "almonds", "Malbec"} <= set(first["keep_away"])


def test_more_needs_never_allow_more(session: Session) -> None:
    one, two = (
        set(numbers(evening(session, needs=[("R.", said)]), session)["needs"][0]["may_have"])
        for said in (["vegetarian"], ["vegetarian", "nut allergy"])
    )
    assert two < one


def test_an_unknown_need_leaves_nothing_unasked(session: Session) -> None:
    plan = numbers(evening(session, needs=[("Q.", ["low flibbertigibbet"])]), session)
    assert plan["needs"][0]["may_have"] == []
    assert any("low flibbertigibbet" in problem and "Q." in problem for problem in plan["problems"])


def test_a_dish_counts_with_its_parts(session: Session) -> None:
    made = evening(
        session, foods=("spaghetti carbonara",), needs=[("R.", ["no pork"]), ("S.", ["egg allergy"])]
    )
    for guest in numbers(made, session)["needs"]:
        assert "spaghetti carbonara" in guest["keep_away"]


def test_cautions_follow_the_table(session: Session) -> None:
    plain = " ".join(numbers(evening(session), session)["cautions"])
    needy = " ".join(numbers(evening(session, needs=[("R.", ["pregnant"])]), session)["cautions"])
    assert "fit to drive" in plain
    assert "two hours" in plain
    assert "pregnancy" not in plain
    assert "mould rind" in needy
    assert all(c.endswith(")") for c in numbers(evening(session), session)["cautions"])
    dry = numbers(evening(session, wines=("sparkling apple juice",), foods=("almonds",)), session)
    assert dry["cautions"] == []


def test_never_a_word_on_fitness_to_drive(session: Session) -> None:
    """The caution says that nobody can tell; nothing else speaks of it."""
    plan = numbers(evening(session, needs=[("D.", ["driving"])]), session)
    told = [c for c in plan["cautions"] if UNFIT.search(c)]
    assert len(told) == 1
    assert told[0].startswith("Nobody here can say")
    assert set(alcohol(evening(session), session.knowledge)) == {
        "grams_per_drinker", "us_drinks", "uk_units", "au_drinks",
    }  # fmt: skip


def test_sober_guests_are_counted(session: Session) -> None:
    needs = [(name, ["not drinking"]) for name in ("A.", "B.", "C.")]
    assert any("3 take no alcohol" in p for p in numbers(evening(session, needs=needs), session)["problems"])
    assert numbers(evening(session, needs=needs[:2]), session)["problems"] == []
