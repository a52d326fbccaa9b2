"""`goeswith evaluate`: figures, JSON lines, exit codes, and files that cannot be used."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant import cli
from assistant.evaluate import run
from assistant.evaluate.known import known_failures
from assistant.evaluate.read import read_corpus
from assistant.knowledge.problems import KnowledgeError
from assistant.session import Session
from tests.conftest import Run

SOUND, PROBLEMS, REFUSED = 0, 1, 2
QUESTION = '[[question]]\nid = "{id}"\npass = "own"\nask = "what wine goes with prawns"\n'
OWN = f"""intent = "wines-for-food"

{QUESTION.format(id="a")}foods = ["shrimp"]

{QUESTION.format(id="b")}intent = "plan"

[[dialogue]]
id = "talk"
pass = "own"

[[dialogue.turn]]
ask = "what wine goes with prawns"
intent = "wines-for-food"
present = ["prawn"]

[[dialogue.turn]]
ask = "why?"
intent = "why"
wines = ["retsina"]

[[refusal]]
id = "r"
ask = "who won the match last night"
about = "sport"
"""

Write = Callable[[str], Path]


@pytest.fixture
def write(tmp_path: Path) -> Write:
    """Writes a corpus file."""

    def file(text: str) -> Path:
        path = tmp_path / "own.toml"
        path.write_text(text, "utf-8")
        return path

    return file


@pytest.fixture
def one_session(session: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    """Spares the command loading the knowledge again."""
    monkeypatch.setattr(run, "Session", lambda: session)


@pytest.mark.usefixtures("one_session")
def test_own_file_is_run_and_reported(write: Write, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["evaluate", str(write(OWN))]) == SOUND
    said = capsys.readouterr()
    assert said.err == ""
    lines = said.out.splitlines()
    assert lines[:2] == ["2 questions", "  intents right               0.500"]
    assert "  plan             read as wines-for-food      1" in lines
    assert "1 of 1 things outside the job turned down" in lines


@pytest.mark.usefixtures("one_session")
def test_json_is_one_object_a_line_and_the_figures_last(
    write: Write, capsys: pytest.CaptureFixture[str]
) -> None:
    assert cli.main(["evaluate", "--json", str(write(OWN))]) == SOUND
    rows = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert [row["row"] for row in rows] == ["question", "question", "turn", "turn", "refusal", "figures"]
    assert rows[1]["expected"] == "plan"
    assert rows[3]["faults"] == ["retsina is not the wine"]
    assert rows[-1]["all"]["intent"] == 0.5
    assert rows[-1]["all"]["turns"] == 0.5
    assert rows[-1]["by_pass"]["own"]["intent"] == 0.5
    assert rows[-1]["confusions"] == [["plan", "wines-for-food", 1]]


@pytest.mark.usefixtures("one_session")
def test_a_floor_that_is_not_met_is_a_problem(
    write: Write, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    small = read_corpus([write(OWN)])
    monkeypatch.setattr(run, "read_corpus", lambda files: small)
    monkeypatch.setattr(run, "read_known", lambda: {"b": "wines-for-food", "a": "unclear"})
    monkeypatch.setattr(run, "read_floors", lambda: {"at-least": {"intent": 0.5}, "at-most": {}})
    assert cli.main(["evaluate"]) == SOUND
    out = capsys.readouterr().out
    assert "1 worse than corpus/known-failures.toml says: talk.2" in out
    assert "1 better than corpus/known-failures.toml says: a" in out
    monkeypatch.setattr(run, "read_floors", lambda: {"at-least": {"intent": 0.6}, "at-most": {}})
    assert cli.main(["evaluate"]) == PROBLEMS
    assert "intent is 0.500, and should be 0.6 or more" in capsys.readouterr().out


def test_known_failures_are_toml_that_can_be_read_back(
    write: Write, session: Session, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    results = run.run(read_corpus([write(OWN)]), session)
    (tmp_path / "known-failures.toml").write_text(known_failures(results), "utf-8")
    monkeypatch.setattr(run, "corpus_dir", lambda: tmp_path)
    assert run.read_known() == {"b": "wines-for-food", "talk.2": "retsina is not the wine"}


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "holds no [[question]]"),
        ("intent = \n", "line 1"),
        (QUESTION.format(id="a"), "a has no intent"),
        (QUESTION.format(id="a") + 'intent = "wine"\n', "'wine' is no intent"),
        (QUESTION.format(id="a") + 'intent = "plan"\nfood = ["brie"]\n', "nothing is called 'food' here"),
        (QUESTION.format(id="a") + 'intent = "plan"\nfoods = "brie"\n', "foods is no list of words"),
        ('intent = "plan"\n' + QUESTION.format(id="a") * 2, "a: stands for more than one question"),
        ('intent = "plan"\n[[question]]\nid = "a"\nask = " "\npass = "own"\n', "a has no ask"),
        ('[question]\nid = "a"\n', "question is no list of tables"),
        ('[[dialogue]]\nid = "d"\npass = "own"\n', "d has no turns"),
        (
            '[[dialogue]]\nid = "d"\npass = "own"\n[[dialogue.turn]]\nask = "x"\nintent = "why"\npick = 0\n',
            "0 is no place in a list",
        ),
        (
            '[[dialogue]]\nid = "d"\npass = "own"\n[[dialogue.turn]]\nask = "x"\nintent = "why"\nfresh = 1\n',
            "1 is neither true nor false",
        ),
        ('[[refusal]]\nid = "r"\nask = "x"\n', "r has no about"),
        ("[[question]]\nid = 'a'\nask = '\x00'\n", "own.toml"),
    ],
)
def test_a_broken_file_is_told_in_one_sentence(
    write: Write, capsys: pytest.CaptureFixture[str], text: str, told: str
) -> None:
    assert cli.main(["evaluate", str(write(text))]) == REFUSED
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert said.err.startswith("goeswith: ")
    assert told in said.err


def test_the_line_of_a_mistake_is_named(write: Write) -> None:
    text = (
        'intent = "plan"\n\n' + QUESTION.format(id="first") + "\n" + QUESTION.format(id="second") + "x = 1\n"
    )
    with pytest.raises(KnowledgeError) as caught:
        read_corpus([write(text)])
    (problem,) = caught.value.problems
    assert (problem.source.endswith("own.toml"), problem.line) == (True, 9)


@pytest.mark.parametrize("name", ["missing.toml", "."])
def test_a_file_that_cannot_be_read_is_told_by_the_program(goeswith: Run, name: str) -> None:
    done = goeswith("evaluate", name)
    assert (done.returncode, done.stdout) == (REFUSED, "")
    assert done.stderr.count("\n") == 1
    assert "cannot be read" in done.stderr


def test_undecodable_bytes_are_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "own.toml"
    file.write_bytes(b"\xff\xfe\x00")
    assert cli.main(["evaluate", str(file)]) == REFUSED
    assert capsys.readouterr().err.count("\n") == 1
