"""One typed line -> the questions in it, each to be answered in turn."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import lru_cache
from itertools import pairwise

from assistant.language.clean import MAX_CHARACTERS
from assistant.language.small_words import small_words

_MARKS = re.compile(r"(?<![?!])[?!]++(?=\s|$)")  # possessive: a row of marks is looked at once
_WORD = re.compile(r"\w{2,}|\d")
FEWEST_WORDS = 3

Asks = Callable[[str], bool]


def questions_in(typed: str, asks: Asks, asks_on: Asks) -> list[str]:
    """The questions of a line in order; the whole line where they do not each ask by themselves.

    What stands before a question mark belongs to its question, and so does a remark after the last one.
    `asks` tells whether a text is a question with all it needs, `asks_on` whether it is one of what
    stands (`how many bottles`).
    """
    parts = _parts(typed) if len(typed) <= MAX_CHARACTERS else []
    first, *others = list(dict.fromkeys(parts)) or [typed]
    if others and asks(first) and all(asks(part) or asks_on(part) for part in others):
        return [first, *others]
    return [typed]


def _parts(typed: str) -> list[str]:
    parts: list[str] = []
    for piece, joined in _pieces(typed):
        part = piece.strip()
        whole = joined or (part.endswith(("?", "!")) and len(_WORD.findall(part)) >= FEWEST_WORDS)
        if parts and not whole:
            parts[-1] = f"{parts[-1]} {part}".strip()
        elif part:
            parts.append(part)
    return parts


def _pieces(typed: str) -> Iterator[tuple[str, bool]]:
    """Pieces up to a question mark or the words that join another question, and whether they do."""
    ends = [marks.end() for marks in _MARKS.finditer(typed) if "?" in marks[0]]
    for start, end in pairwise((0, *ends, len(typed))):
        first, *joined = _joining().split(typed[start:end])
        yield first, False
        yield from ((piece, True) for piece in joined)


@lru_cache(maxsize=1)
def _joining() -> re.Pattern[str]:
    words = "|".join(sorted(map(re.escape, small_words()["asks-also"])))
    behind = "|".join(sorted(map(re.escape, small_words()["behind-also"])))
    return re.compile(rf",? and (?=(?:{words})\b)|,? (?:and )?also,? (?=(?:{behind})\b)", re.IGNORECASE)
