"""Whose word is told first: chosen in talk, kept, taken back, heard in answers, plan and handout."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from assistant.knowledge.files import corpus_dir
from tests.conftest import Run
from tests.taught.told import Talk, told

TAUGHT = "i always do gouda with syrah and people love it, remember that"
ASKED = "does gouda go with syrah"
TABLE = "got a syrah and a malbec, gouda, brie and salami"


@pytest.mark.parametrize(
    ("said", "who"),
    [
        ("my word first", "host"),
        ("me first", "host"),
        ("put me first", "host"),
        ("trust me over the book", "host"),
        ("i speak first", "host"),
        ("lead with mine", "host"),
        ("you first", "book"),
        ("put the book first", "book"),
        ("let the book speak first", "book"),
        ("trust the book over me", "book"),
        ("book goes first", "book"),
    ],
)
def test_the_choice_is_kept_as_a_statement(talk: Talk, file: Path, said: str, who: str) -> None:
    answer = talk().ask(said)
    assert (answer.intent, answer.understood) == ("teach", True)
    (one,) = told(file)
    assert (one.kind, one.said, one.author, dict(one.value)) == ("first-voice", said, "host", {"first": who})


@pytest.mark.parametrize(
    "said",
    [
        "which wine first",
        "give me the white first",
        "who goes first, the riesling or the malbec",
        "should i trust you over my sommelier?",
        "let me try the red first",
        "riesling first",
        "why do you put the book first",
    ],
)
def test_what_asks_of_an_order_chooses_no_voice(talk: Talk, file: Path, said: str) -> None:
    talk().ask(said)
    assert told(file) == []


def test_the_host_is_heard_first_and_the_book_behind(talk: Talk) -> None:
    opened = talk()
    opened.ask(TAUGHT)
    book = opened.ask(ASKED)
    opened.ask("my word first")
    answer = opened.ask(ASKED)
    first, second = answer.text.splitlines()[:2]
    assert first == answer.say
    assert first.startswith("You say: good with Syrah (")
    assert second == f"The book: {book.say}"
    assert (answer.verdict, answer.picks) == (book.verdict, book.picks)
    (voice,) = answer.voices
    assert (voice["first"], voice["book"]["verdict"], voice["apart"]) == (True, "fair", 1)


def test_both_ways_back_hear_the_book_first_again(talk: Talk, file: Path) -> None:
    for back in ("forget that", "undo"):
        opened = talk()
        opened.ask(TAUGHT)
        opened.ask("trust me over the book")
        assert opened.ask(back).say == "Taken back: your word first."
        assert opened.ask(ASKED).voices[0]["first"] is False
    assert {one.kind for one in told(file)} == {"pairing"}


def test_a_choice_may_be_of_one_food(talk: Talk) -> None:
    opened = talk()
    opened.ask(TAUGHT)
    opened.ask("i always do brie with malbec and people love it, remember that")
    opened.ask("put my word first for gouda")
    assert opened.ask(ASKED).voices[0]["first"] is True
    assert opened.ask("does brie go with malbec").voices[0]["first"] is False


def test_what_is_so_already_is_not_kept_again(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("my word first")
    assert opened.ask("my word first").say == "It is so already; nothing was kept."
    assert len(told(file)) == 1


def test_it_tells_how_many_answers_it_changes(talk: Talk) -> None:
    opened = talk()
    opened.ask(TABLE)
    opened.ask(TAUGHT)
    assert "This changes one answer for tonight." in opened.ask("my word first").text
    assert "This changes one answer for tonight." in opened.ask("forget that").text


def test_the_list_tells_who_said_it_in_which_words_and_how_far_it_lies(talk: Talk) -> None:
    opened = talk()
    opened.ask(TABLE)
    opened.ask(TAUGHT)
    opened.ask("my word first")
    text = opened.ask("what have I taught you").text
    assert f"“{TAUGHT}”, you" in text
    assert re.search(r"the book says fair \(\+\d+\.\d\), one step lower; it changes one answer", text)
    assert opened.ask(ASKED).voices[0]["first"] is True  # looking at it changed nothing


def test_a_plan_and_its_sheets_tell_both(goeswith: Run, tmp_path: Path) -> None:
    for said in ("i always do garlic cheddar with pinot noir and people love it, remember that", "me first"):
        assert goeswith("ask", "--notebook", "n.ttl", said).returncode == 0
    evening = str(corpus_dir() / "evenings" / "quay-house.toml")
    text = goeswith("plan", "--notebook", "n.ttl", evening).stdout.splitlines()
    at = text.index("  garlic cheddar with Pinot Noir: you say good, the book fair, one step lower")
    assert text[at + 1].startswith("  garlic cheddar: best ")
    record = json.loads(goeswith("plan", "--json", "--notebook", "n.ttl", evening).stdout)
    (row,) = [one for pair in record["pairings"] for one in pair["host"]]
    assert (row["wine"], row["verdict"], row["book"], row["first"]) == ("Pinot Noir", "good", "fair", True)
    goeswith("plan", "--notebook", "n.ttl", evening, "--handout", "s.html")
    sheet = (tmp_path / "s.html").read_text("utf-8")
    assert "garlic cheddar with Pinot Noir: your host says good, the book fair." in sheet
    plain = json.loads(goeswith("plan", "--json", "--no-notebook", evening).stdout)
    assert all(pair["host"] == [] for pair in plain["pairings"])
