"""How many guests there are, after those who leave, bring others, drink no wine, or are only supposed."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.evening.table import set_table
from assistant.session import Session
from assistant.table.tonight import Tonight

DEMO = Path(__file__).parents[1] / "corpus" / "evenings" / "quay-house.toml"


@pytest.fixture
def demo(session: Session) -> Iterator[Session]:
    """The demo evening: 12 guests, 2 of whom drink no wine."""
    set_table(session, DEMO)
    session.new_conversation()
    yield session
    session.lay(Tonight())
    session.new_conversation()


def heads(session: Session) -> tuple[float | None, float]:
    return session.tonight.guests, session.tonight.non_drinkers


@pytest.mark.parametrize(
    ("said", "guests", "drinkless"),
    [
        ("three guests left early", 9, 2),
        ("four of them drive", 12, 4),
        ("one of those drives", 12, 1),
        ("three drive", 12, 3),
        ("it is a 5 km drive", 12, 2),
        ("two haven't turned up", 10, 2),
        ("we're running late, and three people haven't arrived", 9, 2),
        ("one person cancelled", 11, 2),
        ("two guests can't make it", 10, 2),
        ("R. is bringing two friends", 14, 2),
        ("two more people are coming", 14, 2),
        ("we have four guests who don't drink", 12, 4),
        ("four of us are driving", 12, 4),
        ("two people don't drink, what do they get", 12, 2),
        ("3 of the guests are vegetarian", 12, 2),
        ("five of the guests love red wine", 12, 2),
        ("actually there are 14 people", 14, 2),
        ("only 9 of us", 9, 2),
        ("we're only ten", 10, 2),
        ("3 kids are coming too", 15, 5),
        ("the last two guests arrive at 9", 12, 2),
        ("8 people want red, 4 want white", 12, 2),
        ("one guest left a glass", 12, 2),
        ("two people left half their wine", 12, 2),
        ("one of the guests left his coat", 12, 2),
        ("one guest left the party", 11, 2),
        ("two guests have to leave at nine", 10, 2),
        ("one guest just sat down", 12, 2),
        ("one person broke a glass", 12, 2),
        ("three guests finished the brie", 12, 2),
        ("two guests went out for a smoke", 12, 2),
        ("we are two in", 12, 2),
    ],
)
def test_a_number_of_people_is_of_all_of_some_or_of_a_part(
    demo: Session, said: str, guests: float, drinkless: float
) -> None:
    demo.ask(said)
    assert heads(demo) == (guests, drinkless)


@pytest.mark.parametrize(
    "said",
    [
        "I'm hosting ten on Saturday at 7, two vegetarians",
        "we are expecting ten",
        "party for ten in Bristol",
        "we are a book club of ten in Leeds",
        "hen party for ten in Leeds, Kate and Jess drive",
    ],
)
def test_who_hosts_so_many_has_so_many_guests(conversation: Session, said: str) -> None:
    conversation.new_conversation()
    conversation.ask(said)
    assert conversation.tonight.guests == 10


@pytest.mark.parametrize("said", ["three guests left early", "R. is bringing two friends"])
def test_some_more_or_fewer_of_a_number_not_known_are_no_total(conversation: Session, said: str) -> None:
    conversation.ask(said)
    assert conversation.tonight.guests is None


@pytest.mark.parametrize("said", ["three guests left early", "we are 10 now", "four of us are driving"])
def test_the_new_number_is_told(demo: Session, said: str) -> None:
    assert demo.ask(said).text.startswith("Noted: ")


@pytest.mark.parametrize(
    ("said", "pours"),
    [("what if only 8 show up", 6), ("what if we were 20", 18), ("what if two cancel", 8)],
)
def test_what_is_supposed_is_answered_and_does_not_stay(demo: Session, said: str, pours: int) -> None:
    answer = demo.ask(said)
    assert answer.figures["pours"]["value"] == pours * len(demo.tonight.wines)
    assert heads(demo) == (12, 2)
    assert demo.ask("how many bottles").figures["pours"]["value"] == 10 * len(demo.tonight.wines)


@pytest.mark.parametrize("said", ["is one Malbec enough for seven", "will two bottles do for seven?"])
def test_asked_of_so_many_nobody_is_counted_anew(demo: Session, said: str) -> None:
    answer = demo.ask(said)
    assert "for 7" in answer.text
    assert "Noted" not in answer.text
    assert heads(demo) == (12, 2)


@pytest.mark.parametrize(
    ("said", "guests", "drinkless"),
    [
        ("we're nine, seven drinking", 9, 2),
        ("12 people, 10 drinkers", 12, 2),
        ("only eight of us drink wine", 12, 4),
        ("nine are drinking", 12, 3),
        ("that's ten now, do we have enough malbec", 10, 2),
        ("so thats 14 now, what do I need", 14, 2),
        ("14 on a call plus 4 in the room", 18, 2),
        ("14 guests on screen and 4 here", 18, 2),
        ("eight people are drinking red", 12, 2),
    ],
)
def test_who_drinks_and_who_is_where_is_counted(
    demo: Session, said: str, guests: float, drinkless: float
) -> None:
    demo.ask(said)
    assert heads(demo) == (guests, drinkless)


@pytest.mark.parametrize("came", ["two friends of Dave's turned up, we're fourteen", "two more turned up"])
@pytest.mark.parametrize("went", ["they left again", "no they left again", "no, they've gone home again"])
def test_who_came_last_may_leave_again(demo: Session, came: str, went: str) -> None:
    demo.ask(came)
    assert demo.tonight.guests == 14
    demo.ask("how many bottles do we need")
    assert "12 guests" in demo.ask(went).text
    assert demo.tonight.guests == 12
    demo.ask(went)
    assert demo.tonight.guests == 12


@pytest.mark.parametrize(
    "asked",
    ["how many are we", "how many of us are there", "how many guests have we got", "what's our headcount"],
)
def test_how_many_there_are_is_told_in_a_line(demo: Session, asked: str) -> None:
    assert demo.ask(asked).text == "You are 12."


@pytest.mark.parametrize(
    ("said", "guests"),
    [
        ("nick's just dropped out, so 11", 11),
        ("bev can't make it, so that's 11", 11),
        ("jo is coming too so 13", 13),
    ],
)
def test_a_number_behind_who_left_or_came_is_that_of_all(demo: Session, said: str, guests: int) -> None:
    demo.ask(said)
    assert demo.tonight.guests == guests


def test_a_number_of_bottles_counts_nobody(demo: Session) -> None:
    demo.ask("the manchego is gone, so 3 cheeses")
    assert demo.tonight.guests == 12


@pytest.mark.parametrize("said", ["three of them drive", "three drive", "three of them dont drink"])
def test_who_drinks_no_wine_is_noted_and_nothing_else_is_answered(demo: Session, said: str) -> None:
    assert demo.ask(said).say == "Noted: 12 guests, 3 of them without wine."


def test_who_drives_is_counted_in_the_line_that_counts_all(session: Session) -> None:
    session.new_conversation()
    session.ask("we are 12, two of them drive")
    assert heads(session) == (12, 2)


def test_guests_are_counted_behind_what_is_told_of_one(conversation: Session) -> None:
    conversation.ask("we are nine: Kate and Jo are driving")
    conversation.ask("Priya's partner Dan is coming too, he drinks red, so ten now")
    assert (conversation.tonight.guests, conversation.tonight.non_drinkers) == (10, 2)


def test_the_other_driver_is_poured_no_wine(conversation: Session) -> None:
    for line in ("we are nine: Kate and Jo are driving", "on the table: brie, rioja and cava"):
        conversation.ask(line)
    answer = conversation.ask("what about the other driver")
    assert answer.say.startswith("For Kate and Jo, without alcohol:")
