"""`who is vegan` lists the guests told of tonight, `what do they get` the drinks of who takes no wine."""

from __future__ import annotations

import pytest

from assistant.session import Session

TOLD = ("Jo is vegan", "Tom is vegetarian", "Bo is pregnant", "Cy drives", "Di is allergic to nuts")
TABLE = "on the table: brie, salami and smoked salmon"


@pytest.fixture
def table(conversation: Session) -> Session:
    """Five guests with needs."""
    conversation.new_conversation()
    for said in TOLD:
        conversation.ask(said)
    return conversation


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("which guests are vegan", "Vegan: Jo."),
        ("who is vegan", "Vegan: Jo."),
        ("who's vegetarian", "Vegetarian: Jo (vegan) and Tom."),
        ("who drives", "Drives: Cy."),
        ("who is driving", "Driving: Cy."),
        ("who doesn't drink", "Doesn't drink: Bo (pregnant) and Cy (driving)."),
        ("who is allergic to nuts", "Allergic to nuts: Di."),
        ("is anyone coeliac", "Coeliac: nobody I was told of tonight."),
    ],
)
def test_who_has_a_need_is_listed(table: Session, asked: str, said: str) -> None:
    answer = table.ask(asked)
    assert answer.say == said
    assert not answer.picks


@pytest.mark.parametrize("asked", ["who is next", "who asked about the nuts", "who can have the nuts"])
def test_other_questions_of_who_list_no_needs(table: Session, asked: str) -> None:
    assert "nobody I was told of" not in table.ask(asked).text


@pytest.mark.parametrize(
    "asked",
    [
        "two people don't drink, what do they get",
        "what do the non-drinkers get",
        "what do I pour for the two who don't drink",
        "three of them drive, what can they drink",
        "what do I give the drivers",
        "what do the non-drinkers drink with brie",
    ],
)
def test_who_takes_no_wine_is_offered_drinks_without_alcohol(conversation: Session, asked: str) -> None:
    conversation.new_conversation()
    conversation.ask(TABLE)
    answer = conversation.ask(asked)
    assert {pick.kind for pick in answer.picks} == {"drink"}
    assert answer.left_out == ()
    assert answer.cautions
    assert {pick.kind for pick in conversation.ask("what goes with the brie").picks} == {"wine"}


def test_they_are_who_was_just_said_not_to_drink(conversation: Session) -> None:
    conversation.new_conversation()
    for said in (TABLE, "12 people, two don't drink"):
        conversation.ask(said)
    assert {pick.kind for pick in conversation.ask("what do they get").picks} == {"drink"}


@pytest.mark.parametrize("need", ["vegan", "allergic to egg"])
def test_wine_as_such_is_nothing_a_label_has_not_to_settle(conversation: Session, need: str) -> None:
    """Wine may be cleared with egg or milk, so that of no wine in general it can be said that it is free."""
    conversation.new_conversation()
    conversation.ask(f"Ann is {need}")
    assert conversation.ask("what can she drink").say == "Ask or read the label first for Ann: wine."


def test_whether_something_fits_a_diet_is_asked_beside_a_dish_that_stands(conversation: Session) -> None:
    conversation.new_conversation()
    conversation.ask("what goes with dosa")
    answer = conversation.ask("is raita vegan")
    assert answer.say == "Not for a vegan guest: raita."
    assert not answer.picks


@pytest.mark.parametrize("asked", ["what do I give Cy", "what do I pour for Bo", "give Cy something"])
def test_who_drives_or_is_pregnant_is_given_no_wine(table: Session, asked: str) -> None:
    answer = table.ask(asked)
    assert {pick.kind for pick in answer.picks} == {"drink"}
    assert answer.cautions


@pytest.mark.parametrize("asked", ["can I pour the driver half a glass", "may the drivers have a sip"])
def test_whether_a_driver_may_have_a_sip_is_answered_by_the_caution(
    conversation: Session, asked: str
) -> None:
    conversation.new_conversation()
    conversation.ask(TABLE)
    answer = conversation.ask(asked)
    assert answer.cautions[0]["id"] == "caution/driving"
    assert answer.say in answer.cautions[0]["text"]
    assert not answer.picks


@pytest.mark.parametrize(
    "typed",
    [
        "who are my guests",
        "who has what",
        "who's coming and what do they need",
        "what does everyone need",
        "list my guests",
    ],
)
def test_all_guests_are_listed_with_what_they_need(conversation: Session, typed: str) -> None:
    conversation.ask("Sarah is pregnant. Tom is driving")
    assert conversation.ask(typed).say == "Sarah: pregnant. Tom: driving."


def test_nobody_is_listed_where_nobody_was_told_of(conversation: Session) -> None:
    assert conversation.ask("who has what").say == "Nobody with a need was told of tonight."


def test_who_told_of_a_need_is_named_afterwards(conversation: Session) -> None:
    conversation.ask("on the table: brie, cava")
    conversation.ask("I'm allergic to shellfish")
    for line in ("that's great", "thats jenny"):
        conversation.ask(line)
    assert [(one.guest, one.need) for one in conversation.tonight.needs] == [
        ("Jenny", "allergic to shellfish")
    ]


@pytest.mark.parametrize(
    "asked", ["so who's drinking", "how many of us drink", "how many are drinking", "who is drinking tonight"]
)
def test_who_drinks_is_counted_and_who_does_not_is_named(conversation: Session, asked: str) -> None:
    conversation.ask("we are nine: Megan is pregnant, Kate and Jo are driving")
    conversation.ask(TABLE)
    answer = conversation.ask(asked)
    assert answer.say == "6 of 9 drink wine. Without wine: Megan, Kate and Jo."
    assert not answer.picks


def test_who_drinks_is_told_of_guests_only_counted(conversation: Session) -> None:
    conversation.ask("we are nine, two are driving")
    assert conversation.ask("who's drinking").say == "7 of 9 drink wine."
