"""Follow-ups: what stands from the turn before, what each follow-up changes, and when a question is new."""

from __future__ import annotations

import pytest

from assistant.answers.record import Answer
from assistant.session import Session

WHITE = {"white"}


def talk(session: Session, *questions: str) -> list[Answer]:
    """The answers of one conversation."""
    session.new_conversation()
    return [session.ask(question) for question in questions]


def picks(answer: Answer) -> list[str]:
    """Ids of what was picked."""
    return [item.id for item in answer.picks]


def parts(answer: Answer) -> list[str]:
    """Labels of the parts of the dish."""
    assert answer.dish is not None
    return [part["label"] for part in answer.dish["parts"]]


def colours(answer: Answer) -> set[str]:
    """Colours of the wines picked."""
    return {item.wine["colour"] for item in answer.picks if item.wine}


# --- why


@pytest.mark.parametrize("asked", ["why?", "why", "how come?", "explain"])
def test_why_explains_the_first_pick_with_the_dish(conversation: Session, asked: str) -> None:
    first, why = talk(conversation, "what goes with garlic cheddar", asked)
    assert why.intent == "why"
    assert picks(why) == picks(first)[:1]
    assert parts(why) == ["garlic cheddar"]
    assert why.verdict == first.picks[0].verdict
    assert why.picks[0].score == pytest.approx(first.picks[0].score)


def test_why_again_goes_deeper_each_time(conversation: Session) -> None:
    _, once, twice, thrice, again = talk(conversation, "garlic cheddar", "why?", "why?", "why?", "why?")
    assert len({once.text, twice.text, thrice.text}) == 3
    assert "CONSTRUCT" not in thrice.text  # nobody reads a query aloud
    assert "Sum" in thrice.text
    assert again.text == thrice.text


def test_the_rule_itself_is_shown_to_who_asks_for_it(conversation: Session) -> None:
    *_, shown = talk(conversation, "garlic cheddar", "why?", "why, show me the rule as it stands")
    assert "CONSTRUCT" in shown.text


def test_another_why_begins_anew(conversation: Session) -> None:
    *_, other = talk(conversation, "garlic cheddar", "why?", "why?", "why does port go with stilton")
    assert "Sum" not in other.text
    assert "For:" not in other.text


def test_why_not_explains_what_was_advised_against(conversation: Session) -> None:
    first, why_not = talk(conversation, "what goes with oysters", "why not?")
    assert first.avoid
    assert picks(why_not) == [first.avoid[0].id]
    assert why_not.verdict in ("poor", "clash")


def test_why_not_a_wine_judges_it_with_the_dish_that_stands(conversation: Session) -> None:
    _, why_not = talk(conversation, "what goes with oysters", "why not Barolo?")
    assert picks(why_not) == ["wine/barolo"]
    assert parts(why_not) == ["oyster"]


def test_why_after_foods_for_a_wine_explains_the_first_food(conversation: Session) -> None:
    first, why = talk(conversation, "what should I eat with Sauternes", "why?")
    assert picks(why) == ["wine/sauternes"]
    assert parts(why) == [first.picks[0].label]


@pytest.mark.parametrize("asked", ["why?", "why not?", "anything else?"])
def test_with_nothing_before_there_is_nothing_to_follow(conversation: Session, asked: str) -> None:
    (answer,) = talk(conversation, asked)
    assert not answer.understood
    assert answer.picks == ()


# --- another colour, another wine


def test_a_colour_keeps_the_dish_and_adds_the_limit(conversation: Session) -> None:
    first, red, white = talk(conversation, "grilled chicken with pesto", "what about a red?", "and a white?")
    assert colours(red) == {"red"}
    assert colours(white) == WHITE
    assert parts(red) == parts(white) == parts(first)


def test_limits_on_different_things_add_up(conversation: Session) -> None:
    _, _, both = talk(conversation, "roast chicken", "what about a white?", "not oaky")
    assert colours(both) == WHITE
    assert all(item.wine and item.wine["oak"] <= 1.2 for item in both.picks)


def test_a_wine_is_judged_with_the_dish_that_stands(conversation: Session) -> None:
    _, judged = talk(conversation, "what goes with salmon", "what about Pinot Noir?")
    assert judged.intent == "judge-pair"
    assert picks(judged) == ["wine/pinot-noir"]
    assert parts(judged) == ["salmon"]


def test_a_choice_of_wines_is_compared_with_the_dish_that_stands(conversation: Session) -> None:
    _, compared = talk(conversation, "what goes with crab", "riesling or chardonnay?")
    assert compared.intent == "compare"
    assert set(picks(compared)) == {"wine/dry-riesling", "wine/chardonnay"}


# --- another dish, another sauce


def test_another_dressing_takes_the_place_of_the_first(conversation: Session) -> None:
    first, second = talk(conversation, "grilled chicken with ranch dressing", "no, the vinaigrette")
    assert parts(first) == ["chicken", "ranch dressing"]
    assert parts(second) == ["chicken", "vinaigrette"]
    assert second.intent == "wines-for-food"
    assert second.dish is not None
    assert second.dish["parts"][0]["methods"] == ["grilled"]


def test_another_food_is_asked_the_same(conversation: Session) -> None:
    _, brie = talk(conversation, "what goes with salmon", "and the brie?")
    assert brie.intent == "wines-for-food"
    assert parts(brie) == ["Brie"]


def test_another_food_keeps_the_limits(conversation: Session) -> None:
    _, _, brie = talk(conversation, "what goes with salmon", "what about a red?", "and the brie?")
    assert colours(brie) == {"red"}


def test_another_food_is_judged_with_the_wine_that_stands(conversation: Session) -> None:
    _, brie = talk(conversation, "does Pinot Noir go with salmon", "and the brie?")
    assert brie.intent == "judge-pair"
    assert picks(brie) == ["wine/pinot-noir"]
    assert parts(brie) == ["Brie"]


def test_why_after_another_food_is_about_that_food(conversation: Session) -> None:
    _, brie, why = talk(conversation, "what goes with salmon", "and the brie?", "why?")
    assert parts(why) == ["Brie"]
    assert picks(why) == picks(brie)[:1]


# --- anything else


@pytest.mark.parametrize("asked", ["anything else?", "what else?", "another wine", "any others?"])
def test_anything_else_names_others_for_the_same_dish(conversation: Session, asked: str) -> None:
    first, more = talk(conversation, "what goes with steak", asked)
    assert more.picks
    assert not set(picks(first)) & set(picks(more))
    assert parts(more) == ["steak"]


def test_nothing_is_named_twice_however_often_it_is_asked(conversation: Session) -> None:
    answers = talk(conversation, "what goes with brie", *["anything else?"] * 4)
    named = [wine for answer in answers for wine in picks(answer)]
    assert len(named) == len(set(named)) == 15


def test_anything_else_to_eat(conversation: Session) -> None:
    first, more = talk(conversation, "what should I eat with Sauternes", "anything else?")
    assert more.intent == "foods-for-wine"
    assert {item.kind for item in more.picks} == {"food"}
    assert not set(picks(first)) & set(picks(more))


def test_anything_else_keeps_the_limits(conversation: Session) -> None:
    _, _, more = talk(conversation, "what goes with steak", "what about a white?", "anything else?")
    assert colours(more) == WHITE


# --- new questions


def test_a_whole_question_is_new(conversation: Session) -> None:
    _, second = talk(conversation, "a red for steak", "what wine goes with oysters")
    assert parts(second) == ["oyster"]
    assert colours(second) != {"red"}


def test_what_was_not_understood_leaves_what_stands(conversation: Session) -> None:
    _, lost, why = talk(conversation, "what goes with steak", "qwrtzp", "why?")
    assert not lost.understood
    assert parts(why) == ["steak"]


def test_small_talk_leaves_what_stands(conversation: Session) -> None:
    _, _, why = talk(conversation, "what goes with steak", "thanks", "why?")
    assert why.intent == "why"
    assert parts(why) == ["steak"]


def test_a_definition_between_leaves_what_stands(conversation: Session) -> None:
    _, _, red = talk(conversation, "what goes with steak", "what is tannin", "what about a white?")
    assert parts(red) == ["steak"]
    assert colours(red) == WHITE


def test_a_new_conversation_forgets(conversation: Session) -> None:
    conversation.ask("what goes with steak")
    conversation.new_conversation()
    assert not conversation.ask("why?").understood


def test_after_a_description_why_shows_the_numbers(conversation: Session) -> None:
    first, numbers = talk(conversation, "describe brie", "why?")
    assert "g/100 g" not in first.text
    assert "g/100 g" in numbers.text
    assert picks(numbers) == picks(first)
