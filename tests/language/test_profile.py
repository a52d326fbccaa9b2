"""A food that is only described is tasted as it was described, and the nearest known one is named."""

from __future__ import annotations

import pytest

from assistant.session import Session
from tests.language.conftest import Parse

DESCRIBED = [
    ("what goes with tarvelly, it's a mild creamy cow's cheese", "aroma", -1),
    ("a strong stinky cheese", "aroma", 1),
    ("wine for a salty blue cheese", "sodium", 1),
    ("vandry, it's like cheddar but smoky, which wine?", "smoke", 1),
    ("plossel is a lean sort of fish, what do I pour", "fat", -1),
    ("something for a tangy fresh cheese please", "titratableAcidity", 1),
    ("some bitter leafy vegetable, wine?", "bitterness", 1),
]
PLAIN = [
    "a creamy white with mild cheddar",
    "something sweet with a salted cashew",
    "a rich red for steak",
    "is it mild?",
    "mild red with gouda",
    "garlic cheddar",
]


@pytest.mark.parametrize(("typed", "name", "sign"), DESCRIBED)
def test_a_kind_is_tasted_as_described(parse: Parse, typed: str, name: str, sign: int) -> None:
    dish = parse(typed).dishes[0]
    assert dish.added[name] * sign > 0


@pytest.mark.parametrize("typed", PLAIN)
def test_what_is_named_or_said_of_the_wine_is_left_alone(parse: Parse, typed: str) -> None:
    assert all(not dish.added for dish in parse(typed).dishes)


def test_an_unknown_name_is_still_told(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("what goes with tarvelly, it's a mild creamy cow's cheese")
    assert answer.left_out == ("tarvelly",)
    assert "nearest I know" in answer.text


def test_the_words_change_what_is_poured(session: Session) -> None:
    def first(typed: str) -> list[str]:
        session.new_conversation()
        return [item.id for item in session.ask(typed).picks]

    assert first("wine for a mild cheese") != first("wine for a strong salty cheese")


def test_a_description_completes_the_question_before(session: Session) -> None:
    session.new_conversation()
    assert not session.ask("what goes with tarvelly?").understood
    answer = session.ask("it's a mild creamy cow's cheese")
    assert answer.intent == "wines-for-food"
    assert "tarvelly" in answer.left_out
    assert answer.picks
