"""Drivers and others who drink no wine are counted as that; a number is no guest's name."""

from __future__ import annotations

import pytest

from assistant.language.guest_named import has_name
from assistant.session import Session


@pytest.mark.parametrize(
    ("lines", "guests", "without"),
    [
        (["18 guests", "two drivers"], 18, 2),
        (["one vegan, one nut allergy, two drivers", "18 guests"], 18, 2),
        (["18 guests", "two of them are driving, one is vegan and tom has a nut allergy"], 18, 2),
        (["18 guests, one of them driving", "no, two drivers means 16 are drinking wine not 17"], 18, 2),
        (["14 guests on a call, 4 in the room, 3 drivers"], 18, 3),
        (["9 people, 2 don't drink", "carol doesn't drink", "lucia is pregnant"], 9, 2),
        (["9 people, 2 don't drink", "carol and lucia", "lucia is pregnant", "bo and mo drive"], 9, 3),
        (["nine of us", "lucia is pregnant", "two drivers"], 9, 3),
        (["nine of us, two drivers", "Omar is driving"], 9, 2),
    ],
)  # fmt: skip
def test_who_drinks_no_wine_is_counted_once(
    conversation: Session, lines: list[str], guests: int, without: int
) -> None:
    for line in lines:
        conversation.ask(line)
    assert (conversation.tonight.guests, conversation.tonight.non_drinkers) == (guests, without)


def test_drivers_told_of_are_known(conversation: Session) -> None:
    assert conversation.ask("one vegan, one nut allergy, two drivers").say.endswith("2 guests: driving.")
    assert conversation.ask("who is driving").say == "Driving: 2 guests."


def test_whether_drivers_may_drink_is_asked_and_not_told(conversation: Session) -> None:
    assert conversation.ask("can two drivers share a bottle").intent == "safety"
    assert not conversation.tonight.needs


@pytest.mark.parametrize("typed", ["9 people, 2 don't drink", "2 don't drink"])
def test_a_number_is_no_name(conversation: Session, typed: str) -> None:
    conversation.ask(typed)
    assert not any(has_name(need.guest) for need in conversation.tonight.needs)
    assert "Noted for 2:" not in conversation.ask("who needs what").text


def test_guests_in_two_places_are_all_counted(conversation: Session) -> None:
    conversation.ask("14 on the call and 4 in the room")
    assert conversation.tonight.guests == 18
    conversation.ask("18 guests, 4 in the room")
    assert conversation.tonight.guests == 18


@pytest.mark.parametrize(
    ("lines", "guest", "need"),
    [
        (["one is vegan (priya) and tom has a nut allergy"], "Priya", "vegan"),
        (["18 guests, one vegan, two drivers", "the vegan is priya"], "Priya", "vegan"),
        (["one guest is vegan", 'vegan is priya not "a guest"'], "Priya", "vegan"),
        (["18 guests, one nut allergy", "the nut allergy is tom"], "Tom", "allergic to nuts"),
        (["18 guests, two drivers", "the drivers are ann and bob"], "Bob", "driving"),
    ],
)
def test_who_was_counted_is_named_later(
    conversation: Session, lines: list[str], guest: str, need: str
) -> None:
    for line in lines:
        conversation.ask(line)
    of_need = [one for one in conversation.tonight.needs if need in one.need]
    assert (guest, need) in {(one.guest, one.need) for one in of_need}
    assert all(has_name(one.guest) for one in of_need)


@pytest.mark.parametrize("typed", ["the driver is late", "the vegan is here", "the coeliac is asking"])
def test_how_somebody_is_gives_no_name(conversation: Session, typed: str) -> None:
    conversation.ask(typed)
    assert not conversation.tonight.needs


def test_children_among_the_guests_are_noted_without_a_stop(conversation: Session) -> None:
    for line in ("14 guests", "two are kids one is driving"):
        conversation.ask(line)
    assert [one.need for one in conversation.tonight.needs] == ["kids", "driving"]
    assert conversation.tonight.non_drinkers == 3


def test_who_was_counted_is_named_by_the_need(conversation: Session) -> None:
    conversation.ask("one is coeliac, one is seven months pregnant, one is veggie and two are driving")
    conversation.ask("the coeliac is Priya, Megan is the pregnant one, Flo is vegetarian")
    told = {(one.guest, one.need) for one in conversation.tonight.needs}
    assert told == {
        ("two", "driving"), ("Priya", "coeliac"), ("Megan", "pregnant"), ("Flo", "vegetarian"),
    }  # fmt: skip


def test_of_three_drivers_two_are_named_and_one_is_left(conversation: Session) -> None:
    for line in ("one is veggie and three are driving", "Kate is driving", "Jo is driving"):
        conversation.ask(line)
    drivers = [one.guest for one in conversation.tonight.needs if one.need == "driving"]
    assert drivers == ["one other guest", "Kate", "Jo"]


@pytest.mark.parametrize(
    ("typed", "left"),
    [
        ("forget the guest who is seven months pregnant", "coeliac"),
        ("take the coeliac one off the list", "seven months pregnant"),
        ("forget that guest", "coeliac"),
    ],
)
def test_a_guest_without_a_name_is_forgotten(conversation: Session, typed: str, left: str) -> None:
    conversation.ask("one is coeliac, one is seven months pregnant")
    assert conversation.ask(typed).say.startswith("Taken off: a guest")
    assert [one.need for one in conversation.tonight.needs] == [left]


def test_guests_without_a_name_are_listed_apart(conversation: Session) -> None:
    conversation.ask("one is coeliac, one is seven months pregnant")
    assert "A guest: coeliac.\nA guest: seven months pregnant." in conversation.ask("who has what").text
