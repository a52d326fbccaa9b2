"""A reaction now: when to call for help comes first; feeling better clears nothing and hides no question."""

from __future__ import annotations

import pytest

from assistant.session import Session

TABLE = "on the table: fruit tart with almond, brie, cava, beaujolais"
REACTS = "priya ate a bit of the tart with almonds in and her lips are tingling"
HELP, EASED = "Trouble breathing", "Feeling better clears nothing"


@pytest.fixture
def reacted(conversation: Session) -> Session:
    for line in (TABLE, "priya is allergic to nuts", REACTS):
        conversation.ask(line)
    return conversation


@pytest.mark.parametrize(
    "typed",
    [
        REACTS,
        "priya ate some almonds by mistake",
        "priya had a bite of the fruit tart and her throat is itchy, what goes with the brie",
    ],
)
def test_when_to_call_for_help_comes_before_anything(conversation: Session, typed: str) -> None:
    for line in (TABLE, "priya is allergic to nuts"):
        conversation.ask(line)
    answer = conversation.ask(typed)
    assert answer.text.startswith(HELP)
    assert answer.say.startswith(HELP)


@pytest.mark.parametrize(
    "typed",
    [
        "she's fine now",
        "priya is ok again",
        "she feels a lot better",
        "the swelling's gone down",
        "she took an antihistamine",
        "can she have the tart now shes better",
    ],
)
def test_feeling_better_clears_nothing(reacted: Session, typed: str) -> None:
    answer = reacted.ask(typed)
    assert answer.say.startswith(EASED)
    assert [caution["id"] for caution in answer.cautions][:2] == [
        "caution/allergy-eased",
        "caution/allergy-emergency",
    ]
    assert "Priya may have: fruit tart" not in answer.text


@pytest.mark.parametrize(
    "typed", ["shes fine now, what do we pour w the brie", "she's ok now. which wine for the brie?"]
)
def test_what_is_asked_behind_it_is_answered_for_the_others(reacted: Session, typed: str) -> None:
    answer = reacted.ask(typed)
    assert answer.say.startswith(EASED)
    assert "Cava" in answer.text


@pytest.mark.parametrize("typed", ["is the brie fine with cava", "that's better", "they like the cava"])
def test_a_wine_that_is_fine_is_no_guest(reacted: Session, typed: str) -> None:
    assert EASED not in reacted.ask(typed).text


def test_nobody_eases_who_did_not_react(conversation: Session) -> None:
    assert EASED not in conversation.ask("she's fine now").text


@pytest.mark.parametrize(
    "typed",
    [
        "he says the older the better",
        "con reckons it's better with age",
        "she says the riesling is better than the cava",
        "he thinks the colder the better",
    ],
)
def test_a_wine_that_is_better_is_nobody_who_recovered(reacted: Session, typed: str) -> None:
    assert EASED not in reacted.ask(typed).text
