"""Behind time: what each wine can give first, then the wines that are missed least; by hand and by talk."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest

from assistant.evening.late import caught
from assistant.evening.read import read_evening
from assistant.evening.table import set_table
from assistant.session import Session

DEMO = Path(__file__).parents[2] / "corpus" / "evenings" / "quay-house.toml"


@pytest.fixture(scope="module")
def session() -> Session:
    session = Session()
    set_table(session, DEMO)
    return session


@pytest.mark.parametrize(
    ("minutes", "shorter", "left_out"),
    [  # clock.toml: 12 minutes a wine, 10 at the least; the demo has five wines
        (5, 1, 0),
        (10, 2, 0),
        (15, 2, 1),  # 12 for the one left out, 2 for each of four: 20
        (30, 2, 2),  # 24 and 6
        (500, 2, 2),  # three of five stay, whatever is lost
    ],
)
def test_the_gentlest_cut_is_taken(session: Session, minutes: float, shorter: int, left_out: int) -> None:
    evening = read_evening(DEMO, session, datetime.now().astimezone())
    found = caught(evening, minutes, session.engine)
    assert (found.shorter, len(found.left_out)) == (shorter, left_out)


def test_what_cannot_be_made_up_is_counted(session: Session) -> None:
    evening = read_evening(DEMO, session, datetime.now().astimezone())
    assert caught(evening, 30, session.engine).missing == 0
    assert caught(evening, 500, session.engine).missing == 500 - 30


@pytest.mark.parametrize(
    ("said", "minutes"),
    [
        ("half an hour late, what can we skip", 30),
        ("we are 30 minutes late, what can we skip", 30),
        ("we're thirty minutes late, what can we skip", 30),
        ("we are a quarter of an hour late, what can we skip", 15),
        ("we are an hour late, what can we skip", 60),
    ],
)
def test_lateness_is_heard_in_words_and_half_of_the_wines_stay(
    session: Session, said: str, minutes: int
) -> None:
    session.new_conversation()
    answer = session.ask(said)
    labels = [session.knowledge.label(wine) for wine in session.tonight.wines]
    assert answer.say.startswith("Leave out")
    assert sum(label in answer.say for label in labels) <= len(labels) / 2
    made_up = 2 * 12 + 2 * 2 if minutes > 15 else 15  # two of four left out, two shorter
    assert (f"{made_up} of {minutes}" in answer.text) == (made_up < minutes)
    assert f"{minutes - made_up} min later" in answer.text or made_up == minutes


def test_what_is_left_out_is_no_wine_that_must_be_poured(session: Session) -> None:
    evening = read_evening(DEMO, session, datetime.now().astimezone())
    must = {line.label for line in evening.wines if line.must}
    assert not must & set(caught(evening, 500, session.engine).left_out)


@pytest.mark.parametrize(
    ("asked", "intent", "said"),
    [
        ("were running 15 over what do i cut", "plan", "Leave out"),
        ("we are 5 minutes late, what can we skip", "plan", "min less"),
        ("need to lose 20 bucks", "plan", "less"),
    ],
)
def test_it_is_asked_by_talk(session: Session, asked: str, intent: str, said: str) -> None:
    session.new_conversation()
    answer = session.ask(asked)
    assert (answer.intent, answer.left_out) == (intent, ())
    assert said in answer.say


@pytest.mark.parametrize(
    "said",
    [
        "we're 15 minutes over",
        "we're 15 over",
        "we're running late",
        "what should I drop, we are 10 over",
        "we're 10 mins behind, what do I cut",
    ],
)
def test_time_that_is_over_is_heard_as_people_say_it(session: Session, said: str) -> None:
    session.new_conversation()
    session.ask("what goes with the brie")
    answer = session.ask(said)
    assert answer.say.startswith(("Give each wine", "Leave out"))
    assert "Still with" not in answer.text
    assert session.tonight.guests == 12


def test_money_that_is_over_is_no_time(session: Session) -> None:
    session.new_conversation()
    assert "Pour only" in session.ask("we're 15 euros over budget").text
    assert not session.ask("we're over the moon").understood


def test_late_guests_are_no_minutes_and_no_fewer_guests(conversation: Session) -> None:
    conversation.new_conversation()
    for said in ("ten people", "on the table: brie, malbec and riesling"):
        conversation.ask(said)
    assert "Give each wine" not in conversation.ask("two guests are late").text
    assert conversation.tonight.guests == 10


@pytest.mark.parametrize(
    "said",
    ["kate is coming late", "two guests are late", "jo is running late", "we have a late arrival, Sam"],
)
def test_a_guest_who_comes_late_costs_nobody_a_wine(session: Session, said: str) -> None:
    session.new_conversation()
    answer = session.ask(said)
    assert "nobody's wine is dropped" in answer.say
    assert "Leave out" not in answer.text


def test_what_a_guest_missed_is_poured_by_halves(session: Session) -> None:
    session.new_conversation()
    order = session.ask("what order do I pour").text.splitlines()
    first = order[1].split(". ", 1)[1].split(":")[0]
    say = session.ask("we have a late arrival, Sam, he missed the first two wines").say
    assert f"half a measure of {first} and " in say
    assert "half a measure of Malbec," in session.ask("Sam just turned up, he missed the Malbec").say
