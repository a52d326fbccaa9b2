"""Evening files that are wrong, given to `plan` and `check`: all problems at once, each in one clear line."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from assistant.knowledge.files import corpus_dir
from tests.conftest import Run
from tests.plan_schema import disagreements, faults

GOOD = """title = "Test"
start = 2999-02-12T19:00:00
guests = 12
non_drinkers = 2

[[wines]]
label = "Malbec"
price = 12.0

[[wines]]
label = "Chablis"
price = 15.0

[[foods]]
label = "brie"
"""
WRONG = {
    "unknown key": (("guests = 12", "guests = 12\nbudgit = 50"), 4, ("'budgit'", "Did you mean 'budget'?")),
    "missing key": (("guests = 12\n", ""), None, ("guests is missing", "Write guests = 12")),
    "wrong type": (("guests = 12", 'guests = "a dozen"'), 3, ("'a dozen'", "whole number")),
    "negative": (("price = 12.0", "price = -12.0"), 8, ("price is -12", "between 0")),
    "no guests": (("guests = 12\nnon_drinkers = 2", "guests = 0"), 3, ("guests is 0", "between 1")),
    "nobody drinks": (("non_drinkers = 2", "non_drinkers = 12"), 4, ("all 12 guests", "without alcohol")),
    "no choice": (("guests = 12", "guests = 12\nbudget = 5\nchoose = 1"), 4, ("no 1 of", "cheaper wines")),
    "unknown wine": (('"Malbec"', '"Glorb Reserve"'), 7, ("'Glorb Reserve'", "grape, region or style")),
    "unknown food": (('"brie"', '"flibbertigibbet"'), 15, ("'flibbertigibbet'", "plainly")),
}  # fmt: skip
UNREADABLE = {
    "ten megabytes": (b"#" * 10_000_000, "larger than a million bytes"),
    "UTF-16": (GOOD.encode("utf-16"), "no text in UTF-8"),
    "Latin-1": (GOOD.replace("Test", "Rosé").encode("latin-1"), "no text in UTF-8"),
    "no TOML": (b"guests: 12\n", "line 1"),
}


def write(folder: Path, text: str | bytes) -> str:
    """A file with this content."""
    file = folder / "odd.toml"
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    return str(file)


def test_the_good_file_is_sound(goeswith: Run, tmp_path: Path) -> None:
    file = write(tmp_path, GOOD)
    for command in ("plan", "check"):
        done = goeswith(command, file)
        assert (done.returncode, done.stderr) == (0, "")


@pytest.mark.parametrize("name", WRONG)
def test_one_mistake_is_one_line(goeswith: Run, tmp_path: Path, name: str) -> None:
    (change, to), line, told = WRONG[name]
    done = goeswith("plan", write(tmp_path, GOOD.replace(change, to)), "--json")
    assert (done.returncode, done.stderr) == (1, "")
    found = json.loads(done.stdout)
    assert faults(found) == []
    assert disagreements(found) == []
    assert len(found["problems"]) == 1
    place = "odd.toml" if line is None else f"odd.toml, line {line}:"
    assert found["problems"][0].startswith(place)
    assert "\n" not in found["problems"][0]
    for words in told:
        assert words in found["problems"][0]


def test_all_mistakes_at_once_and_the_same_to_check(goeswith: Run, tmp_path: Path) -> None:
    text = GOOD
    for name in ("unknown key", "negative", "unknown food"):
        text = text.replace(*WRONG[name][0])
    file = write(tmp_path, text)
    planned, checked = (goeswith(command, file, "--json") for command in ("plan", "check"))
    assert planned.returncode == checked.returncode == 1
    problems = json.loads(checked.stdout)["problems"]
    told = json.loads(planned.stdout)["problems"]
    assert len(problems) == len(told) > 2
    for problem, sentence in zip(problems, told, strict=True):
        assert set(problem) == {"source", "message", "remedy", "line", "term"}
        assert problem["source"] == "odd.toml"
        assert problem["message"] in sentence
        assert problem["remedy"] in sentence


@pytest.mark.parametrize("command", ["plan", "check"])
@pytest.mark.parametrize("name", UNREADABLE)
def test_a_file_that_cannot_be_read_leaves_with_2(
    goeswith: Run, tmp_path: Path, command: str, name: str
) -> None:
    content, told = UNREADABLE[name]
    done = goeswith(command, write(tmp_path, content))
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.count("\n") == 1
    assert "odd.toml" in done.stderr
    assert told in done.stderr
    assert "Traceback" not in done.stderr


def test_every_unreadable_evening_is_told(goeswith: Run, tmp_path: Path) -> None:
    files = [str(tmp_path / name) for name in ("one.toml", "two.toml")]
    done = goeswith("check", *files)
    assert (done.returncode, done.stdout, done.stderr.count("\n")) == (2, "", 2)


def test_check_takes_evenings_beside_turtle(goeswith: Run, tmp_path: Path) -> None:
    turtle = tmp_path / "own.ttl"
    turtle.write_text("@prefix gw: <https://example.org/goeswith/schema#> .\n", "utf-8")
    odd = write(tmp_path, GOOD.replace("guests = 12", "guests = -1"))
    done = goeswith("check", str(turtle), odd, str(corpus_dir() / "evenings" / "quay-house.toml"))
    assert done.returncode == 1
    assert "odd.toml, line 3: guests" in done.stdout
    assert re.fullmatch(r"\d,\d{3} concepts, \d+ rules, 1 problem", done.stdout.rstrip().splitlines()[-1])


def test_only_what_is_to_be_put_right_where_nothing_can_be_poured(goeswith: Run, tmp_path: Path) -> None:
    (change, to), _, _ = WRONG["no choice"]
    done = goeswith("plan", write(tmp_path, GOOD.replace(change, to)))
    assert done.returncode == 1
    assert len(done.stdout.strip().splitlines()) == 4
