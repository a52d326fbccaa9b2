"""When an evening begins is noted by itself, of the day that was said before; so is money in all."""

from __future__ import annotations

from datetime import datetime, time

import pytest

from assistant.language.starting import next_day_at, starts_at
from assistant.session import Session

NOON = datetime(2026, 11, 25, 12)  # a Wednesday
TABLE = ("7 guests on thursday", "choose two wines for brie, ham and olives")


@pytest.fixture
def table(conversation: Session) -> Session:
    """A table with guests on a day, wines and foods."""
    for said in TABLE:
        conversation.ask(said)
    return conversation


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        ("we start at 7", time(19)),
        ("no, we begin at half past six", time(18, 30)),
        ("the guests arrive at 7", time(19)),
    ],
)
def test_a_time_alone_is_of_the_day_said_before(table: Session, said: str, wanted: time) -> None:
    answer = table.ask(said)
    assert table.tonight.start is not None
    assert (table.tonight.start.strftime("%A"), table.tonight.start.time()) == ("Thursday", wanted)
    assert answer.say.startswith("Noted: Thursday")
    assert len(answer.text.splitlines()) == 2


def test_what_to_do_when_is_told_once_the_start_is_known(table: Session) -> None:
    table.ask("we start at 7")
    for asked in ("what do I do when", "start at 8, what do I do when"):
        assert table.ask(asked).text.startswith("Clock")
    assert table.tonight.start is not None
    assert table.tonight.start.time() == time(20)


def test_without_a_day_the_next_such_hour_is_meant() -> None:
    day = next_day_at("start at 7", NOON)
    assert starts_at("start at 7", NOON, day) == datetime(2026, 11, 25, 19)
    assert next_day_at("start at 11 am", NOON) == datetime(2026, 11, 26).date()
    assert next_day_at("12 people", NOON) is None


def test_money_in_all_is_noted_beside_the_bottles(conversation: Session) -> None:
    conversation.ask("7 guests on thursday")
    answer = conversation.ask("I want two wines for brie and ham, under 60 euro all together")
    assert conversation.tonight.budget == 60
    assert answer.picks
    assert "60" not in " ".join(answer.left_out)
    assert "at most 60" in answer.text


def test_a_question_about_serving_is_no_start(table: Session) -> None:
    answer = table.ask("how long can the brie stand out if we start at 7")
    assert answer.intent in ("service", "safety")
    assert "Noted: Thursday" not in answer.text


def test_what_was_due_on_days_that_are_over_is_due_at_once(table: Session) -> None:
    table.ask("no, it is tonight, we start at 23:59")
    rows = table.ask("what do I do when").text.splitlines()[1:]
    dated = [row.split()[0] for row in rows if row.strip()[:4].isdigit()]
    assert rows[0].startswith("  at once")
    assert all(day >= f"{datetime.now():%Y-%m-%d}" for day in dated)
    assert any(row.strip().startswith("at once") for row in rows)


@pytest.mark.parametrize(
    ("said", "guests", "each", "budget"),
    [
        ("next thursday 6.30pm, 60 quid a head", None, 60, None),
        ("£25 a head, 12 people", 12, 25, 300),
        ("60 pounds a head is the budget", None, 60, None),
        ("12 people, 120 euros to spend", 12, None, 120),
        ("it's 150 for everything", None, None, 150),
        ("150 all in", None, None, 150),
        ("we've got 200 for the wine", None, None, 200),
        ("we're 12 for everything", 12, None, None),
    ],
)
def test_money_counts_no_guests(
    conversation: Session, said: str, guests: float | None, each: float | None, budget: float | None
) -> None:
    conversation.ask(said)
    now = conversation.tonight
    assert (now.guests, now.per_head, now.budget) == (guests, each, budget)


def test_money_a_head_follows_the_guests_and_is_told(conversation: Session) -> None:
    assert "No budget" in conversation.ask("whats the budget").say
    conversation.ask("saturday at 7, 60 euros a head")
    conversation.ask("there are 18 guests")
    assert conversation.ask("whats the budget").say == "Noted: 60 a head and at most 1080."
    conversation.ask("make that 20 guests")
    assert conversation.tonight.budget == 1200


@pytest.mark.parametrize(
    ("said", "clock"),
    [
        ("we sit down at 7.30", "19:30"),
        ("we eat at half seven", "19:30"),
        ("dinner is at 8", "20:00"),
        ("next thurday 6.30pm, nine of us", "18:30"),
    ],
)
def test_when_all_sit_down_is_noted(conversation: Session, said: str, clock: str) -> None:
    conversation.ask("9 guests, we have a gavi and a malbec")
    answer = conversation.ask(said)
    assert conversation.tonight.start
    assert f"{conversation.tonight.start:%H:%M}" == clock
    assert clock in answer.text


def test_money_for_more_bottles_is_noted(conversation: Session) -> None:
    conversation.ask("nine of us saturday")
    conversation.ask("budget is 60 quid for the rest of the bottles")
    assert conversation.tonight.budget == 60


def test_money_beside_a_question_is_noted(conversation: Session) -> None:
    conversation.ask("nine of us saturday")
    conversation.ask("got 60 pounds for more wine, what should i get")
    assert conversation.tonight.budget == 60


def test_money_that_is_only_supposed_is_not_noted(conversation: Session) -> None:
    conversation.ask("cost per head if i buy 8 bottles at 11 quid and 15 come")
    assert conversation.tonight.budget is None
    assert conversation.tonight.per_head is None


def test_guests_said_again_are_no_trouble(conversation: Session) -> None:
    conversation.ask("next thursday, 60 quid a head, cheese and wine tasting")
    assert conversation.ask("no there are 18 guests not 60").say.startswith("Noted: 18 guests")


@pytest.mark.parametrize(
    "asked", ["when do we start", "what time do we start?", "so when does it start", "what time is the party"]
)
def test_the_start_alone_is_told_in_a_line(conversation: Session, asked: str) -> None:
    assert "No start was told yet" in conversation.ask(asked).text
    conversation.ask("eight guests, saturday at half past seven")
    answer = conversation.ask(asked)
    assert answer.text.startswith("You start on Saturday")
    assert answer.text.endswith("19:30.")


@pytest.mark.parametrize("asked", ["what do we start with", "what should we open first", "what's first"])
def test_what_comes_first_is_told_with_its_food(conversation: Session, asked: str) -> None:
    for line in ("the food is croquetas and manchego", "fino, Rioja and Cava on the table"):
        conversation.ask(line)
    assert conversation.ask(asked).text == "Cava first, with croquetas."
