"""One typed line -> the questions in it, each to be answered in turn."""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.language.clean import MAX_CHARACTERS

_QUESTION = re.compile(r".*?\?[?!]*(?=\s|$)|.+$", re.DOTALL)
_WORD = re.compile(r"\w{2,}|\d")
FEWEST_WORDS = 3


def questions_in(typed: str, asks: Callable[[str], bool]) -> list[str]:
    """The questions of a line in order; the whole line where they do not each ask by themselves.

    What stands before a question mark belongs to its question, and so does a remark after the last one.
    `asks` tells whether a text is a question with all it needs.
    """
    parts: list[str] = []
    for part in (found.strip() for found in _QUESTION.findall(typed)):
        if parts and (not part.endswith(("?", "!")) or len(_WORD.findall(part)) < FEWEST_WORDS):
            parts[-1] = f"{parts[-1]} {part}".strip()
        elif part:
            parts.append(part)
    parts = list(dict.fromkeys(parts))
    several = len(parts) > 1 and len(typed) <= MAX_CHARACTERS
    return parts if several and all(map(asks, parts)) else [typed]
