"""A guest who turns up late and has a need is taken down, counted, and given what of the table is theirs."""

from __future__ import annotations

from datetime import time

import pytest

from assistant.language.guests import Asked
from assistant.session import Session

LAID = ("nine of us", "the board is pasta alla norma, caprese and lamb", "got gavi and barbera d'asti")


@pytest.mark.parametrize(
    ("typed", "guests"),
    [
        ("sara just turned up late, shes vegetarian", 10),
        ("Sara showed up and is vegetarian", 10),
        ("sara has joined us, she's vegetarian", 10),
        ("Sara arrived late, she is vegetarian", 9),
    ],
)
def test_the_need_is_kept_and_who_turned_up_is_one_more(
    conversation: Session, typed: str, guests: int
) -> None:
    for line in (*LAID, typed):
        answer = conversation.ask(line)
    assert conversation.tonight.needs == (Asked("Sara", "vegetarian"),)
    assert conversation.tonight.guests == guests
    assert answer.text.count("Noted: 10 guests.") == (guests == 10)


def test_what_she_has_instead_is_of_the_table_with_a_wine(conversation: Session) -> None:
    for line in (*LAID, "sara just turned up late, shes vegetarian", "what can she have instead of the lamb"):
        answer = conversation.ask(line)
    assert "for Sara: pasta alla Norma and caprese" in answer.text
    assert "Barbera d'Asti" in answer.text
    assert "bin it" not in answer.text


def test_what_she_drinks_with_a_dish_is_a_wine(conversation: Session) -> None:
    for line in (*LAID, "sara is vegetarian", "what does she drink with the pasta"):
        answer = conversation.ask(line)
    assert answer.intent == "wines-for-food"
    assert answer.picks
    assert conversation.ask("what can sara drink with the lamb").say == "Not for Sara: lamb."


@pytest.mark.parametrize(
    "asked",
    [
        "Lucy's just walked in, hungry! what can she have and which wine with it",
        "what does lucy get when she comes, i'm putting something aside for her",
        "what can lucy have and which wine with it",
    ],
)
def test_a_plate_of_the_table_and_a_glass(conversation: Session, asked: str) -> None:
    for line in (*LAID, "Lucy is vegetarian", asked):
        answer = conversation.ask(line)
    assert answer.text.startswith("Ask or read the label first for Lucy: pasta alla Norma and caprese.")
    assert answer.picks
    assert "Only the label" in answer.text


def test_with_an_allergy_what_is_not_for_that_guest_comes_first(conversation: Session) -> None:
    for line in ("foods: olives, gambas al ajillo", "wines: fino, rioja", "Carmen is allergic to shellfish"):
        conversation.ask(line)
    answer = conversation.ask("what can carmen have and which wine with it")
    assert answer.text.startswith("Not for Carmen: gambas al ajillo.\nCarmen may have: mixed olives.")
    assert answer.picks
    assert answer.cautions


def test_a_driver_is_given_no_wine(conversation: Session) -> None:
    for line in (*LAID, "Lucy is driving", "what can lucy have and which wine with it"):
        answer = conversation.ask(line)
    assert not {"wine/gavi", "wine/barbera-d-asti"} & {pick.id for pick in answer.picks}
    assert answer.cautions


POURED = (
    "8 guests, Thursday 19:30, "
    "we have Soave, Côtes du Rhône, off-dry Riesling and Chianti with Brie and lasagne"
)


@pytest.mark.parametrize(
    "told",
    [
        "Tom's going to be half an hour late",
        "Tom is running 30 minutes late",
        "Tom texted he'll be there at eight",
        "Tom will be half an hour late",
        "Tom says he'll be here around eight",
    ],
)
def test_one_late_guest_is_not_the_evening_late(conversation: Session, told: str) -> None:
    conversation.ask(POURED)
    assert "Leave out" not in conversation.ask(told).text
    assert dict(conversation.tonight.late) == {"Tom": time(20, 0)}
    for asked in ("what does he miss", "what has Tom missed", "which wine should he start with?"):
        assert "Tom is there at 20:00 and misses Soave and off-dry Riesling" in conversation.ask(asked).say


@pytest.mark.parametrize("told", ["we're half an hour late", "dinner is late", "we are running late"])
def test_an_evening_that_is_late_is_no_guest(conversation: Session, told: str) -> None:
    conversation.ask(POURED)
    conversation.ask(told)
    assert conversation.tonight.late == ()


@pytest.mark.parametrize(
    "asked", ["Tom's just arrived, what's he missed", "Tom just got here, what did he miss"]
)
def test_who_has_arrived_is_told_what_was_poured(conversation: Session, asked: str) -> None:
    conversation.ask(POURED)
    say = conversation.ask(asked).say
    assert say.startswith("Tom has missed what is poured by now of Soave, off-dry Riesling, Côtes du Rhône")


@pytest.mark.parametrize(
    ("told", "guests"),
    [
        ("two of them can't come after all", 6),
        ("one of them isn't coming", 7),
        ("two have cried off", 6),
        ("three of us can't be there", 5),
        ("make that nine", 9),
        ("actually make it nine, Josh is staying", 9),
    ],
)
def test_guests_are_counted_anew(conversation: Session, told: str, guests: int) -> None:
    conversation.ask(POURED)
    assert f"Noted: {guests} guests." in conversation.ask(told).text
    assert conversation.ask("how many are we now").say == f"You are {guests}."


def test_guests_are_counted_by_who_stays_where_none_were_counted(conversation: Session) -> None:
    assert "9 guests" in conversation.ask("actually make it nine, Josh is staying").text
    assert conversation.tonight.guests == 9


@pytest.mark.parametrize(
    "told", ["we're down to half the Soave, whats left for Tom", "down to half the Soave now"]
)
def test_a_level_told_in_between_is_no_leftover(conversation: Session, told: str) -> None:
    for line in (POURED, "Tom is late"):
        conversation.ask(line)
    answer = conversation.ask(told)
    assert answer.text.startswith("Soave: some 380 ml left, 6 pours of 60 ml.\nPut one aside for Tom now.")
    assert "notebook" not in answer.text
