"""One line while something is waited for, past the first second, and taken away again where that can be."""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from typing import TextIO

from assistant.waiting import ERASED, FIRST


class Meanwhile:
    """Called again and again it tells once; in the plain manner the line stays, as nothing is drawn twice."""

    def __init__(
        self,
        line: str,
        plain: bool,
        out: TextIO | None = None,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        self._line, self._plain, self._out, self._clock = line, plain, out or sys.stdout, clock
        self._since, self._shown = clock(), False

    def __call__(self) -> None:
        """Time has gone by."""
        if not self._shown and self._clock() - self._since >= FIRST:
            self._shown = True
            self._out.write(f"{self._line}\n" if self._plain else self._line)
            self._out.flush()

    def clear(self) -> None:
        """Takes the line away."""
        if self._shown and not self._plain:
            self._out.write(ERASED)
            self._out.flush()
