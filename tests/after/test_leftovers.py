"""Keep, bin or cook: open bottles and food that stood out, by talk."""

from __future__ import annotations

import pytest

from assistant.after.cooking import uses
from assistant.session import Session


@pytest.mark.parametrize(
    ("said", "starts"),
    [
        ("brie out since 7, it's 10 now", "Bin the Brie: 3 hours out, and 2 hours is the limit."),
        ("the dip was out 90 min", "Keep the dip: 1 h 30 min out, good for another 30 minutes."),
        ("the dip's been out two hours", "Put the dip away now or bin it: 2 hours is the limit."),
        ("ham out for 90 minutes in the garden", "Bin the cooked ham: 1 h 30 min out, and an hour"),
        ("brie out for 50 minutes at 33 degrees", "Keep the Brie: 50 minutes out, good for another 10"),
        ("how long has the brie been out", "Since when is the Brie out? 2 hours is the limit."),
        ("crackers out since noon", "Plain cracker keeps without a fridge."),
    ],
)
def test_the_clock_decides(bare: Session, said: str, starts: str) -> None:
    answer = bare.ask(said)
    assert answer.intent in ("service", "safety")
    assert answer.say.startswith(starts)


def test_a_verdict_on_food_cites_the_public_bodies(bare: Session) -> None:
    answer = bare.ask("brie out since 7, it's 10 now")
    assert [record["id"] for record in answer.cautions] == ["caution/left-out", "caution/leftovers"]
    assert "USDA" in answer.text
    assert "fridge, in waxed paper" not in answer.text  # nothing is said of keeping what is binned


def test_pregnancy_is_left_to_safety(bare: Session) -> None:
    answer = bare.ask("is brie that was out 3 hours safe in pregnancy")
    assert answer.intent == "safety"
    assert "caution/pregnancy-mould-ripened" in [record["id"] for record in answer.cautions]


@pytest.mark.parametrize(
    ("said", "starts"),
    [
        ("half a cab how long", "Cabernet Sauvignon, half left: about 4 days"),
        ("a third of the port left, how long", "Ruby port, nearly empty: about 7 days"),
        ("my wine's 3 days open", "Still wine is fine at 3 days open, fizz past its best."),
        ("fizz 5 days open", "Sparkling wine: 5 days open is past its best of 1 to 3 days"),
        ("malbec 2 days open", "Malbec: 2 days open is fine"),
        ("riesling open 3 weeks still ok", "Dry Riesling: 3 weeks open is too old even for the pan."),
    ],
)
def test_open_bottles(bare: Session, said: str, starts: str) -> None:
    answer = bare.ask(said)
    assert answer.intent == "service"
    assert answer.say.startswith(starts)


def test_a_spoon_does_nothing(bare: Session) -> None:
    answer = bare.ask("fizz w a spoon in it lol")
    assert answer.intent == "myth"
    assert answer.say.startswith("No: cold keeps the fizz")


def test_what_to_cook_follows_the_kind_of_wine(bare: Session) -> None:
    riesling = bare.ask("what do I cook with leftover riesling").say
    malbec = bare.ask("half a bottle of malbec left, what can I cook with it").say
    assert riesling.startswith("Leftover dry Riesling: ")
    assert malbec.startswith("Leftover Malbec: ")
    assert riesling.split(": ")[1] != malbec.split(": ")[1]


def test_every_kind_of_a_use_exists(session: Session) -> None:
    assert all(f"kind/{kind}" in session.knowledge.digest for row in uses() for kind in row["kinds"])
    assert uses()[-1]["kinds"] == ["wine"]


def test_leftovers_of_the_table_are_sorted_by_what_keeps_least(evening: Session) -> None:
    lines = evening.ask("what do I do with the leftovers").text.splitlines()
    foods = [line.split(":")[0] for line in lines if " days." in line and "open" not in line]
    assert foods.index("Brie") < foods.index("Garlic cheddar") < foods.index("Almond")
    assert "Pinot Noir: open, 3 to 5 days." in lines


def test_without_a_table_they_are_asked_for(bare: Session) -> None:
    answer = bare.ask("what do I do with the leftovers")
    assert not answer.understood
    assert answer.clarify
