"""The command line as other programs rely on it: exit codes, streams, JSON lines and help."""

from __future__ import annotations

import io
import json
import re
import subprocess
import sys
from pathlib import Path
from subprocess import CompletedProcess
from typing import Any

import pytest

import assistant
from assistant import cli
from assistant.builders import BUILDERS
from assistant.knowledge import store
from assistant.session import Session
from tests.answer_schema import faults, sums_wrong
from tests.conftest import PATIENCE, Run

Record = dict[str, Any]
ANSWERED, ASKED_BACK, WRONG_USAGE = 0, 1, 2
QUESTION = "what goes with garlic cheddar"
# Every question with the intent it must be read as; together they reach every intent that is answered.
QUESTIONS: dict[str, tuple[str, ...]] = {
    "quantity": (
        "how many bottles for 12 people and 5 wines",
        "how much cheddar for 10",
        "how much ice for 9 bottles",
    ),
    "wines-for-food": (
        QUESTION,
        "what wine for a grilled steak with peppercorn sauce",
        "green salad with ranch dressing",
        "green salad with vinaigrette",
        "sushi",
        "Thai food",
        "brie, gouda, manchego, prosciutto, olives",
        "steak with blue cheese butter, nothing oaky",
        "a red for salmon",
        "something sparkling with fried chicken",
        "wine under 12% alcohol for oysters",
        "a drink without alcohol for goat cheese",
        "what goes with tiramisu",
        "wich wine for sammon",
    ),
    "foods-for-wine": (
        "what should I eat with Riesling",
        "what food goes with Malbec",
        "which cheese with Sauternes",
        "what can I cook for a bottle of Chianti",
    ),
    "judge-pair": (
        "does Pinot Noir go with salmon",
        "Cabernet Sauvignon with oysters",
        "is port good with Stilton",
        "does a red go with fish",
        "can I serve Champagne with fish and chips",
    ),
    "why": ("why does Chablis go with oysters", "explain why port goes with Stilton"),
    "why-not": ("why not Cabernet Sauvignon with oysters", "why doesn't Barolo go with sole"),
    "service": ("how cold should Chablis be", "does Barolo need decanting"),
    "substitute": ("they were out of Sancerre, what else can I buy", "what can I use instead of Gruyère"),
    "one-bottle": ("one bottle for sushi, burgers and Caesar salad",),
    "set-table": ("on the table tonight: Brie, salami and a Malbec",),
    "undo": ("undo",),
    "compare": (
        "riesling or chardonnay with the crab",
        "compare Malbec and Merlot with steak",
        "what is the difference between Champagne and Prosecco",
        "compare brie and stilton",
    ),
    "what-if": ("what if I put honey on the goat cheese", "what if I squeeze lemon on the salmon"),
    "describe": (
        "describe brie",
        "what is Gewürztraminer like",
        "tell me about Manchego",
        "how sweet is Sauternes",
    ),
    "define": ("what is tannin", "what does corked mean", "define malolactic conversion"),
    "pour-order": (
        "what order: Riesling, Pinot Noir, port",
        "in which order should I pour Champagne, Chablis and Barolo",
        "Sauternes before or after Sancerre",
    ),
    "choose-wines": (
        "choose three wines for brie, salami, garlic cheddar and dark chocolate",
        "which two of these do i open for tacos: malbec, sauv blanc, chardonnay, zin",
    ),
    "check-board": (
        "is my board balanced: brie, camembert, salami, dark chocolate",
        "check my board please, burrata, tomatoes, pesto, focaccia",
    ),
    "myth": ("is it true that legs mean quality", "is it true red never goes with salmon"),
    "trouble": ("my red smells of wet cardboard", "the cork broke and half of it is in the bottle"),
    "safety": ("can I drink wine when pregnant", "is brie safe in pregnancy"),
    "help": ("help", "what can you do"),
    "smalltalk": ("hello", "thank you"),
    "unclear": ("colourless green ideas", "qwrtzp"),
}  # fmt: skip
ASKED = [(question, intent) for intent, questions in QUESTIONS.items() for question in questions]


@pytest.fixture(scope="module")
def records(environment: dict[str, str], tmp_path_factory: pytest.TempPathFactory) -> dict[str, Record]:
    """The record of every question, asked of one program, each in a conversation of its own."""
    done = subprocess.run(
        [sys.executable, "-m", "assistant", "ask", "--json"],
        input="\n\n".join(question for question, _ in ASKED),
        capture_output=True,
        encoding="utf-8",
        timeout=PATIENCE,
        cwd=tmp_path_factory.mktemp("elsewhere"),
        env=environment,
    )
    assert done.stderr == ""
    assert done.returncode == ASKED_BACK
    found = [json.loads(line) for line in done.stdout.splitlines()]
    assert len(found) == len(ASKED)
    return {record["question"]: record for record in found}


def in_process(
    arguments: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], typed: str = ""
) -> tuple[int, str, str]:
    """Exit code, standard output and standard error of a command run in this process."""
    monkeypatch.setattr(sys, "stdin", io.StringIO(typed))
    try:
        code = cli.main(arguments)
    except SystemExit as leaving:
        code = int(leaving.code or 0)
    said = capsys.readouterr()
    return code, said.out, said.err


def one_sentence(text: str) -> bool:
    """Whether a text is one line that ends like a sentence."""
    return len(text.splitlines()) == 1 and text.rstrip().endswith((".", "?", "!"))


# --- the records of ask --json


@pytest.mark.parametrize(("question", "intent"), ASKED, ids=[question for question, _ in ASKED])
def test_record_keeps_to_the_schema(records: dict[str, Record], question: str, intent: str) -> None:
    record = records[question]
    assert faults(record) == []
    assert record["intent"] == intent
    assert sums_wrong(record) == []


def test_the_questions_are_many_and_reach_every_intent_that_is_answered() -> None:
    assert len(ASKED) >= 40
    assert len({question for question, _ in ASKED}) == len(ASKED)
    assert set(BUILDERS) <= set(QUESTIONS)


def test_picks_stand_best_first_with_twelve_words_to_say(records: dict[str, Record]) -> None:
    asked = [records[question] for question in QUESTIONS["wines-for-food"]]
    for record in asked:
        scores = [item["score"] for item in record["picks"]]
        assert scores == sorted(scores, reverse=True)
        assert len(scores) == 3
        assert len(record["say"].split()) <= 12


def test_judged_pair_has_the_verdict_of_its_item(records: dict[str, Record]) -> None:
    for question in (*QUESTIONS["judge-pair"], *QUESTIONS["why"], *QUESTIONS["why-not"]):
        record = records[question]
        assert record["verdict"] == record["picks"][0]["verdict"]


def test_foods_for_wine_names_foods_and_groups(records: dict[str, Record]) -> None:
    for question in QUESTIONS["foods-for-wine"]:
        picks = records[question]["picks"]
        assert {item["kind"] for item in picks} == {"food"}
        assert all(item["groups"] for item in picks)
        assert all(item["wine"] is None for item in picks)


def test_drinks_without_alcohol_are_drinks(records: dict[str, Record]) -> None:
    picks = records["a drink without alcohol for goat cheese"]["picks"]
    assert {item["kind"] for item in picks} == {"drink"}
    assert max(item["wine"]["alcohol_percent"] for item in picks) <= 0.5


def test_mended_word_is_told(records: dict[str, Record]) -> None:
    record = records["wich wine for sammon"]
    assert [(r["label"], r["corrected_from"]) for r in record["read_as"]] == [("salmon", "sammon")]


def test_word_that_is_not_known_is_left_out_and_told(records: dict[str, Record]) -> None:
    assert records["qwrtzp"]["left_out"] == ["qwrtzp"]
    assert records["qwrtzp"]["clarify"]


def test_safety_answer_has_cautions_with_sources_and_no_picks(records: dict[str, Record]) -> None:
    for question in QUESTIONS["safety"]:
        record = records[question]
        assert record["cautions"]
        assert record["picks"] == []


# --- exit codes and streams


def test_answered_question_leaves_with_0_and_an_empty_standard_error(goeswith: Run) -> None:
    done = goeswith("ask", QUESTION)
    assert (done.returncode, done.stderr) == (ANSWERED, "")
    assert "I read: garlic cheddar." in done.stdout


def test_question_may_stand_in_several_arguments(goeswith: Run) -> None:
    whole, split = goeswith("ask", QUESTION), goeswith("ask", *QUESTION.split())
    assert split.stdout == whole.stdout


@pytest.mark.parametrize("question", ["qwrtzp", "", "   ", "plan my evening"])
def test_question_not_answered_leaves_with_1(
    question: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, err = in_process(["ask", question], monkeypatch, capsys)
    assert (code, err) == (ASKED_BACK, "")
    assert out.strip()


WRONG = (
    ["plunder"],
    ["ask", "--top"],
    ["ask", "--top", "0", QUESTION],
    ["ask", "--top", "-3", QUESTION],
    ["ask", "--top", "many", QUESTION],
    ["ask", "--top", "2.5", QUESTION],
    ["ask", "--top", "²", QUESTION],
    ["ask", "--top", "9" * 5000, QUESTION],
    ["--sideways"],
    ["ask", "--sideways", QUESTION],
)


@pytest.mark.parametrize("arguments", WRONG, ids=lambda a: " ".join(a)[:30])
def test_wrong_usage_leaves_with_2(
    arguments: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, err = in_process(arguments, monkeypatch, capsys)
    assert (code, out) == (WRONG_USAGE, "")
    assert "Traceback" not in err
    assert "_count" not in err


@pytest.mark.parametrize("arguments", WRONG, ids=lambda a: " ".join(a)[:30])
def test_wrong_usage_is_told_in_one_sentence(
    arguments: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    _, _, err = in_process(arguments, monkeypatch, capsys)
    assert one_sentence(err), err


def test_knowledge_that_cannot_be_read_leaves_with_2(
    knowledge_copy: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (knowledge_copy / "scales.ttl").write_text("@prefix gw: <https://example.org/> .\ngw:a gw:b\n", "utf-8")
    monkeypatch.setattr(store, "ontology_dir", lambda: knowledge_copy)
    store.shipped.cache_clear()
    try:
        code, out, err = in_process(["ask", QUESTION], monkeypatch, capsys)
    finally:
        store.shipped.cache_clear()
    assert (code, out) == (WRONG_USAGE, "")
    assert re.search(r"scales\.ttl, line \d+: .+\.", err)
    assert len(err.splitlines()) == 1


def test_reader_that_goes_away_gets_no_traceback(environment: dict[str, str]) -> None:
    program = subprocess.Popen(
        [sys.executable, "-m", "assistant", "ask"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env=environment,
        encoding="utf-8",
    )
    assert program.stdout is not None
    program.stdout.close()
    program.stdout = None
    _, err = program.communicate(f"{QUESTION}\n" * 3, timeout=PATIENCE)
    assert err == ""


# --- conversations through a pipe


def answered(done: CompletedProcess[str]) -> list[Record]:
    """The records of a run that printed nothing else."""
    return [json.loads(line) for line in done.stdout.splitlines()]


def test_piped_lines_follow_on_and_an_empty_line_starts_anew(goeswith: Run) -> None:
    done = goeswith("ask", "--json", typed=f"{QUESTION}\nwhy?\n\nwhy?\n")
    first, second, third = answered(done)
    assert (first["intent"], second["intent"]) == ("wines-for-food", "why")
    assert second["picks"][0]["id"] == first["picks"][0]["id"]
    assert second["dish"]["label"] == "garlic cheddar"
    assert third["picks"] == []
    assert done.returncode == ASKED_BACK


def test_piped_conversation_all_answered_leaves_with_0(goeswith: Run) -> None:
    done = goeswith("ask", "--json", typed=f"{QUESTION}\nwhat about a white?\n")
    first, second = answered(done)
    assert done.returncode == ANSWERED
    assert {item["wine"]["colour"] for item in second["picks"]} == {"white"}
    assert second["dish"]["label"] == first["dish"]["label"]


def test_single_questions_do_not_follow_on(goeswith: Run) -> None:
    assert goeswith("ask", QUESTION).returncode == ANSWERED
    assert goeswith("ask", "why?").returncode == ASKED_BACK


def test_without_a_terminal_there_is_no_prompt_and_no_banner(goeswith: Run) -> None:
    piped, asked = goeswith(typed=f"{QUESTION}\n"), goeswith("ask", QUESTION)
    assert piped.stdout == asked.stdout
    assert (piped.returncode, piped.stderr) == (ANSWERED, "")


def test_without_a_terminal_nothing_typed_is_nothing_said(goeswith: Run) -> None:
    done = goeswith(typed="")
    assert (done.returncode, done.stdout, done.stderr) == (ANSWERED, "", "")


def test_bytes_that_are_no_text_are_read_all_the_same(environment: dict[str, str]) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "assistant", "ask", "--json"],
        input=b"brie \xff\xfe\n",
        capture_output=True,
        timeout=PATIENCE,
        env=environment,
    )
    record = json.loads(done.stdout.decode("utf-8"))
    assert [r["label"] for r in record["read_as"]] == ["Brie"]
    assert done.stderr == b""


# --- options


@pytest.fixture
def ranked(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], request: pytest.FixtureRequest
) -> list[Record]:
    """The picks of the question with `--top` of the parameter."""
    _, out, _ = in_process(["ask", "--json", "--top", str(request.param), QUESTION], monkeypatch, capsys)
    record = json.loads(out)
    assert faults(record) == []
    assert sums_wrong(record) == []
    return list(record["picks"])


@pytest.mark.parametrize(("ranked", "count"), [(1, 1), (3, 3), (10, 10)], indirect=["ranked"])
def test_top_is_the_number_of_picks(ranked: list[Record], count: int) -> None:
    assert len(ranked) == count
    assert len({item["id"] for item in ranked}) == count


@pytest.mark.parametrize("ranked", [1000, 10**9], indirect=True)
def test_large_top_gives_every_wine_once_best_first(ranked: list[Record], session: Session) -> None:
    wines = {w.id for w in session.knowledge.wines.values() if w.type == "Wine"}
    scores = [item["score"] for item in ranked]
    assert sorted(item["id"] for item in ranked) == sorted(wines)
    assert scores == sorted(scores, reverse=True)


def test_top_of_ten_begins_the_whole_ranking(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def picks(top: int) -> list[str]:
        _, out, _ = in_process(["ask", "--json", "--top", str(top), QUESTION], monkeypatch, capsys)
        return [item["id"] for item in json.loads(out)["picks"]]

    assert picks(10) == picks(1000)[:10]


def test_version_is_that_of_the_package(goeswith: Run) -> None:
    done = goeswith("--version")
    assert (done.returncode, done.stdout) == (ANSWERED, f"goeswith {assistant.__version__}\n")
