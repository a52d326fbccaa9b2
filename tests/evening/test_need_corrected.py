"""Who has a need is corrected, a guest is forgotten, somebody drives no more; no wine is touched."""

from __future__ import annotations

import pytest

from assistant.session import Session

TABLE = "on the table: brie, salmon, cava, rioja"
TOLD = ("eight guests", "Priya is pregnant", "tom and mo are driving", "Ann is allergic to nuts")


@pytest.fixture
def told(conversation: Session) -> Session:
    for line in (TABLE, *TOLD):
        conversation.ask(line)
    return conversation


def needs(session: Session) -> dict[str, str]:
    return {one.guest: one.need for one in session.tonight.needs}


@pytest.mark.parametrize(
    "typed",
    [
        "hang on it's not Priya who's pregnant it's Kelly",
        "it isn't priya who is pregnant but kelly",
        "no thats wrong, its kelly whos pregnant not priya",
        "not Priya, Kelly is pregnant",
        "Priya isn't pregnant, Kelly is",
    ],
)
def test_another_guest_has_the_need(told: Session, typed: str) -> None:
    answer = told.ask(typed)
    assert answer.say.startswith("Taken off for Priya: pregnant. Noted for Kelly: pregnant.")
    assert needs(told)["Kelly"] == "pregnant"
    assert "Priya" not in needs(told)


def test_who_was_meant_has_it(told: Session) -> None:
    told.ask("I meant Ben, not Ann")
    assert needs(told)["Ben"] == "allergic to nuts"
    assert "Ann" not in needs(told)


@pytest.mark.parametrize(
    "typed", ["Priya isn't pregnant at all", "priya is not pregnant", "actually priya's not pregnant"]
)
def test_who_is_not_pregnant_is_taken_off(told: Session, typed: str) -> None:
    assert told.ask(typed).say == "Taken off for Priya: pregnant."
    assert told.tonight.non_drinkers == 2


@pytest.mark.parametrize(
    "typed", ["forget Ann", "Ann is not a guest", "no, forget about ann, shes not a guest"]
)
def test_a_guest_is_forgotten_with_all_needs(told: Session, typed: str) -> None:
    assert told.ask(typed).say.startswith("Taken off: Ann, with allergic to nuts.")
    assert "Ann" not in needs(told)
    assert len(needs(told)) == 3


def test_an_allergy_is_not_denied_by_the_way(told: Session) -> None:
    assert told.ask("Ann isn't allergic to nuts").say.startswith("Ann stays noted: allergic to nuts.")
    assert needs(told)["Ann"] == "allergic to nuts"


@pytest.mark.parametrize(
    "typed",
    [
        "tom says hes not driving anymore, getting a cab",
        "tom isn't driving",
        "tom's off the driving list, taxi",
        "tom is taking a taxi home",
    ],
)
def test_who_drives_no_more_touches_no_wine(told: Session, typed: str) -> None:
    wines, dishes = told.tonight.wines, told.tonight.dishes
    assert told.ask(typed).say == "Noted: Tom is no longer driving."
    assert (told.tonight.wines, told.tonight.dishes) == (wines, dishes)
    assert "Tom" not in needs(told)
    assert told.tonight.non_drinkers == 2


def test_who_starts_to_drive_is_noted(told: Session) -> None:
    told.ask("Ron changed his mind he's driving so no more for him")
    assert needs(told)["Ron"] == "driving"


def test_another_guest_is_noted_where_the_one_was_not(conversation: Session) -> None:
    assert conversation.ask("its ann whos vegan not tom").say == "Noted for Ann: vegan."


def test_what_the_drivers_get_names_them_and_drinks(told: Session) -> None:
    answer = told.ask("what do the drivers get")
    assert answer.say.startswith("For Tom and Mo, without alcohol:")
    assert answer.picks


def test_one_who_drives_is_nobody_else_of_the_line(conversation: Session) -> None:
    conversation.ask("two of them are teenagers, one's driving, and dana is in recovery so no booze for her")
    assert ("", "driving") in [(one.guest, one.need) for one in conversation.tonight.needs]
    assert needs(conversation)["Dana"] == "in recovery"


@pytest.mark.parametrize("driver", ["Jo is vegan, one is driving", "Jo is vegan, dana is driving"])
def test_who_drives_instead_is_noted_in_the_same_breath(conversation: Session, driver: str) -> None:
    for line in (driver, "no dana isn't the driver, the driver is my buddy mike"):
        conversation.ask(line)
    assert needs(conversation) == {"Jo": "vegan", "my buddy mike": "driving"}


def test_a_guest_of_the_family_is_forgotten(conversation: Session) -> None:
    for line in ("remember my uncle ray is diabetic", "forget uncle ray"):
        conversation.ask(line)
    assert not needs(conversation)


def test_that_a_need_is_to_be_remembered_is_no_rule_taught(conversation: Session) -> None:
    answer = conversation.ask("uncle bob has diabetes, remember that")
    assert answer.cautions[0]["id"] == "caution/diabetes"
    assert needs(conversation) == {"uncle bob": "has diabetes"}
