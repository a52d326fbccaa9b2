"""The little words of a conversation: what comes on the dish, what comes off, what is meant by its place."""

from __future__ import annotations

import pytest

from assistant.answers.record import Answer
from assistant.session import Session


def talk(session: Session, *questions: str) -> list[Answer]:
    """The answers of one conversation."""
    session.new_conversation()
    return [session.ask(question) for question in questions]


def foods(answer: Answer) -> set[str]:
    """Local names of the foods of the dish."""
    assert answer.dish is not None
    return {part["id"].removeprefix("food/") for part in answer.dish["parts"]}


@pytest.mark.parametrize(
    ("turns", "stands", "gone"),
    [
        (["what goes with oysters", "and with lemon on them"], {"oyster", "lemon"}, None),
        (["mushroom risotto?", "with parmesan"], {"mushroom-risotto", "parmesan"}, None),
        (["wine for tomato soup", "bacon on"], {"tomato-soup", "bacon"}, None),
        (["what goes with steak with blue cheese butter", "without the butter"], {"steak"}, "butter"),
        (["burger", "drop the cheese", "something white"], {"burger"}, "cheese"),
        (
            ["chicken with cream sauce", "swap the cream sauce for hot sauce"],
            {"chicken", "hot-sauce"},
            "cream-sauce",
        ),
        (["what goes with cod", "and with crab?"], {"crab"}, "cod"),
        (["wine for mussels with cream", "sorry, not cream, with chilli"], {"mussel", "chilli"}, "cream"),
    ],
)
def test_the_dish_after_a_follow_up(
    conversation: Session, turns: list[str], stands: set[str], gone: str | None
) -> None:
    last = foods(talk(conversation, *turns)[-1])
    assert len(last) >= len(stands)
    for food in stands:
        assert any(food in name for name in last)
    assert gone is None or not any(gone in name for name in last)


@pytest.mark.parametrize(("asked", "place"), [("the second one", 1), ("tell me about the 3rd one", 2)])
def test_a_wine_meant_by_its_place(conversation: Session, asked: str, place: int) -> None:
    first, about = talk(conversation, "what goes with lamb", asked)
    assert about.intent == "describe"
    assert [item.id for item in about.picks] == [first.picks[place].id]


def test_why_the_second_one(conversation: Session) -> None:
    first, why = talk(conversation, "what goes with lamb", "why the second one?")
    assert why.intent == "why"
    assert why.picks[0].id == first.picks[1].id


def test_going_back_answers_the_turn_before_again(conversation: Session) -> None:
    first, _, back, on = talk(conversation, "wine for salmon", "what about a red?", "go back", "why?")
    assert back.intent == "undo"
    assert [i.id for i in back.picks] == [i.id for i in first.picks]
    assert on.picks[0].id == first.picks[0].id


def test_a_price_is_told_not_known(conversation: Session) -> None:
    first, cheaper = talk(conversation, "a red for salmon", "same but cheaper")
    assert cheaper.left_out == ("cheaper",)
    assert foods(cheaper) == foods(first)
    assert {item.wine["colour"] for item in cheaper.picks if item.wine} == {"red"}


@pytest.mark.parametrize("asked", ["not Italian", "something French", "from Spain"])
def test_a_place_limits_the_wine_where_a_dish_stands(conversation: Session, asked: str) -> None:
    first, limited = talk(conversation, "wine for duck breast", asked)
    assert foods(limited) == foods(first)
    assert limited.picks
    assert "Limit:" in limited.text


def test_another_wine_for_that(conversation: Session) -> None:
    _, judged = talk(conversation, "wine for lamb with mint sauce", "does merlot go with that?")
    assert judged.intent == "judge-pair"
    assert foods(judged) >= {"lamb", "mint-sauce"}


def test_a_new_question_leaves_the_old_dish_behind(conversation: Session) -> None:
    *_, new = talk(conversation, "wine for lamb", "why?", "what should I drink with sushi?")
    assert "lamb" not in foods(new)


def test_a_look_at_one_wine_leaves_the_dish_standing(conversation: Session) -> None:
    *_, honey = talk(
        conversation, "what goes with brie", "the second one", "how cold do I serve that", "with honey on top"
    )
    assert honey.intent == "wines-for-food"
    assert foods(honey) == {"brie", "honey"}


def test_a_ban_leaves_the_colour_asked_for(conversation: Session) -> None:
    *_, last = talk(conversation, "a white for goat cheese", "not sauvignon")
    assert {item.wine["colour"] for item in last.picks if item.wine} == {"white"}
    grapes = {g for item in last.picks for g in conversation.knowledge.wines[item.id].grapes}
    assert "grape/sauvignon-blanc" not in grapes


def test_a_wine_asked_for_is_no_verdict_on_the_wine_that_stands(conversation: Session) -> None:
    conversation.new_conversation()
    conversation.ask("what goes with Sauternes")
    answer = conversation.ask("what do I pour with the coppa")
    assert answer.intent == "wines-for-food"
    assert len(answer.picks) > 1


def test_a_kind_that_comes_off_is_put_on_nothing_else(conversation: Session) -> None:
    board = "what goes with brie, stilton, gouda with fig jam, walnuts and dark chocolate"
    answer = talk(conversation, board, "take off the cheese, please")[-1]
    assert conversation.talk is not None
    left = {part.food for dish in conversation.talk.frame.dishes for part in dish.parts}
    assert left == {"food/walnut", "food/dark-chocolate-70"}
    assert "blue" not in answer.text
