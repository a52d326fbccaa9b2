"""The sign stands before the library that draws the prompt is loaded; no key pressed meanwhile is lost."""

from __future__ import annotations

import io
import sys

import pytest

from assistant.chat.early import shown_early
from tests.chat.conftest import PROMPT, READ, Open

if sys.platform == "win32":
    pytest.skip("needs a pseudo-terminal", allow_module_level=True)

from tests.terminal import CTRL_C, CTRL_D, ENTER

DRAWN = b"\x1b[6n"  # the library asks where the cursor stands as soon as it draws


def test_the_sign_stands_before_the_prompt_is_drawn(chat: Open) -> None:
    terminal = chat()
    terminal.sees(PROMPT)
    assert DRAWN not in terminal.raw


def test_keys_pressed_before_the_prompt_is_drawn_are_its_keys(chat: Open) -> None:
    terminal = chat()
    terminal.sees(PROMPT)
    terminal.press("steak" + CTRL_C + "garlic cheddx\x7far" + ENTER)
    terminal.sees(READ)
    shown = terminal.settles()
    assert f"{PROMPT} garlic cheddar" in shown
    assert "With steak" not in shown
    assert "^C" not in shown


def test_whoever_leaves_at_once_has_left(chat: Open) -> None:
    terminal = chat()
    terminal.sees(PROMPT)
    terminal.press(CTRL_D)
    assert terminal.leaves() == 0


def test_nothing_is_shown_where_there_is_no_terminal() -> None:
    out = io.StringIO()
    with shown_early(PROMPT, out):
        pass
    assert out.getvalue() == ""
