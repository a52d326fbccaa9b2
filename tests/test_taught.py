"""What the host teaches and notes: told back, kept in the file, heard later on, taken back."""

from __future__ import annotations

import io
import json
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant import cli
from assistant.notebook import Statement, load, standing
from assistant.session import Session
from tests.answer_schema import faults

Talk = Callable[[], Session]


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A notebook that does not exist yet."""
    return tmp_path / "notebook.ttl"


@pytest.fixture
def talk(file: Path, session: Session) -> Talk:
    """Opens a conversation with the notebook as it is in the file."""
    return lambda: Session(session.knowledge, notebook=load(file))


def told(file: Path) -> list[Statement]:
    """What stands in a sound notebook, withdrawals left out."""
    notebook = load(file)
    assert not notebook.problems
    return [one for one in standing(notebook.statements) if not one.withdraws]


def verdict(session: Session, question: str) -> str | None:
    """The verdict of a pair that is asked for."""
    return session.ask(question).verdict


# Notes


def test_a_note_is_kept_as_said_and_only_acknowledged(talk: Talk, file: Path) -> None:
    answer = talk().ask("jot down table two asked about decaf")
    assert (answer.say, answer.text, answer.intent) == ("Noted.", "Noted.", "note")
    (kept,) = told(file)
    assert (kept.kind, kept.said) == ("parked", "jot down table two asked about decaf")


def test_votes_by_number_are_places_in_pouring_order(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("got a Syrah, a dry Riesling and a ruby port, and brie")
    assert opened.ask("jen loved 2, hated 3").text == "Noted."
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
    from assistant.evening.table import set_table

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


# Teaching


@pytest.mark.parametrize(
    ("said", "question", "read"),
    [
        ('From now on when I say "the house fizz" I mean cava', "does the house fizz go with brie", "Cava"),
        ("wendle is what we call the washed rind cheese", "what wine with wendle", "washed-rind cheese"),
        ("call the malbec the brute from here on", "does the brute go with steak", "Malbec"),
    ],
)
def test_a_name_is_read_from_then_on(talk: Talk, said: str, question: str, read: str) -> None:
    answer = talk().ask(said)
    assert answer.say.startswith("Kept: “")
    later = talk().ask(question)
    assert read in [reading["label"] for reading in later.read_as]
    assert later.question == question
    assert later.voices[0]["says"].startswith("By “")


def test_a_name_may_stand_for_what_stands(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("describe sparkling shiraz")
    opened.ask("call it zubzub")
    (kept,) = told(file)
    assert (kept.kind, kept.about) == ("alias", ("wine/sparkling-shiraz",))


def test_a_pair_is_told_beside_the_book_and_scores_stay(talk: Talk) -> None:
    before = talk().ask("does gouda go with syrah")
    answer = talk().ask("i always do gouda with syrah and people love it, remember that")
    assert answer.say == "Kept: good together, Gouda and Syrah."
    assert f"The book says {before.verdict} with Syrah; you say good, one step higher." in answer.text
    after = talk().ask("does gouda go with syrah")
    assert (after.verdict, after.picks) == (before.verdict, before.picks)
    for question in ("does gouda go with syrah", "what goes with gouda", "what food goes with syrah"):
        assert "You say: good with" in talk().ask(question).text.splitlines()[-1]
    assert "You say" not in talk().ask("does brie go with syrah").text


@pytest.mark.parametrize(
    ("said", "band"),
    [
        ("remember for good that lime pickle kills syrah", "band/poor"),
        ("remember that my crowd doesn't like edam with merlot", "band/poor"),
        ("save as mine: edam with merlot never fails", "band/good"),
        (
            "learn this: moscato with lime pickle is fantastic, dont say it clashes",
            "band/good",
        ),
    ],
)
def test_the_verdict_is_the_hosts(talk: Talk, file: Path, said: str, band: str) -> None:
    talk().ask(said)
    (kept,) = told(file)
    assert (kept.kind, kept.value["verdict"]) == ("pairing", band)


def test_a_profile_changes_what_is_tasted(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("got a dry Riesling, a Syrah and a ruby port, and pecorino, gouda")
    questions = [f"does {wine} go with pecorino" for wine in ("dry Riesling", "Syrah", "ruby port")]
    before = [verdict(talk(), question) for question in questions]
    answer = opened.ask("that's wrong, the pecorino i buy is a mild one, save that")
    assert answer.say == "Kept: your Pecorino is milder."
    changed = sum(b != verdict(talk(), q) for b, q in zip(before, questions, strict=True))
    assert changed == 2
    assert "This changes 2 answers for tonight." in answer.text
    assert "Tasted as you taught: Pecorino milder" in talk().ask(questions[0]).text
    back = opened.ask("forget that")
    assert "This changes 2 answers for tonight." in back.text
    assert [verdict(talk(), question) for question in questions] == before


def test_that_one_is_the_food_that_stands(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("what goes with pecorino")
    assert opened.ask("that one's mild").say == "Kept: your Pecorino is milder."
    assert opened.ask("our gouda is from ewes' milk").say == "Kept: your Gouda is richer and stronger."


def test_a_new_food_is_read_by_its_name(talk: Talk, file: Path) -> None:
    answer = talk().ask("new cheese: vexley blush, like gouda but garlicky and sweeter")
    assert answer.say == "Kept: “vexley blush”, like Gouda but stronger and sweeter."
    later, gouda = talk().ask("what goes with vexley blush"), talk().ask("what goes with gouda")
    assert later.dish is not None
    assert gouda.dish is not None
    assert later.dish["label"] == "vexley blush"
    assert later.dish["sugar"]["points"] > gouda.dish["sugar"]["points"]
    assert later.left_out == ()


def test_a_food_with_an_unread_word_before_it_is_another_food(talk: Talk) -> None:
    before = talk().ask("what goes with chutney")
    talk().ask("teach you something: quandong chutney is tart, not sweet")
    assert talk().ask("what goes with chutney").dish == before.dish
    assert talk().ask("what goes with quandong chutney").dish != before.dish


def test_what_is_said_of_a_new_food_is_not_said_of_what_it_is_like(talk: Talk, file: Path) -> None:
    before = talk().ask("does brie go with syrah")
    talk().ask("new cheese: vexley, like brie but stronger")
    assert talk().ask("the vexley we buy is really salty, store that please").say == "Kept: your vexley is saltier."
    talk().ask("remember that my guests love vexley with syrah")
    after = talk().ask("does brie go with syrah")
    assert (after.text, after.picks) == (before.text, before.picks)
    text = talk().ask("does vexley go with syrah").text
    assert "You say: good with Syrah" in text
    assert "Tasted as you taught: vexley stronger" in text


def test_a_pair_may_be_what_stands(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("what goes with gouda")
    opened.ask("remember my guests always love it with syrah")
    (kept,) = told(file)
    assert (kept.kind, kept.about) == ("pairing", ("wine/syrah", "food/gouda"))


def test_what_cannot_be_used_is_kept_as_a_note(talk: Talk, file: Path) -> None:
    answer = talk().ask("Learn this: I never serve port before nine o'clock")
    assert answer.say == "Kept as a note: I cannot use it in answers yet."
    assert [one.kind for one in told(file)] == ["note"]


# Taking back


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


# Files and bad input


def test_without_a_notebook_nothing_is_kept_and_that_is_said(session: Session) -> None:
    plain = Session(session.knowledge)
    for said in ("jen loved 2, hated 4", "when i say cab i mean cabernet franc"):
        answer = plain.ask(said)
        assert (answer.say, answer.understood) == ("I keep no notebook now, so nothing was kept.", False)


def test_a_failed_save_is_told_and_nothing_is_heeded(session: Session, tmp_path: Path) -> None:
    opened = Session(session.knowledge, notebook=load(tmp_path / "gone" / "notebook.ttl"))
    for said in ("jot down table two asked about decaf", "when i say zubzub i mean malbec"):
        answer = opened.ask(said)
        assert answer.say.startswith("That was not kept: ")
        assert "folder does not exist" in answer.say
        assert not answer.understood
    assert "Malbec" not in opened.ask("does zubzub go with steak").text


def test_hostile_words_in_a_name_stay_words(talk: Talk, file: Path) -> None:
    for name in ("zub{say}\x1b[31m\u202ezub", 'x"> . <a> <b> <c', "zub\\u0022 ; note:x <y>"):
        talk().ask(f"when i say {name} i mean malbec")
    assert all(one.kind in ("alias", "note") for one in told(file))
    listed = talk().ask("what have I taught you").text
    assert "\x1b" not in listed
    assert "\u202e" not in listed


def test_quantities_that_are_not_known_do_no_harm(talk: Talk, file: Path) -> None:
    talk().ask("the pecorino we buy is really salty, store that please")
    from assistant.notebook import add, stated

    odd = stated(
        "profile", "odd", "Ann", about=("food/pecorino",), value={"dimension": "schema#no", "amount": 1.0}
    )
    assert odd.statement is not None
    assert not add(load(file), odd.statement).problems
    assert talk().ask("does pecorino go with syrah").verdict


def test_the_json_of_ask_holds_the_voices(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["--notebook", str(file), "ask", "remember my guests adore edam with merlot"]) == 0
    capsys.readouterr()
    assert cli.main(["ask", "--notebook", str(file), "--json", "does edam go with merlot"]) == 0
    record = json.loads(capsys.readouterr().out)
    assert faults(record) == []
    (voice,) = record["voices"]
    assert (voice["who"], voice["verdict"]) == ("host", "band/good")


def test_piped_talk_is_kept(
    file: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO("when i say zubzub i mean malbec\ndescribe zubzub\n"))
    assert cli.main(["--notebook", str(file)]) == 0
    out = capsys.readouterr().out
    assert out.startswith("Kept: “zubzub” means Malbec.\n")
    assert "By “zubzub” I read Malbec" in out


def test_no_notebook_writes_nothing(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["--notebook", str(file), "ask", "--no-notebook", "jen loved 2, hated 4"]) == 1
    assert "nothing was kept" in capsys.readouterr().out
    assert not file.exists()


def test_asking_makes_no_file(file: Path) -> None:
    assert cli.main(["--notebook", str(file), "ask", "brie"]) == 0
    assert list(file.parent.iterdir()) == []


def test_a_damaged_notebook_is_told_and_its_sound_part_used(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    cli.main(["--notebook", str(file), "ask", "when i say zubzub i mean malbec"])
    cli.main(["--notebook", str(file), "ask", "when i say zabzab i mean merlot"])
    file.write_bytes(file.read_bytes().replace(b"zabzab", b"zebzeb"))
    capsys.readouterr()
    assert cli.main(["--notebook", str(file), "ask", "describe zubzub"]) == 0
    out, err = capsys.readouterr()
    assert "Malbec" in out
    assert err.startswith("goeswith: ")
    assert err.count("\n") == 1
