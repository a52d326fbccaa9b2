"""What custom pours together: the rules agree with most of it, and a short list of foods begins with it."""

from __future__ import annotations

import pytest

from assistant.knowledge.store import shipped
from assistant.pairing.dish import single, table_of
from assistant.pairing.engine import Engine
from assistant.pairing.score import LIKED
from assistant.session import Session

KNOWLEDGE = shipped()
CUSTOM = [
    (wine, food)
    for wine, entry in KNOWLEDGE.digest.items()
    for food in entry.get("classicWith", ())
]  # fmt: skip
# Custom that these rules do not carry, known and looked at: they should not grow unseen.
MOST_APART = 0.1


def test_the_rules_agree_with_most_of_custom() -> None:
    engine = Engine(KNOWLEDGE)
    apart = [
        (wine, food)
        for wine, food in CUSTOM
        if engine.judge(table_of([single(food)]), wine).verdict not in LIKED
    ]
    assert len(CUSTOM) > 100
    assert len(apart) <= MOST_APART * len(CUSTOM), apart


@pytest.mark.parametrize(
    ("question", "foods"),
    [  # common practice, as any wine course teaches it
        ("what goes with muscadet", {"food/oyster", "food/mussel"}),
        ("what goes with sauternes", {"food/roquefort", "food/foie-gras", "food/creme-brulee"}),
        ("what goes with ruby port", {"food/stilton", "food/dark-chocolate-70"}),
        ("what goes with pinot noir", {"food/duck", "food/peking-duck", "food/mushroom-risotto"}),
        ("what goes with fino", {"food/jamon-iberico", "food/almond", "food/mixed-olives"}),
    ],
)
def test_a_short_list_of_foods_begins_with_custom(question: str, foods: set[str]) -> None:
    answer = Session(KNOWLEDGE).ask(question)
    assert answer.picks[0].id in foods
    assert answer.picks[0].verdict in LIKED


def test_the_whole_ranking_is_by_score_alone() -> None:
    scores = [item.score for item in Session(KNOWLEDGE, top=1000).ask("what goes with muscadet").picks]
    assert scores == sorted(scores, reverse=True)


def test_a_short_list_of_wines_opens_with_custom_and_says_so() -> None:
    answer = Session(KNOWLEDGE).ask("what goes with comté")
    first = KNOWLEDGE.wines[answer.picks[0].id or ""]
    assert "food/comte" in first.classics
    assert "First by custom, which pours it with Comté; by the rules alone" in answer.text
    assert [item.score for item in answer.picks] == sorted((i.score for i in answer.picks), reverse=True)


def test_nothing_is_said_of_custom_where_the_rules_agree() -> None:
    session = Session(KNOWLEDGE)
    assert "First by custom" not in session.ask("what goes with roquefort").text
    assert "First by custom" not in Session(KNOWLEDGE, top=1000).ask("what goes with comté").text


CUSTOMS = [
    (food, wine)
    for food, entry in KNOWLEDGE.digest.items()
    for wine in entry.get("pouredWith", ())
]  # fmt: skip


def test_the_rules_agree_with_what_custom_pours_with_foods() -> None:
    """Written down without a look at the rules: that they agree should not get worse unseen."""
    engine, styles = Engine(KNOWLEDGE), [w.id for w in KNOWLEDGE.wines.values() if w.type == "Wine"]
    foods = sorted({food for food, _ in CUSTOMS})
    ranked = engine.rank_each([table_of([single(food)]) for food in foods], styles)
    liked = {
        food: {m.wine for m in found if m.verdict in LIKED} for food, found in zip(foods, ranked, strict=True)
    }
    apart = [
        (food, wine)
        for food, wine in CUSTOMS
        if not any(wine == style or wine in KNOWLEDGE.wines[style].kinds for style in liked[food])
    ]
    assert len(CUSTOMS) > 4000
    assert len(apart) <= 0.06 * len(CUSTOMS), apart


def test_custom_of_a_food_counts_for_the_styles_below_a_wine() -> None:
    assert KNOWLEDGE.pours("wine/red-burgundy", {"food/duck"}) == {"food/duck"}  # a Pinot Noir
    assert not KNOWLEDGE.pours("wine/muscadet", {"food/duck"})


def test_olives_beside_a_meal_do_not_lead_it() -> None:
    answer = Session(KNOWLEDGE).ask("wine for chicken thighs with olives and potatoes")
    assert "which pours it with mixed olives" not in answer.text
    assert not {"wine/fino", "wine/manzanilla"} & {item.id for item in answer.picks}


@pytest.mark.parametrize(
    ("asked", "food"), [("wine for nuts", "food/nuts"), ("wine for burek", "food/borek")]
)
def test_behind_a_wine_of_custom_come_others_of_custom(asked: str, food: str) -> None:
    picks = Session(KNOWLEDGE).ask(asked).picks
    assert [KNOWLEDGE.pours(item.id or "", [food]) for item in picks] == [{food}] * 3


def test_a_board_is_chosen_within_custom_and_told_by_the_rules_alone() -> None:
    answer = Session(KNOWLEDGE).ask("choose three wines for a cheese board")
    table = table_of([single("kind/cheese")])
    engine = Engine(KNOWLEDGE)
    assert len(answer.picks) == 3
    for item in answer.picks:
        assert KNOWLEDGE.pours(item.id or "", ["kind/cheese"])
        assert item.verdict == engine.judge(table, item.id or "").verdict
    told = [f"{item.label}, {item.verdict} with cheese too" in answer.text for item in answer.picks]
    assert told.count(True) == 2  # the first is the one "for cheese"
