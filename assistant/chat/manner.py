"""How the terminal is written to: redrawn or line by line, weighted or not, and how wide."""

from __future__ import annotations

import shutil
from collections.abc import Mapping
from dataclasses import dataclass

PLAIN = "GOESWITH_PLAIN"


@dataclass(frozen=True, slots=True)
class Manner:
    """`plain`: nothing is drawn twice, for screen readers and dumb terminals; no paging, no bottom line.

    `wraps`: answers are broken at words, where a terminal would break them anywhere; not where they go into a
    file, or to a screen reader with its own variable set: it reads a sentence better in one piece.
    `dims`: what is not said aloud is set back. No colour is ever used, so none can vanish on its ground.
    """

    plain: bool = False
    wraps: bool = True
    dims: bool = True

    @property
    def columns(self) -> int:
        """Columns of the terminal now."""
        return shutil.get_terminal_size().columns

    @property
    def lines(self) -> int:
        """Lines of the terminal now."""
        return shutil.get_terminal_size().lines


def manner_of(environment: Mapping[str, str], plain: bool = False, terminal: bool = False) -> Manner:
    """The manner that an environment asks for; `plain` is the option of the command line.

    `terminal`: what is said goes to one.
    """
    told = environment.get(PLAIN, "0") not in ("", "0")
    dumb = environment.get("TERM", "").lower() in ("dumb", "unknown")
    wraps = not told and (terminal or not plain)
    return Manner(plain=plain or told or dumb, wraps=wraps, dims=not environment.get("NO_COLOR"))
