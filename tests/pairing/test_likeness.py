"""What stands in for what: distance is a distance, and kin come first."""

from __future__ import annotations

from dataclasses import replace

import pytest

from assistant.pairing.dish import DishPart, single
from assistant.pairing.likeness import (
    COMPARED,
    ENOUGH,
    TASTES,
    alike_foods,
    alike_wines,
    nearest_foods,
    unlike,
)
from assistant.session import Session
from tests.pairing.made import dish, glass


def test_a_wine_is_like_itself_and_likeness_goes_both_ways(session: Session) -> None:
    one, other = (session.engine.glasses[w] for w in ("wine/chablis", "wine/barolo"))
    assert unlike(one, one, session.knowledge) == 0.0
    assert unlike(one, other, session.knowledge) == unlike(other, one, session.knowledge) > 5.0


@pytest.mark.parametrize(
    ("wine", "kin"),
    [
        ("wine/sancerre", {"grape/sauvignon-blanc"}),
        ("wine/barolo", {"grape/nebbiolo"}),
        ("wine/champagne", {"grape/chardonnay", "grape/pinot-noir"}),
    ],
)
def test_a_wine_of_the_same_grape_comes_first(session: Session, wine: str, kin: set[str]) -> None:
    styles = [w for w, known in session.knowledge.wines.items() if known.type == "Wine"]
    first = alike_wines(wine, styles, session.engine)[0]
    assert kin & set(session.knowledge.wines[first].grapes)
    assert session.knowledge.wines[first].colour == session.knowledge.wines[wine].colour


def test_a_kind_of_the_wine_is_no_stand_in(session: Session) -> None:
    """Who cannot get Champagne cannot get blanc de blancs Champagne either."""
    styles = list(session.knowledge.wines)
    assert "wine/blanc-de-blancs-champagne" not in alike_wines("wine/champagne", styles, session.engine)


@pytest.mark.parametrize(
    ("food", "kind"),
    [("food/brie", "kind/cheese"), ("food/gruyere", "kind/cheese"), ("food/salami", "kind/cured-meat")],
)
def test_a_food_of_the_same_kind_stands_in(session: Session, food: str, kind: str) -> None:
    near = alike_foods(food, session.engine)[:3]
    assert len(near) == 3
    assert all(kind in session.knowledge.broader(f) for f in near)


def test_what_is_out_of_stock_is_not_a_ban_but_the_question(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("no chablis in the shop, what can I pour with oysters instead")
    assert answer.intent == "substitute"
    assert answer.picks
    assert "wine/chablis" not in {item.id for item in answer.picks}
    assert answer.picks[0].verdict in ("strong", "good", "fair")


@pytest.mark.parametrize("name", COMPARED)
def test_every_taste_counts_by_its_constant(session: Session, name: str) -> None:
    one, other = glass("chablis", **{name: 1.5}), glass("chablis", **{name: 4.0})
    weight = session.knowledge.constants[f"unlike-{name}"]
    assert weight > 0
    assert unlike(one, other, session.knowledge) == pytest.approx(2.5 * weight)


def test_two_tastes_add_up_with_the_colour(session: Session) -> None:
    c = session.knowledge.constants
    one, other = glass("chablis", acid=3.0, oak=1.0), glass("chablis", "red", acid=1.0, oak=2.0)
    told = 2 * c["unlike-acid"] + c["unlike-oak"] + c["unlike-colour"]
    assert unlike(one, other, session.knowledge) == pytest.approx(told)
    assert c["unlike-colour"] > 0


@pytest.mark.parametrize(
    ("ones", "others", "unshared"),
    [("abc", "bcd", 0.5), ("ab", "cd", 1.0), ("ab", "ab", 0.0), ("a", "abcd", 0.75)],
)
def test_smells_count_by_the_part_that_is_not_shared(
    session: Session, ones: str, others: str, unshared: float
) -> None:
    one, other = (replace(glass("chablis"), smells=frozenset(smells)) for smells in (ones, others))
    whole = session.knowledge.constants["unlike-smells"]
    assert unlike(one, other, session.knowledge) == pytest.approx(whole * unshared)


def test_wines_without_a_grape_in_common_are_further_apart(session: Session) -> None:
    apart = session.knowledge.constants["unlike-grapes"]
    assert apart > 0
    assert unlike(glass("chablis"), glass("barolo"), session.knowledge) == pytest.approx(apart)


def test_the_likest_wine_comes_first_and_of_equals_the_easier_to_buy(session: Session) -> None:
    known, glasses = session.knowledge, session.engine.glasses
    found = alike_wines(
        "wine/chablis", [w for w in known.wines if known.wines[w].type == "Wine"], session.engine
    )
    apart = [round(unlike(glasses["wine/chablis"], glasses[w], known), 1) for w in found]
    assert apart == sorted(apart)
    pairs = [pair for pair in zip(found, found[1:], apart, apart[1:], strict=False) if pair[2] == pair[3]]
    assert pairs
    keys = [[(-known.wines[w].availability, w) for w in pair[:2]] for pair in pairs]
    assert keys == [sorted(pair) for pair in keys]


def test_a_food_stands_in_by_taste_within_the_nearest_kind_that_has_enough(session: Session) -> None:
    known, engine = session.knowledge, session.engine
    found = alike_foods("food/brie", engine)

    def apart(food: str) -> float:
        ours, theirs = engine.plate_of_food("food/brie").points, engine.plate_of_food(food).points
        return round(sum(abs(ours[n] - theirs[n]) for n in TASTES), 1)

    kind = next(kind for kind in known.broader("food/brie") if set(found) <= set(known.members(kind)))
    assert len(found) >= ENOUGH
    assert [apart(food) for food in found] == sorted(map(apart, found))
    left_out = set(known.members(kind)) - set(found)
    assert left_out
    assert all("brie" in known.label(food).lower().split() for food in left_out)


def test_the_foods_of_a_kind_come_by_nearness_and_a_food_by_name_has_none(session: Session) -> None:
    made = dish(DishPart("kind/cheese", "role/base", 100.0))
    found = nearest_foods(made, session.engine)
    here = session.engine.plate(made).points
    apart = [
        round(sum(abs(here[n] - session.engine.plate_of_food(f).points[n]) for n in TASTES), 1) for f in found
    ]
    assert set(found) == set(session.knowledge.members("kind/cheese"))
    assert apart == sorted(apart)
    assert apart[0] < apart[-1]
    assert nearest_foods(single("food/brie"), session.engine) == []
