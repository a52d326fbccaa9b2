"""Completion in the shells that have it: the words each offers at the cursor."""

from __future__ import annotations

import argparse
import shutil
import subprocess
from pathlib import Path

import pytest

from assistant.cli import arguments
from assistant.completion import SHELLS, completion
from assistant.options import actions, commands, every_parser
from tests.conftest import Run

COMMANDS = {command.name for command in commands(arguments())}
SECONDS = 60.0
OFFER_IN_BASH = """
source "$1"; shift
COMP_WORDS=("$@"); COMP_CWORD=$(( $# - 1 ))
complete -p goeswith | grep -q -- '-F _shtab_goeswith' || exit 3
_shtab_goeswith goeswith "${COMP_WORDS[COMP_CWORD]}" "${COMP_WORDS[COMP_CWORD-1]}"
printf '%s\\n' "${COMPREPLY[@]}"
"""
OFFER_IN_FISH = 'source $argv[1]; complete -C "$argv[2..]" | string split -f1 \\t; or true'
OFFER_IN_ZSH = """
zmodload zsh/zpty
zpty shell zsh -f -i
zpty -w shell "PROMPT=; autoload -Uz compinit; compinit -u -d ./dump; eval \\"\\$(<$1)\\""
zpty -w shell "bindkey '^I' list-choices; LISTMAX=999; stty rows 40 columns 200; print REA''DY"
zpty -r -m shell dump '*READY*'
zpty -n -w shell "$2"$'\\t'
zpty -r -m shell shown "*$3*"
print -r -- "$shown"
"""


def shell(name: str) -> str:
    """The program of a shell; where there is none the test is skipped."""
    found = shutil.which(name)
    if not found:
        pytest.skip(f"{name} is not on this machine")
    return found


@pytest.fixture(scope="module")
def scripts(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the completion of every shell, named after it."""
    folder = tmp_path_factory.mktemp("completion")
    for name in SHELLS:
        (folder / name).write_text(completion(arguments(), name), encoding="utf-8")
    return folder


def offered(name: str, code: str, script: Path, words: list[str], folder: Path) -> list[str]:
    """The lines that a shell prints for words typed up to the cursor, in a folder with two files."""
    (folder / "friday.toml").touch()
    (folder / "saturday.toml").touch()
    first = [shell(name), "-c", code] + ([name] if name in ("bash", "zsh") else [])
    done = subprocess.run(
        [*first, str(script / name), *words],
        cwd=folder,
        capture_output=True,
        encoding="utf-8",
        timeout=SECONDS,
    )
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout.splitlines()


CASES = [
    pytest.param([""], COMMANDS, id="command"),
    pytest.param(["pl"], {"plan"}, id="command begun"),
    pytest.param(["ask", "--to"], {"--top"}, id="option of a command"),
    pytest.param(["--completion", ""], set(SHELLS), id="choices"),
    pytest.param(["plan", "fri"], {"friday.toml"}, id="file of a command"),
    pytest.param(["--evening", "sat"], {"saturday.toml"}, id="file of an option"),
    pytest.param(["plan", "friday.toml", "--hand"], {"--handout"}, id="option after a file"),
]


@pytest.mark.parametrize(("words", "expected"), CASES)
def test_bash_offers(words: list[str], expected: set[str], scripts: Path, tmp_path: Path) -> None:
    assert set(offered("bash", OFFER_IN_BASH, scripts, ["goeswith", *words], tmp_path)) == expected


@pytest.mark.parametrize(("words", "expected"), CASES)
def test_fish_offers(words: list[str], expected: set[str], scripts: Path, tmp_path: Path) -> None:
    assert set(offered("fish", OFFER_IN_FISH, scripts, ["goeswith", *words], tmp_path)) == expected


def test_zsh_lists_commands_with_what_they_are_for(scripts: Path, tmp_path: Path) -> None:
    told = sorted(commands(arguments()), key=lambda command: command.name)
    shown = "\n".join(offered("zsh", OFFER_IN_ZSH, scripts, ["goeswith ", told[-1].help], tmp_path))
    assert [c.name for c in told if f"{c.name} " not in shown or c.help not in shown] == []


def test_zsh_offers_files(scripts: Path, tmp_path: Path) -> None:
    shown = offered("zsh", OFFER_IN_ZSH, scripts, ["goeswith plan ", "saturday.toml"], tmp_path)
    assert "friday.toml" in "\n".join(shown)


@pytest.mark.parametrize("name", SHELLS)
def test_every_option_is_in_every_script(name: str, scripts: Path) -> None:
    text = (scripts / name).read_text(encoding="utf-8")
    named = {n for each in every_parser(arguments()) for a in actions(each) for n in a.option_strings}
    bare = {option.lstrip("-") for option in named if option.startswith("--")}
    assert bare
    assert [option for option in bare if option not in text] == []


@pytest.mark.parametrize("name", SHELLS)
def test_the_program_prints_the_script(name: str, goeswith: Run, scripts: Path) -> None:
    done = goeswith("--completion", name)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == (scripts / name).read_text(encoding="utf-8")


def test_an_unknown_shell_is_told_in_one_sentence(goeswith: Run) -> None:
    done = goeswith("--completion", "abacus")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.startswith("goeswith: --completion: invalid choice: 'abacus'")
    assert done.stderr.count("\n") == 1


def test_any_parser_can_be_completed() -> None:
    parser = argparse.ArgumentParser(prog="cellarbook")
    parser.add_argument("--corked", action="store_true", help="smells of wet board")
    for name in SHELLS:
        assert "corked" in completion(parser, name)
