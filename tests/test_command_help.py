"""What `--help` says: of every command, short enough for the smallest screen, and complete."""

from __future__ import annotations

import argparse

import pytest

from assistant.cli import arguments
from assistant.options import actions, commands, every_parser
from tests.conftest import ROOT, Run

COLUMNS, LINES = 80, 24
PROMPT = 1
PARSERS = [pytest.param(each, id=each.prog) for each in every_parser(arguments())]
ACTIONS = [
    pytest.param(action, id=f"{each.prog} {action.dest}")
    for each in every_parser(arguments())
    for action in actions(each)
]


@pytest.mark.parametrize("parser", PARSERS)
def test_help_fits_the_smallest_screen(parser: argparse.ArgumentParser, goeswith: Run) -> None:
    done = goeswith(*parser.prog.split()[1:], "--help")
    lines = done.stdout.splitlines()
    assert (done.returncode, done.stderr) == (0, "")
    assert lines[0].startswith(f"usage: {parser.prog}")
    assert len(lines) + PROMPT <= LINES
    assert max(map(len, lines)) <= COLUMNS


@pytest.mark.parametrize("parser", PARSERS)
def test_description_is_of_whole_sentences(parser: argparse.ArgumentParser) -> None:
    told = parser.description or ""
    assert told[:1].isupper()
    assert told.endswith(".")


@pytest.mark.parametrize("action", ACTIONS)
def test_every_option_says_what_it_is_for_in_a_few_words(action: argparse.Action) -> None:
    told = action.help or ""
    assert told[:1].islower() or told.split()[0].isupper()
    assert not told.endswith(".")


def test_the_list_of_commands_says_what_each_is_for() -> None:
    told = {command.name: command.help for command in commands(arguments())}
    assert {"ask", "plan", "check", "evaluate"} <= set(told)
    assert [name for name, text in told.items() if not text[:1].islower() or text.endswith(".")] == []


def test_the_readme_tells_of_every_command() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    assert [
        command.name for command in commands(arguments()) if f"`goeswith {command.name}" not in readme
    ] == []


def test_what_help_hides_is_not_listed() -> None:
    parser = argparse.ArgumentParser(add_help=False)
    parser.add_argument("--shown", help="seen")
    parser.add_argument("--hidden", help=argparse.SUPPRESS)
    parser.add_subparsers().add_parser("deep", help="in").add_subparsers().add_parser(
        "deeper", help="further in"
    )
    assert [action.dest for action in actions(parser)] == ["shown"]
    assert [each.prog.split()[-1] for each in every_parser(parser)][1:] == ["deep", "deeper"]
