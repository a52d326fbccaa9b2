"""Carrying a notebook by talk and by command: what is said of it, whose word counts, and undoing it."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant import cli
from tests.taught.told import Talk, told

GOOD = "i always do gouda with syrah and people love it, remember that"
POOR = "i always do gouda with syrah and people hate it, remember that"


@pytest.fixture
def bea(file: Path, talk: Talk) -> Path:
    """Bea's notebook, exported; the own notebook holds the opposite."""
    opened = talk()
    opened.ask(POOR)
    opened.ask("when i say the house fizz i mean champagne")
    carried = file.with_name("bea.ttl")
    opened.ask(f"export my notebook to {carried}")
    file.unlink()
    return carried


def test_it_comes_in_is_opposed_and_undone_by_talk(talk: Talk, file: Path, bea: Path) -> None:
    opened = talk()
    opened.ask(GOOD)
    answer = opened.ask(f"import bea's notebook {bea}")
    lines = answer.text.splitlines()
    assert (answer.understood, lines[0]) == (True, "Came in: 2 from Bea.")
    assert lines[1].startswith("Opposed: Bea says poor together, Gouda and Syrah; you say good together")
    pair = opened.ask("does gouda go with syrah")
    assert [voice["who"] for voice in pair.voices] == ["host", "Bea"]
    assert "Bea says: poor with Syrah" in pair.text
    opened.ask(f"import bea's notebook {bea}")
    assert opened.ask("forget everything from Bea").say == "Taken back: all 2 things."
    assert [one.author for one in told(file)] == ["host"]


def test_undo_straight_after_takes_all_of_it_back(talk: Talk, file: Path, bea: Path) -> None:
    opened = talk()
    opened.ask(GOOD)
    opened.ask(f"import {bea}")
    assert opened.ask("undo").say == "Taken back: all 2 things."
    assert [one.author for one in told(file)] == ["host"]


def test_the_own_word_counts_where_names_are_opposed(talk: Talk, bea: Path) -> None:
    opened = talk()
    opened.ask("when i say the house fizz i mean cava")
    opened.ask(f"import Bea's notebook from {bea}")
    assert "Cava" in opened.ask("does the house fizz go with brie").text


def test_another_host_of_whom_nothing_is_kept_is_not_meant(talk: Talk, file: Path, bea: Path) -> None:
    opened = talk()
    opened.ask(GOOD)
    opened.ask(f"import {bea}")
    opened.ask("what goes with brie")
    opened.ask("forget everything from Kim")
    assert len(told(file)) == 3


def test_talk_overwrites_nothing_and_asks_for_a_name(talk: Talk, bea: Path) -> None:
    opened, before = talk(), bea.read_bytes()
    opened.ask(GOOD)
    answer = opened.ask(f"export my notebook to {bea}")
    assert "there is a file of this name" in answer.say
    assert (answer.understood, bea.read_bytes()) == (False, before)
    assert "Name the file" in opened.ask("export my notebook").say


@pytest.mark.parametrize("typed", ["import duties on wine", "what goes with brie", "export the plan"])
def test_other_talk_is_left_alone(talk: Talk, typed: str) -> None:
    assert "notebook" not in talk().ask(typed).text.lower()


def run(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str, str]:
    """A command, its exit code and what it prints."""
    code = cli.main([str(word) for word in words])
    out, err = capsys.readouterr()
    return code, out, err


def test_the_commands_carry_it_there_and_back(
    capsys: pytest.CaptureFixture[str], file: Path, talk: Talk, bea: Path
) -> None:
    talk().ask(GOOD)
    code, out, _ = run(capsys, "import", bea, "--notebook", file)
    assert (code, out.splitlines()[0]) == (0, "Came in: 2 from Bea.")
    assert f"goeswith import {bea} --back" in out
    code, out, _ = run(capsys, "import", bea, "--from", "Kim", "--notebook", file)
    assert (code, out) == (0, "Nothing came in.\nIn the notebook already: 2.\n")
    code, out, _ = run(capsys, "import", bea, "--back", "--notebook", file)
    assert (code, out) == (0, f"Taken back: 2 statements that {bea} brought.\n")
    assert run(capsys, "import", bea, "--back", "--notebook", file)[0] == 1
    assert [one.author for one in told(file)] == ["host"]


def test_what_goes_wrong_is_one_sentence(
    capsys: pytest.CaptureFixture[str], file: Path, talk: Talk, bea: Path, tmp_path: Path
) -> None:
    (tmp_path / "broken.ttl").write_bytes(bea.read_bytes()[:-50])
    (tmp_path / "other.ttl").write_text("@prefix a: <http://a/> .")
    for words in (
        ("export", bea, "--notebook", bea),
        ("export", tmp_path / "x.ttl", "--no-notebook"),
        ("import", tmp_path, "--notebook", file),
        ("import", tmp_path / "none.ttl", "--notebook", file),
        ("import", tmp_path / "broken.ttl", "--notebook", file),
        ("import", tmp_path / "other.ttl", "--notebook", file),
        ("import", bea, "--from", "host", "--notebook", file),
    ):
        code, out, err = run(capsys, *words)
        assert (code, out, err.count("\n")) == (2, "", 1), words
        assert err.startswith("goeswith: ")
    assert run(capsys, "export", tmp_path / "y.ttl", "--notebook", tmp_path / "empty.ttl")[0] == 1
    assert not (tmp_path / "y.ttl").exists()


def test_what_went_out_is_told_again(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask(GOOD)
    opened.ask("what goes with brie")
    sent = opened.ask(f"export my notebook to {file.with_name('out.ttl')}")
    assert opened.ask("say that again").text == sent.text
