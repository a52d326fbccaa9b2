"""A board in balance: each aspect by itself, and the change that helps most."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.evening.board import Amounts, BoardItem, Finding, board_food, evenness, findings, traps
from assistant.evening.board_change import Change, best_changes
from assistant.evening.board_faults import faults, faults_of
from assistant.evening.main_bites import rests_palate
from assistant.knowledge.diets import Fit, fit
from assistant.knowledge.store import shipped
from assistant.pairing.dish import single
from assistant.pairing.engine import Engine

KNOWLEDGE = shipped()
BALANCED = (
    "brie", "fresh-goat-cheese", "manchego", "gouda", "stilton", "salami", "cornichon", "walnut",
    "red-grape", "baguette",
)  # fmt: skip

TILTED = ("feta", "anchovy", "prosciutto", "mozzarella", "burrata", "epoisses", "honey")
ENGINE = Engine(KNOWLEDGE)


def best_change(
    board: Sequence[BoardItem],
    engine: Engine,
    wines: Sequence[str],
    diets: Sequence[str] = (),
    swap: bool = True,
) -> Change | None:
    """The swap, or the addition, that mends most; None where nothing mends anything."""
    changes = best_changes(board, engine, wines, diets)
    return next((change for change in changes if (change.out is not None) == swap), None)


def items(engine: Engine, *foods: str) -> list[BoardItem]:
    """Shipped foods by local name as things on a board."""
    return [board_food(f"food/{food}", engine) for food in foods]


def found(things: Sequence[BoardItem], amounts: Amounts | None = None) -> dict[str, Finding]:
    """The findings by local name of the aspect."""
    return {f.aspect.removeprefix("board/"): f for f in findings(things, KNOWLEDGE, amounts)}


def test_a_balanced_board_has_no_fault_but_perhaps_salt(engine: Engine) -> None:
    looked_at = found(items(engine, *BALANCED))
    assert {"milk", "texture", "flavoured", "support", "mild", "loud", "salt"} == set(looked_at)
    assert [name for name, f in looked_at.items() if f.faults] == []


@pytest.mark.parametrize(
    ("foods", "aspect", "number"),
    [
        (("brie", "camembert"), "milk", 1),
        (("brie", "fresh-goat-cheese"), "milk", 0),
        (("brie", "camembert"), "texture", 1),
        (("brie", "cheddar"), "texture", 0),
        (("brie", "camembert", "cheddar", "parmesan", "manchego"), "texture", 2),
        (("brie", "cheddar", "gouda", "stilton", "fresh-goat-cheese"), "texture", 0),
        (("brie", "cheddar", "gouda", "stilton", "fresh-goat-cheese"), "milk", 1),
        (("truffle-brie", "garlic-cheddar", "cheddar"), "flavoured", 0),
        (("truffle-brie", "garlic-cheddar"), "flavoured", 1),
        (("cheddar", "salami", "cornichon", "walnut", "red-grape", "baguette"), "support", 0),
        (("cheddar", "salami"), "support", 4),
        (("salami", "stilton", "mixed-olives"), "mild", 1),
        (("brie", "stilton", "salami"), "loud", 0),
        (("brie", "salami", "cheddar"), "loud", 1),
        (("salami", "prosciutto", "mixed-olives"), "salt", 1),
        (("brie", "walnut", "red-grape"), "salt", 0),
    ],
)
def test_an_aspect_is_counted(engine: Engine, foods: tuple[str, ...], aspect: str, number: float) -> None:
    assert found(items(engine, *foods))[aspect].faults == number


def test_flavoured_cheeses_are_counted_against_their_share(engine: Engine) -> None:
    finding = found(items(engine, "truffle-brie", "garlic-cheddar", "cheddar"))["flavoured"]
    assert (finding.value, finding.bound, len(finding.has)) == (2, 2, 2)
    assert "cheddar" not in {label.lower() for label in finding.has}
    none = found(items(engine, "brie", "cheddar"))["flavoured"]
    assert (none.faults, none.value, none.bound, none.has) == (0, 0, 1, ())


def test_what_does_not_apply_is_not_looked_at(engine: Engine) -> None:
    assert set(found(items(engine, "salami"))) == {"support", "salt"}
    assert {"milk", "texture"}.isdisjoint(found(items(engine, "cheddar", "salami", "walnut")))


def test_evenness_is_that_of_shannon() -> None:
    assert evenness([2, 2, 2]) == pytest.approx(1.0)
    assert evenness([4, 1]) == pytest.approx(0.7219, abs=1e-4)
    assert evenness([5]) == evenness([]) == evenness([3, 0]) == 0.0


def test_sodium_is_grams_times_milligrams(engine: Engine) -> None:
    things = items(engine, "salami", "brie")
    salt = found(things, Amounts((30.0, 20.0), given=True))["salt"]
    assert salt.value == pytest.approx(0.3 * things[0].sodium + 0.2 * things[1].sodium)
    assert salt.has[0] == things[0].label


def test_sweet_condiments_are_weighed_only_where_grams_are_given(engine: Engine) -> None:
    things = items(engine, "brie", "honey")
    assert "sweet" not in found(things)
    for grams, number in ((15.0, 0.0), (16.0, 1.0)):
        assert found(things, Amounts((50.0, grams), given=True))["sweet"].faults == number


def test_traps_are_plated_apart(engine: Engine) -> None:
    named = ("brie", "honey", "cornichon", "dark-chocolate-70", "walnut", "fig-jam")
    assert [i.food.removeprefix("food/") for i in traps(items(engine, *named))] == [
        "honey",
        "cornichon",
        "dark-chocolate-70",
        "fig-jam",
    ]


def test_plain_bread_rests_the_palate(engine: Engine) -> None:
    rest = {
        food: rests_palate(single(f"food/{food}"), engine) for food in ("baguette", "brie", "garlic-bread")
    }
    assert rest == {"baguette": True, "brie": False, "garlic-bread": False}


def test_a_swap_mends_what_it_says_and_keeps_to_its_like(engine: Engine) -> None:
    things = items(engine, "brie", "camembert", "salami", "dark-chocolate-70")
    change = best_change(things, engine, ["wine/cava", "wine/rioja"])
    assert change is not None
    assert change.out is not None
    assert change.out.cheese
    assert change.into.cheese
    assert "board/milk-cow" not in change.into.places["board/milk"]
    after = [change.into if item is change.out else item for item in things]
    before, now = (faults(findings(board, KNOWLEDGE), KNOWLEDGE) for board in (things, after))
    assert before - now == pytest.approx(change.mended)
    assert change.mended >= 4.0  # another milk and another texture, two each


def test_no_swap_of_any_cheese_mends_more(engine: Engine) -> None:
    things = items(engine, "brie", "camembert", "salami")
    change = best_change(things, engine, [])
    assert change is not None
    before = faults(findings(things, KNOWLEDGE), KNOWLEDGE)
    for food in KNOWLEDGE.members("kind/cheese"):
        for at in (0, 1):
            after = [*things[:at], board_food(food, engine), *things[at + 1 :]]
            assert before - faults(findings(after, KNOWLEDGE), KNOWLEDGE) <= change.mended + 1e-6


@given(st.lists(st.sampled_from(BALANCED + TILTED), min_size=1, max_size=12))
def test_a_board_that_is_tried_has_the_faults_that_would_be_found(foods: list[str]) -> None:
    things = items(ENGINE, *foods)
    assert faults_of(things, KNOWLEDGE) == faults(findings(things, KNOWLEDGE), KNOWLEDGE)


def test_an_addition_leaves_everything_on_the_board(engine: Engine) -> None:
    change = best_change(items(engine, "cheddar", "salami", "cornichon", "red-grape"), engine, [], swap=False)
    assert change is not None
    assert change.out is None
    assert "board/support-crunch" in change.into.places["board/support"]


@pytest.mark.parametrize("diet", ["diet/vegetarian", "diet/vegan", "diet/no-nuts", "diet/no-gluten"])
def test_within_a_diet_only_what_surely_fits_is_offered(engine: Engine, diet: str) -> None:
    changes = best_changes(items(engine, "brie", "camembert", "salami"), engine, [], [diet])
    assert changes
    assert {fit(change.into.food, diet, KNOWLEDGE) for change in changes} == {Fit.YES}


def test_a_plant_cheese_is_offered_only_within_a_diet(engine: Engine) -> None:
    board = items(engine, "brie", "camembert")
    plain, vegan = (best_change(board, engine, [], diets) for diets in ([], ["diet/vegan"]))
    assert plain is not None
    assert vegan is not None
    assert "board/milk-plant" not in plain.into.places["board/milk"]
    assert "board/milk-plant" in vegan.into.places["board/milk"]


def test_nothing_is_changed_where_nothing_is_wrong(engine: Engine) -> None:
    assert best_change(items(engine, *BALANCED), engine, []) is None
