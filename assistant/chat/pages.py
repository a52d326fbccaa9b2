"""Lines laid out as pages, anew for the size that the terminal has when each page is shown."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

Styled = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Row:
    """A row on the screen, and the place of the line that it is a piece of."""

    style: str
    text: str
    of: int


def laid(lines: Sequence[Styled], pieces: Callable[[str], list[str]]) -> list[Row]:
    """The rows of these lines."""
    return [
        Row(style, piece, at) for at, (style, text) in enumerate(lines) for piece in pieces(text)
    ]  # fmt: skip


def behind(lines: Sequence[Styled], rows: Sequence[Row], shown: int) -> list[Styled]:
    """The lines whose rows were not shown yet; of one that was shown in part, the rest of it."""
    left = rows[shown:]
    if not left:
        return []
    first = left[0].of
    if not shown or rows[shown - 1].of != first:
        return list(lines[first:])
    cut = [row for row in left if row.of == first]
    indent = cut[0].text[: len(cut[0].text) - len(cut[0].text.lstrip())]
    return [(cut[0].style, indent + " ".join(row.text.strip() for row in cut)), *lines[first + 1 :]]
