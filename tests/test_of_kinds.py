"""`Which cheese with the Rioja`: what is asked out of a kind is of that kind, of the table first."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture
def table(conversation: Session) -> Session:
    """Two cheeses, a sausage, a fish; the sausage is what the Rioja likes best."""
    conversation.ask("foods: brie, manchego, chorizo, smoked salmon. wines: Rioja, Chablis")
    return conversation


@pytest.mark.parametrize(
    ("asked", "foods"),
    [
        ("which cheese with the Rioja", ["food/manchego", "food/brie"]),
        ("which cheese goes best with the Rioja", ["food/manchego", "food/brie"]),
        ("which of the cheeses goes with the Chablis", ["food/brie", "food/manchego"]),
        ("which fish for the Chablis", ["food/smoked-salmon"]),
        ("which meat for the Chablis", ["food/chorizo"]),
    ],
)
def test_foods_of_the_table_are_those_of_the_kind_asked_for(
    table: Session, asked: str, foods: list[str]
) -> None:
    answer = table.ask(asked)
    assert (answer.intent, [pick.id for pick in answer.picks]) == ("foods-for-wine", foods)


def test_all_of_a_kind_are_told_again_of_the_wine_that_stands(table: Session) -> None:
    table.ask("what goes with the Rioja")
    assert [pick.id for pick in table.ask("which cheese with it").picks] == ["food/manchego", "food/brie"]


def test_where_the_table_has_none_of_the_kind_others_are_told(table: Session) -> None:
    answer = table.ask("which dessert for the Rioja")
    kinds = [table.knowledge.broader(pick.id) for pick in answer.picks]
    assert kinds
    assert all("kind/dessert" in above or "kind/sweet-food" in above for above in kinds)


def test_a_cheese_spoken_of_is_not_the_only_one_asked_for(conversation: Session) -> None:
    conversation.ask("what goes with brie")
    answer = conversation.ask("which cheese with a Rioja")
    assert len(answer.picks) > 1
    assert all("kind/cheese" in conversation.knowledge.broader(pick.id) for pick in answer.picks)


def test_the_same_kind_is_asked_of_another_wine(conversation: Session) -> None:
    conversation.ask("which cheese with Rioja")
    answer = conversation.ask("and with Chablis?")
    assert answer.intent == "foods-for-wine"
    assert answer.say.startswith("With Chablis, ")
    assert all("kind/cheese" in conversation.knowledge.broader(pick.id) for pick in answer.picks)
