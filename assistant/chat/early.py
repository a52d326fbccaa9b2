"""The sign of the prompt, shown before the library that draws it is loaded."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from typing import TextIO

from assistant.waiting import ERASED

BOLD, USUAL = "\x1b[1m", "\x1b[22m"


@contextmanager
def shown_early(sign: str, out: TextIO | None = None) -> Iterator[None]:
    """Shows the sign until the prompt is drawn in its place; keys pressed meanwhile wait for the prompt.

    Nothing is shown where input or output is no terminal.
    """
    out = out or sys.stdout
    if not (sign and sys.stdin.isatty() and out.isatty()):
        yield
        return
    with _keys_kept():
        out.write(f"{BOLD}{sign}{USUAL}")
        out.flush()
        try:
            yield
        finally:
            out.write(ERASED)
            out.flush()


@contextmanager
def _keys_kept() -> Iterator[None]:
    """Keys are neither echoed nor acted upon (Ctrl-C too): the prompt reads all of them, in order."""
    try:
        import termios
    except ImportError:  # Windows keeps them by itself
        yield
        return
    before = termios.tcgetattr(sys.stdin)
    kept = [*before]
    kept[0] &= ~termios.ICRNL
    kept[3] &= ~(termios.ECHO | termios.ICANON | termios.ISIG)
    termios.tcsetattr(sys.stdin, termios.TCSANOW, kept)
    try:
        yield
    finally:
        with suppress(termios.error):
            termios.tcsetattr(sys.stdin, termios.TCSANOW, before)
