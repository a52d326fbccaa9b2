"""Two dishes asked about in one line, the other of two alike, one bottle for so many, what is to blame."""

from __future__ import annotations

import pytest

from assistant.session import Session

LAID = (
    "8 guests, we have Soave, Côtes du Rhône, off-dry Riesling and Chianti "
    "with Brie, cheddar, Stilton, lasagne and mushroom lasagne"
)
OTHER = "food/button-mushroom"


@pytest.mark.parametrize(
    "asked",
    [
        "which wine for the lasagne and which for the mushroom one?",
        "what wine for the lasagne and what for the mushroom one",
        "which wine for the lasagne and which one for the mushroom one",
        "what goes with the lasagne and what with the mushroom one?",
    ],
)
def test_each_of_two_dishes_has_its_wine(conversation: Session, asked: str) -> None:
    conversation.ask(LAID)
    answer = conversation.ask(asked)
    assert answer.text.startswith("Chianti: it is sharp enough for tomato.")
    assert "Chianti: it shares the earthiness of the dish." in answer.text


@pytest.mark.parametrize("asked", ["and the other one?", "what about the other lasagne", "and the other?"])
def test_the_other_one_is_the_dish_called_alike(conversation: Session, asked: str) -> None:
    for line in (LAID, "which wine for the lasagne", asked):
        answer = conversation.ask(line)
    assert "the earthiness of the dish" in answer.say
    assert conversation.talk is not None
    assert [dish.main.food for dish in conversation.talk.frame.dishes] == [OTHER]


def test_where_no_dish_is_called_alike_another_wine_is_meant(conversation: Session) -> None:
    for line in (LAID, "which wine for the brie", "and the other one?"):
        conversation.ask(line)
    assert conversation.talk is not None
    assert [dish.main.food for dish in conversation.talk.frame.dishes] == ["food/brie"]


@pytest.mark.parametrize(
    ("asked", "say"),
    [
        ("is one bottle of chianti enough if everyone has a proper glass", "No: only 89 ml each for 8."),
        ("will one bottle of Soave do for a glass each", "No: only 89 ml each for 8."),
        ("is one bottle of the Soave enough", "Yes: 89 ml each for 8, 1.5 pours."),
        ("are two bottles enough for a glass each", "Yes: 178 ml each for 8, 1.2 pours."),
        ("how many glasses do I need", "16 glasses: at least 2 for each of 8, rinsed between wines."),
    ],
)
def test_so_many_bottles_are_enough_or_not(conversation: Session, asked: str, say: str) -> None:
    conversation.ask(LAID)
    answer = conversation.ask(asked)
    assert answer.say == say
    assert ("For 150 ml each take 2 bottles." in answer.text) == say.startswith("No")


@pytest.mark.parametrize("asked", ["is that the cheddar's fault", "is it the cheddar's fault then"])
def test_blame_is_denied_where_both_go_well(conversation: Session, asked: str) -> None:
    for line in (LAID, "Chianti with the cheddar?", asked):
        answer = conversation.ask(line)
    assert answer.say.startswith("No, it goes well")
