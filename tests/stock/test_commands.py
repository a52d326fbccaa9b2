"""The list by command: told on standing error, answers on standard output, exit codes; plans out of it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from assistant import cli
from assistant.knowledge.files import corpus_dir
from tests.plan_schema import disagreements, faults

EVENING = corpus_dir() / "evenings" / "quay-house.toml"
LIST = corpus_dir() / "evenings" / "quay-house-bottles.csv"


def run(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str, str]:
    """A command without a notebook, its exit code and what it prints."""
    code = cli.main([*map(str, words), "--no-notebook"])
    out, err = capsys.readouterr()
    return code, out, err


def test_ask_tells_the_list_and_answers_out_of_it(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, "ask", "what goes with brie", "--bottles", LIST, "--json")
    assert (code, err) == (0, "goeswith: quay-house-bottles.csv: 30 bottles of 30 styles.\n")
    assert all(item["bottles"] for item in json.loads(out)["picks"])


@pytest.mark.parametrize("command", [("ask", "brie"), ("plan", EVENING)])
def test_a_list_that_cannot_be_read(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, command: tuple[object, ...]
) -> None:
    for file in (tmp_path, tmp_path / "none.csv"):
        code, out, err = run(capsys, *command, "--bottles", file)
        assert (code, out, err.count("\n")) == (2, "", 1)


def test_check_tells_the_mistakes_of_a_list(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert cli.main(["check", str(LIST)]) == 0
    file = tmp_path / "mine.csv"
    file.write_text("label,style,price\nSpade,corkscrew,5\n")
    assert cli.main(["check", str(file)]) == 1
    assert "mine.csv, line 2: " in capsys.readouterr().out


def test_a_plan_takes_price_and_stock_from_the_list(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    file = tmp_path / "bottles.csv"
    file.write_text("label,style,vintage,price,stock\nGrey Heron,off-dry Riesling,2025,21,0\n")
    code, out, _ = run(capsys, "plan", EVENING, "--bottles", file, "--json")
    plan = json.loads(out)
    assert (code, faults(plan), disagreements(plan)) == (0, [], [])
    (row,) = plan["from_list"]
    assert (row["wine"], row["price"], row["in_stock"]) == ("off-dry Riesling", 21.0, 0)
    assert "the evening file says 14" in row["say"]
    bought = next(line for line in plan["shopping"] if line["item"] == "off-dry Riesling")
    assert bought["cost"] == 21.0 * bought["amount"]


def test_bottles_of_the_list_need_not_be_bought(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "plan", EVENING, "--bottles", LIST)
    assert code == 0
    assert "From your list\n  brut sparkling: Harbour Bell, $18, 8 in stock.\n" in out
    assert "Malbec: 1 needed, 0 to buy" in out


def test_a_plan_without_a_list_is_as_before(capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, "plan", EVENING, "--json")
    assert json.loads(out)["from_list"] == []
    assert "From your list" not in run(capsys, "plan", EVENING)[1]
