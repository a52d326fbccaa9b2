"""All that was told since a day is taken back in one step, which can be taken back itself."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from assistant.notebook import add, load, standing, stated, withdrawal
from assistant.rehearse.moments import moment
from tests.taught.told import Talk, told

NOW = datetime.now().astimezone()
SUNDAY = datetime(2026, 11, 29, 12).astimezone()
OLD, NEW = "the old cellar key", "the new cellar key"


@pytest.fixture
def kept(file: Path) -> Path:
    """A note of forty days ago and one of today."""
    made = [stated("note", OLD, "host", when=NOW - timedelta(days=40)), stated("note", NEW, "host")]
    assert not add(load(file), *(one.statement for one in made if one.statement)).problems
    return file


def said(file: Path) -> list[str]:
    """The words that stand."""
    return [one.said for one in told(file)]


@pytest.mark.parametrize(
    "words",
    [
        "undo everything since yesterday",
        "roll back to before today",
        "forget everything since this morning",
        "take back everything since last week",
        "undo all since friday",
        "go back to how it was before friday",
    ],
)
def test_what_was_told_since_is_taken_back_and_told(talk: Talk, kept: Path, words: str) -> None:
    answer = talk().ask(words)
    assert answer.intent == "undo"
    assert answer.say.startswith("Taken back: one thing told since ")
    assert f"- “{NEW}”" in answer.text
    assert said(kept) == [OLD]


def test_the_step_can_be_taken_back_itself(talk: Talk, kept: Path) -> None:
    opened = talk()
    opened.ask("undo everything since yesterday")
    assert opened.ask("undo").say == "It stands again, as before that step."
    assert said(kept) == [OLD, NEW]


def test_what_was_taken_back_since_stands_again_and_nothing_newer(talk: Talk, kept: Path) -> None:
    old, new = load(kept).statements
    made = [withdrawal(one, "forget that", "host").statement for one in (old, new)]
    assert not add(load(kept), *(one for one in made if one)).problems
    assert said(kept) == []
    text = talk().ask("undo everything since yesterday").text
    assert "What was taken back since then (1) stands again." in text
    assert said(kept) == [OLD]


def test_nothing_is_erased(talk: Talk, kept: Path) -> None:
    talk().ask("undo everything since yesterday")
    notebook = load(kept)
    assert (len(notebook.statements), len(standing(notebook.statements))) == (3, 2)


def test_nothing_told_since_is_said(talk: Talk, kept: Path) -> None:
    opened = talk()
    opened.ask("undo everything since yesterday")
    answer = opened.ask("undo everything since yesterday")
    assert answer.say.startswith("Nothing was told since ")
    assert not answer.understood


def test_a_party_nobody_knows_is_asked_for(talk: Talk, kept: Path) -> None:
    answer = talk().ask("roll back to before the party")
    assert (answer.intent, answer.understood) == ("undo", False)
    assert said(kept) == [OLD, NEW]


def test_before_the_party_is_before_the_first_word_of_it(talk: Talk, kept: Path) -> None:
    made = [stated("note", f"{n} came late", "host", evening="Quay House") for n in (2, 3)]
    assert not add(load(kept), *(one.statement for one in made if one.statement)).problems
    assert talk().ask("roll back to before the party").say.startswith("Taken back: 2 things")
    assert said(kept) == [OLD, NEW]


@pytest.mark.parametrize(
    ("words", "day"),
    [
        ("since friday", (2026, 11, 27)),
        ("since sunday", (2026, 11, 29)),
        ("since monday", (2026, 11, 23)),
        ("since yesterday", (2026, 11, 28)),
        ("since 3 november", (2026, 11, 3)),
        ("since december 24", (2025, 12, 24)),
        ("before last week", (2026, 11, 22)),
    ],
)
def test_days_are_the_latest_that_are_not_to_come(words: str, day: tuple[int, int, int]) -> None:
    assert moment(words.split(), SUNDAY, None, ()) == datetime(*day).astimezone()


def test_the_evening_on_the_table_counts_once_it_began() -> None:
    began, to_come = SUNDAY - timedelta(hours=3), SUNDAY + timedelta(hours=3)
    words = ["before", "the", "party"]
    assert moment(words, SUNDAY, began, ()) == began
    assert moment(words, SUNDAY, to_come, ()) is None
