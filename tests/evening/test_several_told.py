"""Several guests told of in one line keep each their need, and what is no name never names a guest."""

from __future__ import annotations

import pytest

from assistant.language.guests import Asked, all_told
from assistant.session import Session


@pytest.mark.parametrize(
    ("typed", "needs"),
    [
        (
            "priya cant have nuts, allergic. sarah's pregnant. tom and mo are driving",
            [
                ("Priya", "cant have nuts, allergic"),
                ("Sarah", "pregnant"),
                ("Tom", "driving"),
                ("Mo", "driving"),
            ],
        ),
        ("Tom, Mo and Raj are vegan", [("Tom", "vegan"), ("Mo", "vegan"), ("Raj", "vegan")]),
        ("Ned is coeliac. R. is vegan too", [("Ned", "coeliac"), ("R.", "vegan")]),
        ("mo decided to drive", [("Mo", "driving")]),
        ("Kelly she is expecting so no booze for her", [("Kelly", "expecting")]),
        ("Jeanette can't do dairy it makes her really ill", [("Jeanette", "can't have dairy")]),
        (
            "my neighbour Ewa and her husband are vegetarian",
            [("my neighbour Ewa", "vegetarian"), ("her husband", "vegetarian")],
        ),
        (
            "Lena told me she's coeliac and can't have gluten at all so please keep the bread away from her",
            [("Lena", "coeliac and can't have gluten at all")],
        ),
        (
            "My sister in law mentioned the other day that she is allergic to shellfish, badly allergic",
            [("My sister in law", "allergic to shellfish, badly allergic")],
        ),
        ("hang on, sarah is pregnant", [("Sarah", "pregnant")]),
        ("Priya's pregnant she just told me", [("Priya", "pregnant")]),
        ("Ron changed his mind he's driving so no more for him", [("Ron", "driving")]),
        ("Dana is a celiac so no gluten for her", [("Dana", "a celiac and no gluten")]),
        ("Ann is allergic to nuts and eggs and Tom and Mo are driving",
         [("Ann", "allergic to nuts and eggs"), ("Tom", "driving"), ("Mo", "driving")]),
        ("Kate and Jess drive, Priya is coeliac",
         [("Kate", "driving"), ("Jess", "driving"), ("Priya", "coeliac")]),
        ("Tom, Mo and Ann drive home", [("Tom", "driving"), ("Mo", "driving"), ("Ann", "driving")]),
    ],
)  # fmt: skip
def test_each_guest_keeps_the_need_told(typed: str, needs: list[tuple[str, str]]) -> None:
    assert all_told(typed).asked == tuple(Asked(*need) for need in needs)
    assert not all_told(typed).unread


def test_what_is_told_of_another_is_said_not_to_be_noted() -> None:
    told = all_told("Dana is a celiac so no gluten for her and Marcus he just sits there")
    assert told.unread == ("Marcus he just sits there",)


def test_who_is_named_twice_is_one_guest() -> None:
    told = all_told("Dana is a celiac so no gluten for her and Marcus he just hates oak")
    assert told.asked[-1] == Asked("Marcus", "hates oak")


@pytest.mark.parametrize(
    "typed",
    [
        "hang on it's not Priya who's pregnant it's Kelly",
        "seven of us and me I'm not drinking, seven guests",
    ],
)
def test_no_guest_is_called_by_what_is_no_name(conversation: Session, typed: str) -> None:
    conversation.ask(typed)
    assert {one.guest for one in conversation.tonight.needs} <= {"Kelly"}


@pytest.mark.parametrize(
    "typed", ["we have eight guests, I am not drinking", "I'm the one who's pouring and I don't drink"]
)
def test_the_host_who_drinks_nothing_is_no_guest(conversation: Session, typed: str) -> None:
    answer = conversation.ask(typed)
    assert not conversation.tonight.needs
    assert not conversation.tonight.non_drinkers
    assert not answer.cautions
