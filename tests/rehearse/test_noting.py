"""Each answer is noted, health without its words; a log that cannot be written is told of once."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.knowledge.files import corpus_dir
from assistant.notebook import read_log
from tests.conftest import Run
from tests.taught.told import Talk

SAID = "what goes with brie"


def test_an_answer_is_noted_with_what_it_was_about(talk: Talk, log: Path) -> None:
    answer = talk().ask("does Malbec go with brie")
    entry = read_log(log).entries[0]
    assert (entry.question, entry.intent) == ("does Malbec go with brie", "judge-pair")
    assert (entry.ids, entry.verdict) == (("wine/malbec", "food/brie"), answer.verdict)


def test_the_first_pick_is_noted_with_its_verdict(talk: Talk, log: Path) -> None:
    answer = talk().ask(SAID)
    entry = read_log(log).entries[0]
    assert entry.ids == (answer.picks[0].id, "food/brie")
    assert entry.verdict == answer.picks[0].verdict


def test_words_that_are_not_known_are_noted(talk: Talk, log: Path) -> None:
    talk().ask("what goes with zorblat and brie")
    assert "zorblat" in read_log(log).entries[0].unknown


def test_each_question_of_a_line_is_noted_by_itself(talk: Talk, log: Path) -> None:
    talk().ask("what goes with salami? does malbec go with brie?")
    assert [one.intent for one in read_log(log).entries] == ["wines-for-food", "judge-pair"]


@pytest.mark.parametrize(
    "said",
    [
        "I'm pregnant, is the brie safe?",
        "i'm pregnant",
        "Jo is allergic to nuts",
        "my uncle is diabetic, what can he drink",
        "can i drink with antibiotics",
        "Ann is coeliac and Bo is vegan",
    ],
)
def test_of_health_no_word_is_kept(talk: Talk, log: Path, said: str) -> None:
    talk().ask(said)
    entries = read_log(log).entries  # two where a need is told and something asked in one line
    assert {(entry.question, entry.unknown) for entry in entries} == {("", ())}
    assert all(word not in log.read_text() for word in ("pregnan", "allerg", "diabet", "antibio", "coeliac"))


def test_the_follow_up_of_a_caution_keeps_no_word(talk: Talk, log: Path) -> None:
    opened = talk()
    opened.ask("I'm pregnant, is the brie safe?")
    opened.ask("and the camembert?")
    assert [(one.question, one.intent) for one in read_log(log).entries] == [("", "safety"), ("", "safety")]


def test_a_log_that_cannot_be_written_is_told_once_and_stops_nothing(talk: Talk, log: Path) -> None:
    log.mkdir()
    opened = talk()
    first, second = opened.ask(SAID), opened.ask(SAID)
    line = first.text.splitlines()[-1]
    assert line.startswith("I could not note this answer")
    assert str(log) in line
    assert first.text.removesuffix(f"\n{line}") == second.text
    assert first.understood
    assert second.picks


def test_an_entry_that_is_too_long_stops_nothing(talk: Talk, log: Path) -> None:
    assert talk().ask("brie é " * 4000).text
    assert not read_log(log).problems


def test_noting_waits_for_no_disk(talk: Talk, log: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def never(handle: int) -> None:
        raise AssertionError(handle)

    monkeypatch.setattr("os.fsync", never)
    talk().ask(SAID)
    assert len(read_log(log).entries) == 1


def test_the_command_notes_beside_the_notebook(goeswith: Run, tmp_path: Path) -> None:
    goeswith("ask", "--notebook", str(tmp_path / "mine.ttl"), SAID)
    assert [one.question for one in read_log(tmp_path / "mine-answers.jsonl").entries] == [SAID]


def test_the_usual_place_is_the_users_own(goeswith: Run, tmp_path: Path) -> None:
    goeswith(typed=f"{SAID}\n", XDG_DATA_HOME=str(tmp_path / "data"))
    assert len(read_log(tmp_path / "data" / "goeswith" / "answers.jsonl").entries) == 1


@pytest.mark.parametrize("arguments", [("--no-notebook",), ("ask", "--no-notebook")])
def test_without_a_notebook_nothing_is_written(goeswith: Run, tmp_path: Path, arguments: list[str]) -> None:
    data = tmp_path / "data"
    assert goeswith(*arguments, typed=f"{SAID}\n", XDG_DATA_HOME=str(data)).returncode == 0
    assert not list(tmp_path.rglob("*answers*"))


def test_a_plan_is_no_answer(goeswith: Run, tmp_path: Path) -> None:
    evening = str(corpus_dir() / "evenings" / "quay-house.toml")
    assert "Wines, in pouring order" in goeswith("plan", "--notebook", "mine.ttl", evening).stdout
    assert not list(tmp_path.glob("*answers*"))
