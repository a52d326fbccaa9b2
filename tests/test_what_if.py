"""What-if and fixes: each answer is checked against the engine run on the dish before and after."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from assistant.answers.whatif import most_moved
from assistant.language.recipes import dishes_without
from assistant.pairing.dish import Dish, DishPart, table_of
from assistant.pairing.fixes import edited, edits, smallest_fix
from assistant.pairing.match import Match
from assistant.session import Session

PAIRS = [
    ("chicken curry", "cabernet sauvignon"),
    ("grilled salmon", "chianti"),
    ("beetroot salad", "oaked chardonnay"),
    ("oysters", "viognier"),
    ("brie", "zinfandel"),
    ("steak", "muscadet"),
]


def dishes(session: Session, text: str) -> tuple[Dish, ...]:
    """The dishes of a text."""
    return session.parser.parse(text).dishes


def wine_of(session: Session, text: str) -> str:
    """A style of the wine named."""
    (word,) = session.parser.parse(text).wines
    return session.knowledge.styles_of(word)[0]


def rank(session: Session, verdict: str) -> int:
    """Where a verdict stands among the bands, 0 the best."""
    return [band.verdict for band in session.knowledge.bands].index(verdict)


@pytest.mark.parametrize(("food", "wine"), PAIRS)
def test_a_fix_is_the_first_edit_that_lifts_the_verdict(session: Session, food: str, wine: str) -> None:
    """Every edit before it is tried here by itself and lifts nothing; the one found does."""
    plate, style = dishes(session, food), wine_of(session, wine)
    before = session.engine.judge(table_of(list(plate)), style)
    found = smallest_fix(plate, style, session.engine)
    lifts = [e for e, after in _all_edits(session, plate, style) if _better(session, after, before)]
    assert (found.edit if found else None) == (lifts[0] if lifts else None)


def _all_edits(session: Session, plate: tuple[Dish, ...], style: str) -> Iterator[tuple[object, Match]]:
    for edit in edits(plate[0], session.knowledge):
        yield edit, session.engine.judge(table_of([edited(plate[0], edit), *plate[1:]]), style)


def _better(session: Session, after: Match, before: Match) -> bool:
    return rank(session, after.verdict) < rank(session, before.verdict)


def test_some_pairs_can_be_fixed_and_some_cannot(session: Session) -> None:
    """So that the test above sees both."""
    found = [smallest_fix(dishes(session, f), wine_of(session, w), session.engine) for f, w in PAIRS]
    assert any(found)
    assert not all(found)


def test_the_reason_is_the_rule_that_moved_most(session: Session) -> None:
    """Sugar on the plate: the rule named is the one whose effect fell furthest."""
    style = wine_of(session, "chablis")
    before, after = (
        session.engine.judge(table_of(list(dishes(session, text))), style)
        for text in ("grilled chicken", "grilled chicken with honey")
    )
    assert after.score < before.score
    moved = most_moved(before, after)
    assert moved is not None
    old, new = (
        {e.rule: e.effect for e in match.path if e.rule in session.knowledge.rules}
        for match in (before, after)
    )
    falls = {rule: new.get(rule, 0.0) - old.get(rule, 0.0) for rule in old | new}
    assert falls[moved[0]] == min(falls.values())


def test_nothing_moves_where_nothing_changes(session: Session) -> None:
    match = session.engine.judge(table_of(list(dishes(session, "brie"))), wine_of(session, "chablis"))
    assert most_moved(match, match) is None


def test_leaving_off_takes_the_part_alone(session: Session) -> None:
    (dish,) = dishes(session, "shrimp wrapped in bacon")
    gone = {p.food for p in dish.parts} - {
        p.food for d in dishes_without((dish,), "food/bacon", session.knowledge) for p in d.parts
    }
    assert gone == {"food/bacon"}


def test_leaving_off_one_of_two_dishes_leaves_the_other(session: Session) -> None:
    both = dishes(session, "brie and salami")
    assert dishes_without(both, "food/salami", session.knowledge) == both[:1]


@pytest.mark.parametrize(
    ("turns", "base", "absent", "present"),
    [
        (["burger with pinot noir", "what if I leave off the cheese"], "burger", "cheddar", None),
        (["chicken with cream sauce with chablis", "what if I swap the sauce for hot sauce"], "chicken",
         "cream-sauce", "hot-sauce"),
        (["grilled salmon with chianti", "what if I add lemon butter"], "salmon", None, "lemon-butter"),
    ],
)  # fmt: skip
def test_a_change_works_on_what_stands(
    session: Session, turns: list[str], base: str, absent: str | None, present: str | None
) -> None:
    session.new_conversation()
    answers = [session.ask(turn) for turn in turns]
    assert answers[-1].intent == "what-if"
    assert answers[-1].dish is not None
    foods = {part["id"].removeprefix("food/") for part in answers[-1].dish["parts"]}
    assert absent not in foods
    assert present is None or present in foods


def test_the_food_a_dish_is_made_of_is_never_left_off(session: Session) -> None:
    sauce = "food/mint-sauce"
    dish = Dish((DishPart(sauce, "role/base", 100.0), DishPart(sauce, "role/sauce", 20.0)))
    assert all(edit.left_off != sauce for edit in edits(dish, session.knowledge))


@pytest.mark.parametrize(
    "asked", ["what is changed if I leave out the mushrooms", "what if I leave off the bacon"]
)
def test_what_comes_off_no_dish_is_asked_back(session: Session, asked: str) -> None:
    session.new_conversation()
    answer = session.ask(asked)
    assert answer.say.startswith("On which dish?")
    assert not answer.understood
    assert not answer.picks
    session.ask("what goes with a mushroom and bacon burger")
    assert session.ask(asked).picks


@pytest.mark.parametrize(
    "food", ["garlic cheddar", "lobster", "steak", "brie", "grilled salmon and asparagus"]
)
def test_the_wine_before_is_the_one_that_was_named(session: Session, food: str) -> None:
    session.new_conversation()
    named = session.ask(f"what goes with {food}").picks[0].label
    answer = session.ask("what if I add honey")
    before = named if answer.say == f"Still {answer.picks[0].label}." else ""
    assert answer.picks[0].label == before or f"Before it was {named}." in answer.text


@pytest.mark.parametrize(
    ("food", "typed"),
    [
        ("steak", "what if I leave off the pepper sauce"),
        ("steak", "without the pepper sauce"),
        ("brie", "what if I leave off the honey"),
        ("brie", "without the honey"),
    ],
)
def test_what_is_not_on_the_dish_is_told_and_nothing_is_new(session: Session, food: str, typed: str) -> None:
    session.new_conversation()
    named = session.ask(food).picks[0].label
    answer = session.ask(typed)
    assert re.search(
        rf"^No (peppercorn sauce|honey) on the {food}, so none comes off", answer.text, re.I | re.M
    )
    assert answer.picks[0].label == named
    assert "Now it" not in answer.text


def test_what_a_cheese_has_in_itself_does_not_come_off(session: Session) -> None:
    session.new_conversation()
    named = session.ask("what goes with garlic cheddar").picks[0].label
    answer = session.ask("and without the garlic?")
    assert answer.say == "The garlic is in the garlic cheddar and does not come off: ask of cheddar instead."
    assert f"Still {named}." in answer.text


def test_what_nobody_changed_has_no_new_reason(session: Session) -> None:
    session.new_conversation()
    session.ask("grilled salmon")
    assert "Now it" not in session.ask("what if I grill it").text
