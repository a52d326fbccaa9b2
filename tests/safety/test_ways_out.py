"""Every trick in every door, every way out looked at: nothing that steers a screen gets through."""

from __future__ import annotations

import json
from datetime import UTC, datetime
from pathlib import Path

import pytest

from assistant.knowledge import check
from assistant.notebook import Statement, load
from assistant.notebook.answer_log import Entry, note_answer, read_log
from assistant.notebook.block import block
from assistant.notebook.sealing import whole
from assistant.notebook.versions import newest
from tests.safety.conftest import Main
from tests.safety.tricks import MARKUP, TRICKS, each, escaped, slipped

LISTED = "what have I taught you"
WHEN = datetime(2026, 5, 1, 19, 30, tzinfo=UTC)
FORMS = pytest.mark.parametrize("form", [[], ["--json"]], ids=["text", "json"])


def clean(*printed: str) -> bool:
    """Whether no trick is in anything that was printed; fails with what is."""
    for text in printed:
        assert slipped(text) == []
        for line in text.splitlines():
            if line.startswith("{"):
                assert slipped(_strings(json.loads(line)).replace("\n", " ")) == []
    return True


def _strings(value: object) -> str:
    if isinstance(value, dict):
        return "\n".join(_strings(v) for pair in value.items() for v in pair)
    return "\n".join(map(_strings, value)) if isinstance(value, list) else str(value)


def one_line(error: str) -> bool:
    """Whether an error is one line that names the program."""
    return error.startswith("goeswith: ") and error.count("\n") == 1


# --- questions


@FORMS
def test_questions(main: Main, form: list[str]) -> None:
    lines = [text.replace("\n", "\r") for _, text in each("zqxv ", " with brie zqxv")]
    out, err = main("ask", "--no-notebook", *form, typed="\n\n".join(lines) + "\n")
    assert len(out.splitlines()) >= len(TRICKS)
    assert clean(out, err)


def test_question_in_arguments(main: Main) -> None:
    for _, text in list(each("zqxv ", " with brie"))[:6]:
        assert clean(*main("ask", "--no-notebook", text))


def test_arguments_that_are_wrong(main: Main) -> None:
    for trick in TRICKS.values():
        odd = "".join(trick.split())  # with a space in it, it would be no option but a question
        for arguments in (["ask", f"--{odd}x"], [f"--{odd}"], ["ask", "--top", trick, "x"]):
            out, err = main(*arguments)
            assert out == ""
            assert clean(err)
            assert one_line(err)


# --- evening files


def evening(names: dict[str, str], label: str = "Malbec") -> str:
    """An evening that is sound but for its names."""
    title = " ".join(names.values())[:180]
    needs = "\n".join(
        f'[[needs]]\nguest = "{escaped(text)}"\nneeds = ["vegetarian"]' for text in names.values()
    )
    return f"""title = "{escaped(title)}"
start = 2999-02-12T19:00:00
guests = 30
currency = "{escaped(title[:20])}"
[[wines]]
label = "Malbec"
name = "{escaped(title)}"
price = 9
[[wines]]
label = "{label}"
name = "{escaped(MARKUP)}"
[[foods]]
label = "brie"
{needs}
"""


def written(folder: Path, text: str, name: str = "odd.toml") -> Path:
    """A file with this text."""
    file = folder / name
    file.write_text(text, "utf-8")
    return file


@FORMS
def test_names_in_an_evening(main: Main, tmp_path: Path, form: list[str]) -> None:
    file = written(tmp_path, evening(dict(each("Ann ", " Lee")), "Chablis"))
    out, err = main("plan", "--no-notebook", str(file), *form)
    assert "Ann" in out
    assert clean(out, err)


def test_names_in_the_handout(main: Main, tmp_path: Path) -> None:
    file, sheets = written(tmp_path, evening(dict(each("Ann ", " Lee")), "Chablis")), tmp_path / "sheets.html"
    out, err = main("plan", "--no-notebook", str(file), "--handout", str(sheets))
    page = sheets.read_text("utf-8")
    assert clean(out, err, page)
    assert "alert(1)" in page
    assert "<script>alert" not in page
    assert "<img src=x" not in page


@FORMS
@pytest.mark.parametrize("command", ["plan", "check"])
def test_labels_and_keys_that_are_wrong(
    main: Main, tmp_path: Path, form: list[str], command: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(
        check, "shape_problems", lambda *of: []
    )  # what stands in the shipped files is not looked at
    rows = [f'[[wines]]\nlabel = "{escaped(text)}"\n"{escaped(text)}" = 1' for _, text in each("zq ", " xv")]
    foods = [f'[[foods]]\nlabel = "{escaped(text)}"' for _, text in each("zq ", " xv")]
    file = written(tmp_path, "\n".join(["guests = 4", 'meal = "\\u001b]52;c;x\\u0007"', *rows, *foods]))
    options = ["--no-notebook"] if command == "plan" else []
    out, err = main(command, *options, str(file), *form)
    assert out.count("zq") >= len(TRICKS)
    assert clean(out, err)


def test_evening_talked_about(main: Main, tmp_path: Path) -> None:
    file = written(tmp_path, evening(dict(each("Ann ", " Lee")), "Chablis"))
    said = "what goes with what\nwho needs what\nplan it\nload zq\n"
    said += "save it as \x1b]52;c;x\x07 friday\nload friday\n"
    assert clean(*main("ask", "--no-notebook", "--evening", str(file), typed=said))


# --- notebooks


def raw(kind: str, trick: str, **more: object) -> Statement:
    """A statement that was never cleaned, as somebody may write one into a file by hand."""
    names = {"about": (f"my{trick}thing",), "said": f"it is {trick} so", "author": f"An{trick}n"} | more
    return Statement(f"urn:uuid:00000000-0000-4000-8000-{abs(hash((kind, trick))) % 10**12:012d}",
                     kind, when=WHEN, evening=f"eve{trick}ning", **names)  # type: ignore[arg-type]  # fmt: skip


@pytest.fixture
def notebook(tmp_path: Path) -> Path:
    """A notebook with every trick in words, names, authors and evenings, sealed as if it were our own."""
    told = []
    for _, trick in each():
        told += [
            raw("note", trick, about=()),
            raw("alias", trick, about=("food/brie",), value={"alias": f"the{trick} white"}),
            raw("new-food", trick, value={"like": "food/salami"}),
            raw("pairing", trick, about=("wine/sancerre", "food/brie"), value={"verdict": "band/good"}),
        ]
    file = tmp_path / "notebook.ttl"
    file.write_bytes(whole(newest(), [block(one) for one in told]))
    return file


@FORMS
def test_statements_listed_and_told(main: Main, notebook: Path, form: list[str]) -> None:
    assert len(load(notebook).statements) > len(TRICKS)
    asked = (
        f"{LISTED}\nsancerre with brie\nwho says that\nwhat goes with my thing\nforget the white\n{LISTED}\n"
    )
    out, err = main("ask", "--notebook", str(notebook), *form, typed=asked)
    assert "Sancerre" in out
    assert clean(out, err)


def test_notebook_checked(main: Main, notebook: Path) -> None:
    assert clean(*main("check", str(notebook)))


def test_statements_in_the_api(notebook: Path) -> None:
    found = load(notebook)
    for one in found.statements:
        assert slipped(_strings(one.as_json()).replace("\n", " ")) == []
    assert clean(*map(str, (*found.problems, *found.remarks)))


def test_log_of_answers(tmp_path: Path) -> None:
    log = tmp_path / "answers.jsonl"
    for _, trick in each():
        note_answer(Entry(WHEN, f"zq{trick}", trick, (trick,), trick), log)
    found = read_log(log)
    assert len(found.entries) == len(TRICKS)
    assert clean(log.read_text("utf-8"))
    for entry in found.entries:
        assert slipped(entry.question.replace("\n", "")) == []
