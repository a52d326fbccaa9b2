"""Cues: turns of phrase that hint at what is asked, kept as data in corpus/language/cues.toml.

A cue line is a row of words; `a|b` are alternatives, a trailing `?` makes a word optional and
`*` stands for up to three words. Words are folded like everything else.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from spacy.matcher import Matcher
from spacy.tokens import Doc
from spacy.vocab import Vocab

from assistant.language.fold import fold, stem

GAP = {"OP": "{0,3}"}


@dataclass(frozen=True, slots=True)
class Cue:
    """A cue found in the text: its name and the tokens it covers (end exclusive)."""

    name: str
    start: int
    end: int
    fixed: tuple[int, ...]


def pattern(line: str) -> list[dict[str, Any]]:
    """One cue line as a spaCy token pattern."""
    return [_token(word) for word in line.split()]


def _token(word: str) -> dict[str, Any]:
    if word == "*":
        return dict(GAP)
    optional = word.endswith("?") and len(word) > 1
    choices = [stem(fold(w)) for w in word.rstrip("?").split("|")]
    token: dict[str, Any] = {"NORM": {"IN": choices} if len(choices) > 1 else choices[0]}
    return token | ({"OP": "?"} if optional else {})


class CueBook:
    """All cues, ready to find in a Doc."""

    def __init__(self, cues: Mapping[str, list[str]], vocab: Vocab) -> None:
        self._matcher = Matcher(vocab)
        self.lines = cues
        self.words = {w for lines in cues.values() for line in lines for w in _words(line)}
        for name, lines in cues.items():
            self._matcher.add(name, [pattern(line) for line in lines])
        self._fixed = {name: {w for x in lines for w in _words(x)} for name, lines in cues.items()}

    def find(self, doc: Doc) -> list[Cue]:
        """All cues in the text, in order, longest first at the same place."""
        found = set(self._matcher(doc))
        cues = []
        for name_id, start, end in sorted(found, key=lambda m: (m[1], -m[2], m[0])):
            name = doc.vocab.strings[name_id]
            words = self._fixed[name]
            fixed = tuple(i for i in range(start, end) if doc[i].norm_ in words)
            cues.append(Cue(name, start, end, fixed))
        return cues


def _words(line: str) -> list[str]:
    pieces = (w for word in line.split() if word != "*" for w in word.rstrip("?").split("|"))
    return [stem(fold(w)) for w in pieces]


def read_cues(file: Path) -> dict[str, list[str]]:
    """The cue lines of a TOML file, by cue name."""
    with file.open("rb") as handle:
        tables = tomllib.load(handle)
    return {name: list(table["lines"]) for name, table in tables.items()}
