"""The chat as a guest sees it, on a pseudo-terminal."""

from __future__ import annotations

import os
import re
import shutil
from pathlib import Path

import pytest

from assistant import __file__ as program
from assistant.knowledge.files import corpus_dir
from tests.chat.conftest import PLAIN_PROMPT, PROMPT, QUESTION, READ, Open, ask, typed_on
from tests.terminal import CTRL_C, CTRL_D, ENTER

PROMPT_WITHIN = 5.0
COLOUR = re.compile(rb"\x1b\[(?:\d+;)*(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])(?:;\d+)*m")
STYLED = re.compile(rb"\x1b\[(?:\d+;)*1(?:;\d+)*m")


def test_prompt_stands_at_once(chat: Open) -> None:
    assert chat().sees(PROMPT) < PROMPT_WITHIN


def test_question_is_answered_and_the_prompt_comes_back(chat: Open) -> None:
    screen = ask(chat())
    lines = screen.splitlines()
    assert lines[0] == f"{PROMPT} {QUESTION}"
    assert READ in lines
    assert typed_on(screen) == PROMPT


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
    assert typed_on(terminal.settles()) == PROMPT
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
    assert typed_on(screen) == PROMPT


def test_long_line_wraps_at_60_columns(chat: Open) -> None:
    terminal = chat(columns=60)
    long = "what goes with garlic cheddar and garlic cheddar and garlic cheddar and garlic cheddar"
    assert "Traceback" not in ask(terminal, long)


def test_answer_stands_out_by_its_weight(chat: Open) -> None:
    terminal = chat()
    ask(terminal)
    assert STYLED.search(terminal.raw)


@pytest.mark.parametrize("variables", [{}, {"NO_COLOR": "1"}, {"COLORTERM": "truecolor"}])
def test_no_colour_is_used_that_could_vanish(chat: Open, variables: dict[str, str]) -> None:
    """Not even in the menu of completions."""
    terminal = chat(**variables)
    assert READ in ask(terminal)
    terminal.press("che\t")
    terminal.sees("cheese curd")
    terminal.settles()
    assert not COLOUR.search(terminal.raw)


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
