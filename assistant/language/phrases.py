"""Whole phrases that stand for others (`savvy b` for Sauvignon Blanc), replaced in a line of text.

Found by their first word in a dictionary: one regular expression over some 1,700 phrases would take
longer than all the rest of the reading.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from pathlib import Path

from assistant.language.data import telling

Longer = Callable[[str, str, str], bool]
_WORD = re.compile(r"[\w'-]+")


def read_phrases(file: Path) -> dict[str, str]:
    """The phrases of a file of `typed<TAB>meant` lines. Raises KnowledgeError for a broken one."""
    with telling(file):
        rows = (line.split("\t") for line in file.read_text("utf-8").splitlines() if line[:1] != "#")
        return dict(rows)


class Phrases:
    """Phrases by what they stand for, ready to be replaced; case does not matter.

    `longer` tells of a phrase, what it means and what stands behind it, whether it begins a name and stays.
    """

    def __init__(self, meant: Mapping[str, str], longer: Longer | None = None) -> None:
        self._longer = longer
        self._meant = {typed.lower(): right for typed, right in meant.items()}
        self._starts: dict[str, list[str]] = {}
        for typed in sorted(self._meant, key=len, reverse=True):
            if first := _WORD.match(typed):
                self._starts.setdefault(first[0], []).append(typed)

    def replaced(self, text: str) -> str:
        """The text with each phrase as it was meant, the longest first."""
        pieces: list[str] = []
        done = 0
        for word in _WORD.finditer(text):
            typed = self._at(text, word) if word.start() >= done else None
            if typed is not None:
                pieces += [text[done : word.start()], self._meant[typed]]
                done = word.start() + len(typed)
        return "".join([*pieces, text[done:]])

    def _at(self, text: str, word: re.Match[str]) -> str | None:
        phrases = self._starts.get(word[0].lower())
        if not phrases:
            return None
        start = word.start()
        return next((phrase for phrase in phrases if self._stands(text, start, phrase)), None)

    def _stands(self, text: str, start: int, phrase: str) -> bool:
        end = start + len(phrase)
        if text[start:end].lower() != phrase or _WORD.match(text, end):
            return False
        return not (self._longer and self._longer(phrase, self._meant[phrase], text[end:]))
