"""Without a notebook, with a bad one, and what programs get."""

from __future__ import annotations

import io
import json
from pathlib import Path

import pytest

from assistant import cli
from assistant.notebook import add, load, stated
from assistant.session import Session
from tests.answer_schema import faults
from tests.taught.told import Talk, told


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


def test_asking_makes_no_notebook(file: Path) -> None:
    assert cli.main(["--notebook", str(file), "ask", "brie"]) == 0
    assert not file.exists()


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
