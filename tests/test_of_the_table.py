"""What is said of a dish of the table is about that dish, whatever plate stands."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from assistant.session import Session

TABLE = "tonight: Manchego, chorizo, olives, Gorgonzola; Verdejo, Rioja and a PX"


@pytest.fixture(scope="module")
def session() -> Session:
    return Session()


@pytest.fixture
def table(session: Session) -> Iterator[Session]:
    session.new_conversation()
    session.ask(TABLE)
    session.ask("what goes with the chorizo")
    yield session
    session.new_conversation()


def test_a_pair_of_the_table_is_judged(table: Session) -> None:
    answer = table.ask("and the gorgonzola with the PX?")
    assert answer.intent == "judge-pair"
    assert answer.text.startswith("Yes, Pedro Ximénez with Gorgonzola")


def test_what_is_put_to_a_dish_stays_one_dish(table: Session) -> None:
    answer = table.ask("add honey to the Manchego")
    assert "Manchego with honey, chorizo, mixed olives and Gorgonzola" in answer.text
    assert len(table.tonight.dishes) == 4


def test_what_goes_best_is_asked_anew(table: Session) -> None:
    table.ask("is the gorgonzola ok with the PX?")
    answer = table.ask("what goes best with the chorizo")
    assert answer.intent == "wines-for-food"
    assert answer.picks[0].label == "Rioja"


def test_that_is_what_was_just_brought(table: Session) -> None:
    table.ask("Tomas brought an Amarone")
    assert table.ask("does that go with anything here").text.startswith("With Amarone")


def test_all_the_cheese_comes_out(table: Session) -> None:
    told = table.ask("how long before do I take the cheese out").text
    assert "Manchego: out" in told
    assert "Gorgonzola: out" in told
    assert "chorizo" not in told


def test_the_bites_for_a_wine_are_told_and_then_the_other_one(table: Session) -> None:
    first = table.ask("what bite first with the rioja")
    assert first.intent == "foods-for-wine"
    other = table.ask("and the other one")
    assert other.picks[0].id == first.picks[1].id
    named = next(d for d in table.tonight.dishes if d.main.food == "food/gorgonzola")
    answer = table.ask("why not the gorgonzola with that")
    assert (answer.intent, answer.say.partition(":")[0]) == ("why-not", "Rioja")
    assert answer.dish
    assert named.main.food in {part["id"] for part in answer.dish["parts"]}


def test_what_would_mend_a_pair_is_tried_on_it(table: Session) -> None:
    table.ask("does the verdejo go with gorgonzola")
    answer = table.ask("would honey on it help")
    assert answer.intent == "what-if"
    assert "Verdejo" in answer.say


def test_what_is_suspected_is_answered_with_the_reasons_of_the_pair(table: Session) -> None:
    table.ask("does the rioja go with gorgonzola")
    answer = table.ask("is it cos of the salt")
    assert answer.intent == "why"
    assert "Rioja with Gorgonzola" in answer.text
    assert "Against:" in answer.text


@pytest.mark.parametrize(
    "said", ["tom says he hates the rioja, what else", "jen can't stand the rioja, what can she have instead"]
)
def test_who_does_not_like_a_wine_gets_another_and_may_go_back(table: Session, said: str) -> None:
    answer = table.ask(said)
    assert answer.picks
    assert "wine/rioja" not in {item.id for item in answer.picks}
    back = table.ask("he's changed his mind, likes it actually")
    assert back.intent == "judge-pair"
    assert "Rioja with chorizo" in back.text
    assert table.ask("what goes with the chorizo").picks[0].label == "Rioja"
