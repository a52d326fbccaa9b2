"""What was taught is taken back, listed, and told apart from the book."""

from __future__ import annotations

from pathlib import Path

from assistant.notebook import load
from tests.taught.told import Talk, told


def test_the_last_thing_is_taken_back(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("when i say cab i mean cabernet franc")
    assert opened.ask("forget that").say == "Taken back: “cab” means Cabernet Franc."
    assert told(file) == []
    assert len(load(file).statements) == 2


def test_what_was_said_of_something_is_taken_back(talk: Talk, file: Path) -> None:
    first = talk()
    first.ask("i always do gouda with syrah and people love it, remember that")
    first.ask("the pecorino we buy is really salty, store that please")
    answer = talk().ask("unlearn what I said about gouda")
    assert answer.say == "Taken back: good together, Gouda and Syrah."
    assert [one.about for one in told(file)] == [("food/pecorino",)]
    assert talk().ask("take back the last thing I taught you").say == "Taken back: Pecorino is saltier."
    assert told(file) == []


def test_an_undo_of_talk_stays_one(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("when i say cab i mean cabernet franc")
    opened.ask("what goes with brie")
    opened.ask("what goes with oysters")
    assert "Brie" in opened.ask("go back").text
    assert len(told(file)) == 1


def test_what_was_never_said_is_not_found(talk: Talk, file: Path) -> None:
    talk().ask("jot down table two asked about decaf")
    answer = talk().ask("delete the note I just made about Sheila")
    assert (answer.say, answer.understood) == ("I find nothing of that in the notebook.", False)
    assert len(told(file)) == 1


def test_taking_back_twice_keeps_nothing_new(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("i always do gouda with syrah and people love it, remember that")
    opened.ask("forget that")
    opened.ask("forget that")
    assert told(file) == []


def test_what_was_taught_is_listed_newest_first(talk: Talk, file: Path) -> None:
    opened = talk()
    assert opened.ask("what have I taught you").say == "You have taught me nothing yet."
    for number in range(12):
        opened.ask(f"note to self: fetch {number} chairs")
    lines = talk().ask("what have I taught you").text.splitlines()
    assert lines[0] == "I keep 12 things from you."
    assert lines[1].endswith("“note to self: fetch 11 chairs”.")
    assert (len(lines), lines[-1]) == (12, "And 2 more.")


def test_whose_word_it_is(talk: Talk) -> None:
    opened = talk()
    opened.ask("i always do gouda with syrah and people love it, remember that")
    opened.ask("does brie go with syrah")
    assert opened.ask("who says that, you or me").say == "The book says that, not you."
    opened.ask("does gouda go with syrah")
    assert "You say: good with Syrah" in opened.ask("who says that, you or me").text


def test_everything_is_taken_back_at_once(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("i always do gouda with syrah and people love it, remember that")
    opened.ask("jot down table two asked about decaf")
    opened.ask("what goes with brie")
    assert opened.ask("forget everything I taught you").say == "Taken back: all 2 things."
    assert told(file) == []


def test_what_was_taught_before_one_question_is_still_forgotten(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("I always pour malbec with brie and people love it, remember that")
    assert "You say" in opened.ask("what goes with brie").text
    assert opened.ask("forget that").say == "Taken back: good together, Brie and Malbec."
    assert told(file) == []
    assert "You say" not in opened.ask("what goes with brie").text


def test_after_two_questions_the_talk_is_meant(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("I always pour malbec with brie and people love it, remember that")
    opened.ask("what goes with brie")
    opened.ask("what goes with oysters")
    opened.ask("forget that")
    assert len(told(file)) == 1
