"""The chat can be imported and used where the modules of POSIX are missing."""

from __future__ import annotations

import ast
import io
import subprocess
import sys
from pathlib import Path

import pytest

from assistant import __file__ as program
from assistant.chat.manner import manner_of
from assistant.chat.meanwhile import Meanwhile

POSIX = ("fcntl", "grp", "posix", "pty", "pwd", "readline", "resource", "syslog", "termios", "tty")
POSIX_ONLY = ("fork", "getuid", "geteuid", "getpgid", "killpg", "setsid", "mkfifo", "uname")
SIGNALS = ("SIGTSTP", "SIGCONT", "SIGWINCH", "SIGHUP", "SIGALRM", "SIGKILL")
BLOCKED = f"""
import builtins
usual = builtins.__import__
def own(name, globals=None, *rest, **named):
    if (globals or {{}}).get("__name__", "").startswith("assistant") and name.split(".")[0] in {POSIX!r}:
        raise ImportError(name)
    return usual(name, globals, *rest, **named)
builtins.__import__ = own
"""
USED = """
import assistant.chat.loop, assistant.chat.paging, assistant.chat.plain, assistant.chat.prompt
import assistant.chat.saving, assistant.cli
from assistant.session import Session
assert Session().ask("brie").understood
"""


def test_it_works_without_the_modules_of_posix() -> None:
    done = subprocess.run([sys.executable, "-c", BLOCKED + USED], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_the_check_would_notice_one() -> None:
    code = BLOCKED + "exec('import termios', {'__name__': 'assistant.chat.other'})"
    assert subprocess.run([sys.executable, "-c", code], capture_output=True, check=False).returncode != 0


def test_nothing_is_called_that_only_posix_has() -> None:
    unguarded = []
    for file in Path(program).parent.rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.Attribute) and node.attr in (*POSIX_ONLY, *SIGNALS):
                unguarded.append(f"{file.name}:{node.lineno} {node.attr}")
    assert unguarded == []


@pytest.mark.parametrize(
    ("environment", "plain", "wanted"),
    [
        ({}, False, (False, True, True)),
        ({"TERM": "xterm-256color"}, False, (False, True, True)),
        ({"NO_COLOR": "1"}, False, (False, True, False)),
        ({"TERM": "dumb"}, False, (True, True, True)),
        ({"GOESWITH_PLAIN": "1"}, False, (True, False, True)),
        ({"GOESWITH_PLAIN": "0"}, False, (False, True, True)),
        ({}, True, (True, False, True)),  # into a file
    ],
)
def test_manners(environment: dict[str, str], plain: bool, wanted: tuple[bool, bool, bool]) -> None:
    manner = manner_of(environment, plain)
    assert (manner.plain, manner.wraps, manner.dims) == wanted


@pytest.mark.parametrize(("plain", "shown"), [(True, "wait\n"), (False, "wait\r\x1b[K")])
def test_a_wait_is_told_once_past_the_first_second(plain: bool, shown: str) -> None:
    now, out = [0.0], io.StringIO()
    waiting = Meanwhile("wait", plain, out, lambda: now[0])
    waiting()
    assert out.getvalue() == ""
    now[0] = 1.5
    waiting()
    waiting()
    waiting.clear()
    assert out.getvalue() == shown


def test_on_a_terminal_plain_answers_are_broken_at_words_unless_the_reader_says_otherwise() -> None:
    assert manner_of({}, plain=True, terminal=True).wraps
    assert not manner_of({"GOESWITH_PLAIN": "1"}, plain=True, terminal=True).wraps
