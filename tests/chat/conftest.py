"""A chat as a guest sees it, on a pseudo-terminal."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

if sys.platform == "win32":
    collect_ignore_glob = ["test_chat.py", "test_at_the_table.py"]
else:
    from tests.terminal import ENTER, Terminal

    Open = Callable[..., Terminal]

PROMPT, PLAIN_PROMPT = "you ›", "you>"
QUESTION = "what goes with garlic cheddar"
READ = "I read: garlic cheddar."
UNSET = ("NO_COLOR", "COLUMNS", "LINES", "PYTHONIOENCODING", "GOESWITH_PLAIN")


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """The data folder of a guest of this test alone, who was here before."""
    home = tmp_path / "data"
    (home / "goeswith").mkdir(parents=True)
    (home / "goeswith" / "hint-given").touch()
    return home


@pytest.fixture
def chat(environment: dict[str, str], home: Path, tmp_path: Path) -> Iterator[Open]:
    """Opens chats; all are closed after the test."""
    opened: list[Terminal] = []
    usual = {"TERM": "xterm-256color", "LANG": "C.UTF-8", "LC_ALL": "C.UTF-8", "XDG_DATA_HOME": str(home)}
    bare = {name: value for name, value in environment.items() if name not in UNSET}

    def start(*options: str, columns: int = 80, lines: int = 40, **variables: str) -> Terminal:
        command = (sys.executable, "-m", "assistant", *options)
        opened.append(Terminal(bare | usual | variables, command, columns, lines, tmp_path))
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


def typed_on(screen: str, prompt: str = PROMPT) -> str:
    """The last line with a prompt, which stands above the bottom line."""
    return ["", *(line.rstrip() for line in screen.splitlines() if line.startswith(prompt))][-1]
