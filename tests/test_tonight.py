"""What is on the table is the scope of every answer, until the shop is asked for."""

from __future__ import annotations

import pytest

from assistant.session import Session
from tests.tables import poured

SYRAH, RIESLING, MALBEC = "wine/syrah", "wine/dry-riesling", "wine/malbec"


@pytest.fixture
def table(session: Session) -> Session:
    """A session with two wines and four foods on the table."""
    session.new_conversation()
    session.ask("got a syrah and a dry riesling open")
    session.ask("is this board balanced: brie, salami, garlic cheddar, dark chocolate")
    return session


def picked(session: Session, typed: str) -> list[str]:
    return [item.id for item in session.ask(typed).picks]


def test_the_table_is_taken_in(table: Session) -> None:
    assert table.tonight.wines == (SYRAH, RIESLING)
    assert [dish.main.food for dish in table.tonight.dishes][:2] == ["food/brie", "food/salami"]


def test_only_wines_of_the_table_are_picked(table: Session) -> None:
    assert picked(table, "which wine with lamb koftas") == [SYRAH, RIESLING]


def test_the_shop_opens_the_world_for_one_answer(table: Session) -> None:
    table.ask("which wine with lamb koftas")
    assert not set(picked(table, "and in the shop?")) <= {SYRAH, RIESLING}
    assert picked(table, "which wine with lamb koftas") == [SYRAH, RIESLING]


def test_a_much_better_wine_that_is_not_there_is_told(table: Session) -> None:
    answer = table.ask("what goes with stilton")
    assert answer.picks[0].id in (SYRAH, RIESLING)
    assert "Not on the table: " in answer.text


def test_a_limit_that_nothing_on_the_table_keeps_to_is_told(table: Session) -> None:
    answer = table.ask("something fizzy with the salami")
    assert "None of tonight's wines keeps to that" in answer.text
    assert answer.picks


@pytest.mark.parametrize(
    ("typed", "wines"),
    [
        ("swap the riesling for a malbec", (SYRAH, MALBEC)),
        ("tom brought a malbec too", (SYRAH, RIESLING, MALBEC)),
        ("the syrah is finished", (RIESLING,)),
    ],
)
def test_the_table_changes(table: Session, typed: str, wines: tuple[str, ...]) -> None:
    assert table.ask(typed).intent == "set-table"
    assert table.tonight.wines == wines
    assert len(table.tonight.dishes) == 4


def test_what_goes_with_a_wine_ranks_the_foods_of_the_table(table: Session) -> None:
    foods = {dish.main.food for dish in table.tonight.dishes}
    answer = table.ask("what food goes best with the syrah")
    assert {item.id for item in answer.picks} <= foods
    scores = [item.score for item in answer.picks]
    assert scores == sorted(scores, reverse=True)


def test_the_order_is_that_of_the_table(table: Session) -> None:
    table.ask("does malbec go with steak")
    assert table.read("what order do I pour them").wines == (SYRAH, RIESLING)


def test_what_may_hurt_is_told_of_the_board(table: Session) -> None:
    answer = table.ask("I'm pregnant, what can I eat")
    of_brie = {caution["id"] for caution in table.ask("pregnant, is brie safe").cautions}
    assert {caution["id"] for caution in answer.cautions} & of_brie


def test_a_new_conversation_clears_the_table(table: Session) -> None:
    table.new_conversation()
    assert table.tonight.wines == ()
    assert len(picked(table, "which wine with lamb koftas")) == 3


def test_a_wine_put_on_the_table_joins_those_there(table: Session) -> None:
    table.ask("put the malbec on the table")
    assert table.tonight.wines == (SYRAH, RIESLING, MALBEC)


@pytest.mark.parametrize("asked", ["why", "are you sure", "really?"])
def test_the_order_is_explained(table: Session, asked: str) -> None:
    first = table.ask("in what order do we pour them")
    answer = table.ask(asked)
    assert answer.understood
    assert answer.text.splitlines()[1:3] == first.text.splitlines()[1:3]
    assert answer.say.startswith("Dry Riesling comes first: ")


@pytest.mark.parametrize("asked", ["are you sure", "really?", "seriously?"])
def test_an_answer_that_is_doubted_is_explained(table: Session, asked: str) -> None:
    picked = table.ask("what goes with the salami").picks[0].id
    answer = table.ask(asked)
    assert answer.intent == "why"
    assert [item.id for item in answer.picks] == [picked]


def test_what_hurts_is_not_explained_by_a_wine(table: Session) -> None:
    table.ask("what goes with the brie")
    table.ask("I'm pregnant, what can I eat")
    assert table.ask("are you sure").intent != "why"


def test_a_stain_that_is_taken_away_takes_no_wine_off_the_table(conversation: Session) -> None:
    conversation.new_conversation()
    conversation.ask("on the table: brie, malbec and riesling")
    conversation.ask("how I take the red stain away")
    assert len(conversation.tonight.wines) == 2


def test_what_can_be_spent_is_a_budget(conversation: Session) -> None:
    conversation.new_conversation()
    conversation.ask("nine people, brie and malbec on the table")
    conversation.ask("I can spend 100 euro")
    assert conversation.tonight.budget == 100


def test_a_wine_that_goes_leaves_the_board_as_it_is(conversation: Session) -> None:
    conversation.new_conversation()
    for said in (
        "on the table: brie, salami, pinot noir and malbec",
        "what goes with sushi",
        "skip the malbec",
    ):
        conversation.ask(said)
    assert conversation.tonight.wines == ("wine/pinot-noir",)
    assert {dish.main.food for dish in conversation.tonight.dishes} == {"food/brie", "food/salami"}


def test_what_has_run_out_comes_off_the_board(conversation: Session) -> None:
    conversation.new_conversation()
    conversation.ask("on the table: brie, salami and malbec")
    conversation.ask("we're out of salami")
    assert {dish.main.food for dish in conversation.tonight.dishes} == {"food/brie"}


WINES = ("wine/cava", "wine/picpoul-de-pinet", "wine/beaujolais")


@pytest.mark.parametrize(
    "asked",
    ["where does it go in the order", "when do I pour the picpoul", "where does that fit in"],
)
def test_the_place_of_a_wine_is_told_with_the_order(session: Session, asked: str) -> None:
    with poured(session, *WINES):
        assert session.ask(asked).say == "Pour Cava first, Beaujolais last."


@pytest.mark.parametrize(
    "asked",
    ["guy wants red with the salmon is it dumb", "does red go with the salmon", "is a red ok with salmon"],
)
def test_a_kind_of_wine_is_that_of_the_table(session: Session, asked: str) -> None:
    with poured(session, *WINES):
        session.ask("put salmon and brie on the table")
        assert "Beaujolais with salmon: " in session.ask(asked).text


@pytest.mark.parametrize(
    "told",
    [
        "no ones liking the picpoul, swap it for a chablis",
        "swap the picpoul for a chablis",
        "swap the picpoul for a really good chablis",
    ],
)
def test_a_wine_is_swapped_by_name(session: Session, told: str) -> None:
    with poured(session, *WINES):
        session.ask(told)
        assert session.tonight.wines == (WINES[0], "wine/chablis", WINES[2])


def test_what_is_named_beside_a_kind_is_judged_too(session: Session) -> None:
    with poured(session, *WINES):
        text = session.ask("does the cava or a red go with brie").text
        assert "Cava with Brie: " in text
        assert "Beaujolais with Brie: " in text
        assert "Picpoul de Pinet with Brie: " not in text
