"""A line that tells how far a long piece of work is, on a terminal only and only past the first second."""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from typing import TextIO

FIRST = 1.0  # seconds of work that nobody needs to be told of
ERASED = "\r\x1b[K"

Told = Callable[[int, int], None]


def silent(done: int, of: int) -> None:
    """Tells nothing."""


class Waiting:
    """Rewrites one line on standard error; `clear` takes it away again."""

    def __init__(
        self, line: str, out: TextIO | None = None, clock: Callable[[], float] = time.monotonic
    ) -> None:
        self._line, self._out, self._clock = line, out or sys.stderr, clock
        self._since, self._shown = clock(), False

    def __call__(self, done: int, of: int) -> None:
        """So many of so many pieces are done."""
        if self._out.isatty() and self._clock() - self._since >= FIRST:
            self._out.write(ERASED + self._line.format(done=done, of=of))
            self._out.flush()
            self._shown = True

    def clear(self) -> None:
        """Takes the line away."""
        if self._shown:
            self._out.write(ERASED)
            self._out.flush()
