"""The manual page: as the options are now, sound troff, and true about exit codes."""

from __future__ import annotations

import argparse
import re
import shutil
import subprocess

import pytest

import assistant
from assistant.cli import arguments
from assistant.commands import ANSWERED, ASKED_BACK, WRONG_USAGE
from assistant.manual.page import ENDING, PAGE, page, plain
from assistant.options import actions, every_parser

SECONDS = 60.0


def printed(*command: str, text: str) -> str:
    """What a program prints for the page on its standard input, bold and underlining taken away."""
    if not shutil.which(command[0]):
        pytest.skip(f"{command[0]} is not on this machine")
    done = subprocess.run(command, input=text, capture_output=True, encoding="utf-8", timeout=SECONDS)
    assert (done.returncode, done.stderr) == (0, "")
    return re.sub(r"\x1b\[[0-9;]*m|.\x08", "", done.stdout)


def words(text: str) -> str:
    """Text in one line without regard to line breaks, hyphens at their ends and typographic marks."""
    return " ".join(text.replace("‐\n", "").translate({0x2019: "'", 0x2010: "-", 0x2212: "-"}).split())


def test_the_page_is_up_to_date() -> None:
    now = page(arguments(), assistant.__version__)
    assert PAGE.read_text(encoding="utf-8") == now, "write it anew: python -m assistant.manual"


def test_groff_finds_nothing_to_warn_of() -> None:
    shown = words(printed("groff", "-man", "-ww", "-Tutf8", text=PAGE.read_text(encoding="utf-8")))
    assert f"goeswith {assistant.__version__}" in shown


def test_man_shows_every_option_and_its_help() -> None:
    shown = words(printed("man", "--warnings=w", "-l", "-", text=PAGE.read_text(encoding="utf-8")))
    for parser in every_parser(arguments()):
        assert [a.dest for a in actions(parser) if words(a.help or "")[1:] not in shown] == []
        assert words(parser.description or "")[1:].split(". ")[-1] in shown


def test_exit_codes_are_those_of_the_program() -> None:
    section = ENDING.read_text(encoding="utf-8").split(".SH ")[1]
    assert section.startswith("EXIT STATUS")
    assert re.findall(r"^\.B (\d+)$", section, re.M) == [
        *map(str, (ANSWERED, ASKED_BACK, WRONG_USAGE)),
        "130",
    ]


@pytest.mark.parametrize("text", [".start of a line", "'quoted'", r"back\slash", "a-b --c", "1.5 'x'"])
def test_text_is_printed_as_it_stands(text: str) -> None:
    assert words(text) in words(printed("groff", "-man", "-ww", "-Tutf8", text=f".TH X 1\n{plain(text)}\n"))


def test_the_synopsis_shows_what_may_be_left_out() -> None:
    parser = argparse.ArgumentParser(prog="decant", description="Pours slowly. It takes its time.")
    parser.add_argument("BOTTLE", help="which one")
    parser.add_argument("CARAFE", nargs="?", help="where to")
    parser.add_argument("-s", "--slow", action="store_true", help="without haste")
    parser.add_argument("--cups", nargs="+", metavar="CUP", help="poured in turn")
    made = page(parser, "1")
    assert ".TH DECANT 1" in made
    assert "decant \\- pours slowly\n" in made
    assert '.SY "decant"\n[\\fB\\-\\-slow\\fP]\n[\\fB\\-\\-cups\\fP\\ \\fICUP\\fP\\ ...]\n' in made
    assert "\n\\fIBOTTLE\\fP\n[\\fICARAFE\\fP]\n.YS" in made
    assert "\\fB\\-s\\fP, \\fB\\-\\-slow\\fP\nWithout haste.\n" in made
