"""What guests do not like to drink: kept from them, and told where no wine is left for them."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest

from assistant.evening.plan import plan
from assistant.evening.read import read_evening
from assistant.language.drinks_only import dislikes
from assistant.session import Session

Wines = tuple[str, ...]
LAID = "we have champagne, oaky chardonnay, rioja reserva, rosé. foods: poached salmon, brie, chorizo"


@pytest.fixture
def laid(conversation: Session) -> Session:
    conversation.ask(LAID)
    return conversation


@pytest.mark.parametrize(
    ("told", "away", "may"),
    [
        ("Marcus hates oak", ("oaked Chardonnay", "Rioja Reserva"), ("Champagne", "Provence rosé")),
        ("Bea isn't keen on bubbles", ("Champagne",), ("Rioja Reserva", "oaked Chardonnay")),
        ("Uncle Pete doesn't like red wine", ("Rioja Reserva",), ("Champagne", "Provence rosé")),
        ("Jo dislikes Champagne", ("Champagne",), ("Rioja Reserva",)),
        ("Tom doesn't drink white and hates oak", ("Champagne", "Rioja Reserva"), ("Provence rosé",)),
    ],
)
def test_a_dislike_is_noted_for_that_guest(
    laid: Session, told: str, away: tuple[str, ...], may: tuple[str, ...]
) -> None:
    said = laid.ask(told)
    assert said.intent == "set-table"
    rows = {line.split(":")[0]: line for line in said.text.splitlines()}
    assert all(wine in rows["Keep away"] and wine not in rows["May have"] for wine in away)
    assert all(wine in rows["May have"] for wine in may)


@pytest.mark.parametrize(
    "told", ["hates the rosé", "hates it", "loves oak", "hates number 3", "is allergic to nuts"]
)
def test_a_vote_on_one_wine_is_no_dislike_of_a_sort(told: str) -> None:
    assert not dislikes(told)


def test_what_a_guest_dislikes_bans_nothing_for_others(laid: Session) -> None:
    laid.ask("Marcus hates oak")
    assert not laid.read("what goes with the brie").preferences
    assert "oak" in laid.ask("what can Marcus drink with the brie").text


def test_none_left_for_a_guest_is_told_when_it_comes_to_that(laid: Session) -> None:
    assert "None of these" not in laid.ask("the boss only drinks red").text
    gone = laid.ask("take the rioja off").text
    assert "None of these wines is one for Boss: add one that is, " in gone
    added = gone.rpartition("add one that is, ")[2].partition(" for instance")[0]
    assert "None of these" not in laid.ask(f"add {added}").text


def test_who_drinks_no_wine_misses_none(laid: Session) -> None:
    assert "None of these" not in laid.ask("Ana is pregnant").text


def test_wines_chosen_are_looked_at_for_each_guest(conversation: Session) -> None:
    conversation.ask("the boss only drinks rosé")
    chosen = conversation.ask("three white wines for oysters, goat cheese and lemon chicken")
    assert chosen.intent == "choose-wines"
    assert "one for Boss" in chosen.text


def test_the_plan_of_a_file_tells_it(session: Session, tmp_path: Path) -> None:
    file = tmp_path / "evening.toml"
    file.write_text(
        'title = "Supper"\nstart = 2026-12-04T19:00:00\nguests = 4\n[[wines]]\nlabel = "Chablis"\n'
        '[[foods]]\nlabel = "Brie"\n[[needs]]\nguest = "Boss"\nneeds = ["only drinks red"]\n'
    )
    record = plan(read_evening(file, session), session, datetime(2026, 12, 1, 12, 0))
    assert any("none of the wines is one that Boss drinks" in problem for problem in record["problems"])


def test_a_plan_where_nobody_drinks_says_so(conversation: Session) -> None:
    conversation.ask("wines: Rioja, Cava. foods: Brie")
    conversation.ask("2 guests, 2 non drinkers")
    assert conversation.tonight.non_drinkers == conversation.tonight.guests == 2
    assert conversation.ask("plan it").say.startswith("No wine is poured: of 2 guests none")
