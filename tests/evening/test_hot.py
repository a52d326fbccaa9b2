"""A lasagne, a pie or a roast is baked and eaten hot, at the hour that is told; a supper of it is bought."""

from __future__ import annotations

from datetime import datetime, time, timedelta

import pytest

from assistant.evening.numbers import numbers
from assistant.evening.portions import portions
from assistant.session import Session
from tests.evening.made import START, WINES, evening
from tests.evening.test_clock import at

BOARD = (
    "8 people Saturday at 7pm, "
    "we have Soave, Chianti and Barbera with brie, stilton, lasagne and a mushroom lasagne"
)


@pytest.fixture
def chat(session: Session) -> Session:
    session.new_conversation()
    return session


@pytest.mark.parametrize("food", ["lasagne", "steak pie", "roast lamb", "beef stew", "baked camembert"])
def test_what_is_eaten_hot_is_heated_and_never_taken_out_and_thrown_away(session: Session, food: str) -> None:
    plan = numbers(evening(session, foods=(food, "brie")), session)
    tasks = [row["task"] for row in plan["clock"] if food in row["task"]]
    assert not [task for task in tasks if "out of the fridge" in task or "throw away" in task]
    into, eaten = at(plan, "put", food), at(plan, "bring", food)
    assert timedelta(minutes=15) <= eaten - into <= timedelta(minutes=120)
    assert eaten >= START
    assert at(plan, "close") >= eaten + timedelta(minutes=30)


def test_a_hot_dish_comes_with_the_last_wine_that_is_not_sweet(session: Session) -> None:
    wines = ("brut sparkling", "Malbec", "Sauternes")
    plan = numbers(evening(session, wines=wines, foods=("lasagne",)), session)
    assert at(plan, "pour wine 2") <= at(plan, "bring lasagne") < at(plan, "pour wine 3")


def test_two_lasagnes_share_one_supper(session: Session) -> None:
    meal = evening(session, WINES, ("lasagne", "cottage pie", "brie"), guests=8)
    bought = {row.food: row.needed for row in portions(meal, session.knowledge)}
    assert bought["lasagne"] == bought["cottage pie"] == 1100
    assert bought["brie"] == 660


@pytest.mark.parametrize(
    "told",
    [
        "I want the lasagne on the table at half eight",
        "lasagne at half eight please",
        "the lasagne needs to be ready for half eight",
        "serve the lasagne at 20:30",
        "we'll eat the lasagne at 8.30",
    ],
)
def test_the_hour_told_for_a_dish_is_kept_and_is_no_start(chat: Session, told: str) -> None:
    chat.ask(BOARD)
    start = chat.tonight.start
    assert "at 19:40 for eating at 20:30" in chat.ask(told).text
    assert chat.tonight.start == start
    assert dict(chat.tonight.served) == {"food/lasagne": time(20, 30)}
    assert "19:40  put lasagne and button mushroom lasagne in the oven" in chat.ask("make the plan").text


@pytest.mark.parametrize(
    "asked",
    [
        "what time do I put the lasagne in",
        "when does the lasagne go in the oven",
        "when do I put the oven on",
        "how long does the lasagne need in the oven",
        "when should I warm the lasagne",
    ],
)
def test_it_is_told_when_a_dish_goes_in(chat: Session, asked: str) -> None:
    chat.ask(BOARD)
    assert "Lasagne and button mushroom lasagne: in the oven at 18:45" in chat.ask(asked).text


@pytest.mark.parametrize(
    "asked", ["when do I take the brie out", "how long before do I take the cheddar out"]
)
def test_what_is_eaten_cold_comes_out_of_the_fridge(chat: Session, asked: str) -> None:
    assert "out of the fridge" in chat.ask(asked).text


def test_an_evening_begins_when_its_dinner_is_told(chat: Session) -> None:
    chat.ask("8 people for lasagne on Saturday at half seven")
    assert chat.tonight.start is not None
    assert chat.tonight.start.time() == datetime(2027, 1, 1, 19, 30).time()
    assert chat.tonight.served == ()
