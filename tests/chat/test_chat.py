"""The chat as a guest sees it, on a pseudo-terminal."""

from __future__ import annotations

import os
import re
import shutil
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

if sys.platform == "win32":
    pytest.skip("pseudo-terminals are not to be had here", allow_module_level=True)

from assistant import __file__ as program
from assistant.knowledge.files import corpus_dir
from tests.terminal import CTRL_C, CTRL_D, ENTER, Terminal

PROMPT, PLAIN_PROMPT = "you ›", "you>"
PROMPT_WITHIN = 5.0
QUESTION = "what goes with garlic cheddar"
READ = "I read: garlic cheddar."
UNSET = ("NO_COLOR", "COLUMNS", "LINES", "PYTHONIOENCODING")
COLOUR = re.compile(rb"\x1b\[(?:\d+;)*(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])(?:;\d+)*m")
STYLED = re.compile(rb"\x1b\[(?:\d+;)*1(?:;\d+)*m")

Open = Callable[..., Terminal]


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """The data folder of a guest of this test alone."""
    return tmp_path / "data"


@pytest.fixture
def chat(environment: dict[str, str], home: Path, tmp_path: Path) -> Iterator[Open]:
    """Opens chats; all are closed after the test."""
    opened: list[Terminal] = []
    usual = {"TERM": "xterm-256color", "LANG": "C.UTF-8", "LC_ALL": "C.UTF-8", "XDG_DATA_HOME": str(home)}
    bare = {name: value for name, value in environment.items() if name not in UNSET}

    def start(columns: int = 80, **variables: str) -> Terminal:
        opened.append(Terminal(bare | usual | variables, columns=columns, folder=tmp_path))
        return opened[-1]

    yield start
    for terminal in opened:
        terminal.__exit__(None, None, None)


def ask(terminal: Terminal, question: str = QUESTION, answer: str = READ, prompt: str = PROMPT) -> str:
    """Asks and waits for the answer and the next prompt; the screen then."""
    terminal.sees(prompt)
    before = terminal.text.count(prompt)
    terminal.press(question + ENTER)
    terminal.until(lambda text: answer in " ".join(text.split()) and text.count(prompt) > before)
    return terminal.settles()


def test_prompt_stands_at_once(chat: Open) -> None:
    assert chat().sees(PROMPT) < PROMPT_WITHIN


def test_question_is_answered_and_the_prompt_comes_back(chat: Open) -> None:
    screen = ask(chat())
    lines = screen.splitlines()
    assert lines[0] == f"{PROMPT} {QUESTION}"
    assert READ in lines
    assert lines[-1].rstrip() == PROMPT


def test_follow_up_follows_on(chat: Open) -> None:
    terminal = chat()
    ask(terminal)
    screen = ask(terminal, "what about a white?", "Limit: white wine.")
    assert "garlic cheddar" in screen.split("white?")[1]


def test_question_typed_before_all_is_loaded_is_answered(chat: Open) -> None:
    terminal = chat()
    terminal.press(QUESTION + ENTER)
    terminal.sees(READ)


def test_empty_line_asks_nothing(chat: Open) -> None:
    terminal = chat()
    terminal.sees(PROMPT)
    terminal.press(ENTER)
    terminal.until(lambda text: text.count(PROMPT) == 2)
    assert set(terminal.settles().split()) == set(PROMPT.split())


def test_ctrl_c_clears_the_line_and_goes_on(chat: Open) -> None:
    terminal = chat()
    terminal.sees(PROMPT)
    terminal.press("half a quest")
    terminal.sees("half a quest")
    terminal.press(CTRL_C)
    terminal.until(lambda text: text.count(PROMPT) == 2)
    assert terminal.settles().splitlines()[-1].rstrip() == PROMPT
    assert READ in ask(terminal)


def test_ctrl_d_leaves_with_0(chat: Open) -> None:
    terminal = chat()
    terminal.sees(PROMPT)
    terminal.press(CTRL_D)
    assert terminal.leaves() == 0
    assert "Traceback" not in terminal.text


def test_ctrl_d_leaves_after_an_answer(chat: Open) -> None:
    terminal = chat()
    ask(terminal)
    terminal.press(CTRL_D)
    assert terminal.leaves() == 0


@pytest.mark.parametrize("word", ["quit", "exit", "bye", ":q"])
def test_word_for_leaving_leaves(chat: Open, word: str) -> None:
    terminal = chat()
    terminal.sees(PROMPT)
    terminal.press(word + ENTER)
    assert terminal.leaves() == 0


def test_works_at_60_columns(chat: Open) -> None:
    screen = ask(chat(columns=60))
    assert max(len(line) for line in screen.splitlines()) <= 60
    assert screen.splitlines()[-1].rstrip() == PROMPT


def test_long_line_wraps_at_60_columns(chat: Open) -> None:
    terminal = chat(columns=60)
    long = "what goes with garlic cheddar and garlic cheddar and garlic cheddar and garlic cheddar"
    assert "Traceback" not in ask(terminal, long)


def test_answer_stands_out_with_colour_or_weight(chat: Open) -> None:
    terminal = chat()
    ask(terminal)
    assert STYLED.search(terminal.raw)


@pytest.mark.parametrize(("variables", "coloured"), [({}, True), ({"NO_COLOR": "1"}, False)])
def test_no_color_gives_no_colour_codes(chat: Open, variables: dict[str, str], coloured: bool) -> None:
    """The menu of completions is the most colourful thing there is."""
    terminal = chat(**variables)
    assert READ in ask(terminal)
    terminal.press("che\t")
    terminal.sees("cheese curd")
    terminal.settles()
    assert bool(COLOUR.search(terminal.raw)) is coloured


def test_dumb_terminal_works_without_codes_of_colour(chat: Open) -> None:
    terminal = chat(TERM="dumb")
    assert READ in ask(terminal, prompt=PLAIN_PROMPT)
    assert not COLOUR.search(terminal.raw)
    terminal.press(CTRL_D)
    assert terminal.leaves() == 0


def test_pasted_control_characters_never_reach_the_screen(chat: Open) -> None:
    terminal = chat()
    terminal.sees(PROMPT)
    terminal.press("\x1b[200~brie \x1b]0;owned\x07 zqxv\x1b[201~" + ENTER)
    terminal.sees("I read: Brie")
    assert b"\x1b]0;owned" not in terminal.raw


def test_history_is_kept_for_the_next_chat_and_for_its_owner_only(chat: Open, home: Path) -> None:
    first = chat()
    ask(first)
    first.press(CTRL_D)
    assert first.leaves() == 0
    kept = home / "goeswith" / "history"
    assert QUESTION in kept.read_text("utf-8")
    assert kept.stat().st_mode & 0o077 == 0
    second = chat()
    second.sees(PROMPT)
    second.press("\x1b[A")
    second.sees(QUESTION)


def test_history_that_cannot_be_kept_is_no_hindrance(chat: Open, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder", "utf-8")
    assert READ in ask(chat(XDG_DATA_HOME=str(tmp_path / "file")))


def test_name_is_completed(chat: Open) -> None:
    terminal = chat()
    ask(terminal)  # the names are there once all is loaded
    terminal.press("what goes with garlic che\t")
    terminal.until(lambda text: text.count("garlic cheddar") >= 3)


def test_broken_knowledge_is_told_in_one_sentence(chat: Open, knowledge_copy: Path, tmp_path: Path) -> None:
    package = _broken_package(tmp_path / "broken", knowledge_copy)
    terminal = chat(PYTHONPATH=str(package))
    terminal.sees(PROMPT)
    terminal.press(QUESTION + ENTER)
    assert terminal.leaves() == 2
    assert re.search(r"goeswith: scales\.ttl, line 1: .+\.", " ".join(terminal.text.split()))
    assert "Traceback" not in terminal.text


def _broken_package(folder: Path, knowledge: Path) -> Path:
    """A copy of the program beside knowledge that is broken."""
    unwanted = shutil.ignore_patterns("__pycache__")
    shutil.copytree(Path(program).parent, folder / "assistant", ignore=unwanted)
    os.symlink(knowledge, folder / "ontology")
    os.symlink(corpus_dir(), folder / "corpus")
    (knowledge / "scales.ttl").write_text("this is no Turtle", "utf-8")
    return folder
