"""`goeswith plan`: exit codes, one JSON object, plain text, and what goes to standard error."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from assistant.knowledge.files import corpus_dir
from tests.conftest import Run

QUAY = str(corpus_dir() / "evenings" / "quay-house.toml")
FIELDS = {
    "bottles": {"wine", "needed", "to_buy", "cliff_ml"},
    "shopping": {"item", "amount", "unit", "cost"},
    "clock": {"at", "task"},
    "temperatures": {"wine", "celsius", "minutes_fridge", "minutes_ice"},
    "kit": {"item", "count", "need"},
    "needs": {"guest", "needs", "may_have", "keep_away", "check_label"},
}


@pytest.fixture
def dated(tmp_path: Path) -> str:
    """The example, held far enough in the future for its start not to be past."""
    file = tmp_path / "dated.toml"
    file.write_text(Path(QUAY).read_text("utf-8").replace("2027-", "2999-"), "utf-8")
    return str(file)


def test_one_json_object(goeswith: Run, dated: str) -> None:
    done = goeswith("plan", dated, "--json")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.count("\n") == 1
    plan = json.loads(done.stdout)
    for name, fields in FIELDS.items():
        assert plan[name]
        assert all(fields <= set(row) for row in plan[name])
    assert {"grams_per_drinker", "us_drinks", "uk_units", "au_drinks"} == set(plan["alcohol"])
    assert {"total", "per_head", "currency", "within_budget"} <= set(plan["cost"])
    assert plan["problems"] == []


def test_text(goeswith: Run, dated: str) -> None:
    done = goeswith("plan", dated)
    assert done.returncode == 0
    assert done.stdout.startswith("Quay House tasting, 2999-02-12 19:00: 12 guests")
    for heading in (
        "Wines, in pouring order",
        "Food by food",
        "What the wines cover",
        "Eat in this order",
        "The board",
        "Without alcohol",
        "Allergens and leftovers",
        "Bottles",
        "To buy",
        "Temperatures",
        "Clock",
        "To pack",
        "Alcohol",
        "Care",
    ):
        assert f"\n{heading}\n" in done.stdout
    assert "None" not in done.stdout


def test_problems_are_told_with_the_plan(goeswith: Run, tmp_path: Path, dated: str) -> None:
    file = tmp_path / "odd.toml"
    file.write_text(Path(dated).read_text("utf-8").replace("guests = 12", "gests = 12"), "utf-8")
    done = goeswith("plan", str(file))
    assert done.returncode == 1
    assert "'gests' here. Did you mean 'guests'?" in done.stdout
    assert done.stderr == ""


@pytest.mark.parametrize(("content", "told"), [("x = ", "line 1"), (None, "cannot be read")])
def test_an_unreadable_file(goeswith: Run, tmp_path: Path, content: str | None, told: str) -> None:
    file = tmp_path / "broken.toml"
    if content is not None:
        file.write_text(content, "utf-8")
    done = goeswith("plan", str(file), "--json")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.count("\n") == 1
    assert "broken.toml" in done.stderr
    assert told in done.stderr
    assert "Traceback" not in done.stderr


def test_wrong_usage(goeswith: Run) -> None:
    assert goeswith("plan").returncode == 2
