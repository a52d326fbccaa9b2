"""Guests, wines and foods put on the table by talk, planned, kept and taken up again."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from assistant.evening import kept
from assistant.session import Session

TOLD = (
    "12 people saturday at 7, two don't drink",
    "got a riesling, a pinot noir and a malbec",
    "on the board: brie, salami, garlic cheddar and dark chocolate",
)


@pytest.fixture
def talk(session: Session, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Session]:
    """A session that keeps its evenings in a folder of its own."""
    monkeypatch.setattr(kept, "folder", lambda: tmp_path / "evenings")
    session.new_conversation()
    yield session
    session.lay(type(session.tonight)())
    session.new_conversation()


def told(session: Session) -> Session:
    for turn in TOLD:
        session.ask(turn)
    return session


def test_what_is_missing_is_asked_for(talk: Session) -> None:
    answer = talk.ask(TOLD[0])
    assert "12 guests, 2 of them without wine" in answer.text
    assert answer.clarify is not None
    assert "the wines and the foods" in answer.clarify


def test_the_plan_is_made_of_what_was_said(talk: Session) -> None:
    answer = told(talk).ask("plan it")
    assert answer.intent == "plan"
    assert answer.clarify is None
    assert "3 bottles in all" in answer.say
    for wine in ("dry Riesling", "Pinot Noir", "Malbec"):
        assert f"{wine}: 1 needed" in answer.text


def test_the_guests_said_count_for_what_is_asked_later(talk: Session) -> None:
    talk.ask(TOLD[0])
    pours = talk.ask("how many bottles do we need").figures["pours"]["value"]
    assert pours % 10 == 0  # ten of the twelve drink wine


def test_it_is_saved_and_loaded_again(talk: Session) -> None:
    before = told(talk).tonight
    saved = talk.ask("save it as friday night")
    assert "friday-night" in saved.say
    talk.new_conversation()
    assert talk.tonight.wines == ()
    assert "On the table" not in talk.ask("load friday night").say
    assert talk.tonight == replace(before, title="friday night")


def test_the_file_is_an_evening_file(talk: Session) -> None:
    told(talk).ask("save it as friday night")
    tables = tomllib.loads((kept.folder() / "friday-night.toml").read_text("utf-8"))
    assert tables["guests"] == 12
    assert [wine["label"] for wine in tables["wines"]] == ["dry Riesling", "Pinot Noir", "Malbec"]


def test_the_demo_can_be_loaded(talk: Session) -> None:
    answer = talk.ask("load quay house")
    assert answer.understood
    assert talk.tonight.dishes
    assert talk.ask("which wine with the brie").picks[0].id in talk.tonight.wines


def test_an_evening_that_is_not_there_is_told(talk: Session) -> None:
    answer = talk.ask("load nowhere at all")
    assert not answer.understood
    assert "nowhere at all" in answer.say
    assert "quay-house" in answer.say


@pytest.mark.parametrize("name", ["../../etc/passwd", "a/b", "..", "~root", "con\x00trol"])
def test_a_name_is_never_a_path(name: str) -> None:
    assert "/" not in kept.slug(name)
    assert not kept.slug(name).startswith(".")


def test_a_folder_that_cannot_be_written_is_told_and_nothing_is_left(talk: Session, tmp_path: Path) -> None:
    (tmp_path / "evenings").write_text("a file where the folder should be", "utf-8")
    answer = told(talk).ask("save it as friday")
    assert not answer.understood
    assert "could not be saved" in answer.say
    assert (tmp_path / "evenings").read_text("utf-8") == "a file where the folder should be"


@pytest.mark.parametrize(
    "typed", ["can we save it", "can I save this", "loads of people", "loads more coming"]
)
def test_what_only_sounds_like_it_saves_and_loads_nothing(talk: Session, typed: str) -> None:
    talk.ask("does Cabernet Sauvignon go with sole")
    before = talk.tonight
    assert "evening called" not in talk.ask(typed).say
    assert not kept.folder().exists()
    assert talk.tonight.wines == before.wines


@pytest.mark.parametrize(
    "typed",
    ["save it as malbec and brie night", "save this as salami for two", "ok save the table under riesling"],
)
def test_a_name_made_of_foods_lays_nothing(talk: Session, typed: str) -> None:
    before = told(talk).tonight
    saved = talk.ask(typed)
    assert saved.say.startswith("Saved as")
    assert talk.tonight == before


def test_an_evening_named_like_a_food_is_loaded(talk: Session) -> None:
    before = told(talk).tonight
    talk.ask("save it as tapas night")
    talk.ask("take the brie off")
    assert "Tapas Night" in talk.ask("load tapas night").say
    assert talk.tonight.dishes == before.dishes
    assert talk.ask("load tapas").intent != "plan"


def test_a_spread_that_names_the_evening_is_no_dish(talk: Session) -> None:
    talk.ask("tapas and sherry night for eight on saturday")
    assert (talk.tonight.guests, talk.tonight.dishes) == (8, ())


@pytest.mark.parametrize(
    "typed",
    [
        "what if I leave out the garlic",
        "what if brie with PX",
        "the other way round, what if salami with malbec",
        "what if we take the riesling off",
        "what happens if I drop the pinot noir",
        "suppose I put ham and figs on the table",
    ],
)
def test_what_is_only_supposed_changes_no_table(talk: Session, typed: str) -> None:
    before = told(talk).tonight
    assert talk.ask(typed).intent == "what-if"
    assert talk.tonight == before


@pytest.mark.parametrize(
    "asked",
    [
        "open bookclub",
        "bring back the bookclub evening",
        "bring bookclub back",
        "open the book club",
        "load up bookclub please",
    ],
)
def test_an_evening_kept_is_taken_up_however_it_is_called(talk: Session, asked: str) -> None:
    talk.ask("8 guests, we have Soave and Chianti with brie and lasagne")
    talk.ask("save it as bookclub")
    talk.new_conversation()
    assert talk.ask(asked).say.startswith("Bookclub is on the table: Soave")
    assert talk.ask("what have we got tonight").say.startswith("On the table: Brie, lasagne, Soave")
