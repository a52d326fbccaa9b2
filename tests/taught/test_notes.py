"""Notes are kept as said, with the votes they plainly hold, and only acknowledged."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant import cli
from assistant.evening.table import set_table
from tests.taught.told import Talk, told


def test_a_note_is_kept_as_said_and_only_acknowledged(talk: Talk, file: Path) -> None:
    answer = talk().ask("jot down table two asked about decaf")
    assert (answer.say, answer.text, answer.intent) == ("Noted.", "Noted.", "note")
    (kept,) = told(file)
    assert (kept.kind, kept.said) == ("parked", "jot down table two asked about decaf")


def test_votes_by_number_are_places_in_pouring_order(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("got a Syrah, a dry Riesling and a ruby port, and brie")
    assert opened.ask("jen loved 2, hated 3").text.splitlines()[0] == "Noted."
    note, *votes = told(file)
    assert note.kind == "note"
    assert set(note.about) == {"wine/syrah", "wine/dry-riesling", "wine/ruby-port", "food/brie"}
    cast = [(vote.kind, vote.about, vote.value["verdict"]) for vote in votes]
    assert cast == [
        ("vote", ("wine/syrah",), "band/good"),
        ("vote", ("wine/ruby-port",), "band/poor"),
    ]


@pytest.mark.parametrize("said", ["jen loved 2", "table 5 wants the recipe for the onion tart"])
def test_what_is_no_plain_vote_is_a_note_alone(talk: Talk, file: Path, said: str) -> None:
    talk().ask(said)
    assert [one.kind for one in told(file)] == ["note"]


def test_guests_are_counted_where_a_number_comes_first(talk: Talk, file: Path) -> None:
    talk().ask("3 want the white 1 doesnt care")
    assert [dict(one.value) for one in told(file)][1] == {"verdict": "band/good", "votes": 3}


def test_the_title_of_the_evening_is_kept(talk: Talk, file: Path) -> None:
    opened = talk()
    set_table(opened, Path(cli.__file__).parent.parent / "corpus" / "evenings" / "quay-house.toml")
    opened.ask("note to self bring more water next time")
    (kept,) = told(file)
    assert kept.evening
    assert kept.evening == opened.tonight.title


def test_a_note_leaves_the_talk_as_it_stood(talk: Talk) -> None:
    opened = talk()
    opened.ask("what goes with brie")
    opened.ask("aoife's favourite was the gruner")
    assert "Brie" in opened.ask("what about a red?").text


def test_one_behind_a_place_is_no_number(talk: Talk) -> None:
    opened = talk()
    opened.ask("got a Syrah, a dry Riesling and a ruby port, and brie")
    answer = opened.ask("marcus loved the second one, dana loved the last")
    assert answer.text.splitlines()[1:] == ["Marcus liked Syrah.", "Dana liked ruby port."]
