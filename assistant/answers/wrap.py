"""Breaks printed lines at words, so that narrow terminals do not cut them."""

from __future__ import annotations

import textwrap

NARROWEST = 20


def wrapped(text: str, width: int) -> str:
    """The text with every line at most `width` columns wide; what fits is left as it is."""
    width = max(NARROWEST, width)
    return "\n".join(piece for line in text.split("\n") for piece in _pieces(line, width))


def _pieces(line: str, width: int) -> list[str]:
    if len(line) <= width:
        return [line]
    indent = line[: len(line) - len(line.lstrip())]
    return textwrap.wrap(line, width, subsequent_indent=indent + "  ", break_on_hyphens=False)
