"""Names that stand for something else in a turn of phrase: `date night`, `a toast`, `warm as soup`.

Which words, and in which turns, stands in corpus/language/other-senses.toml.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from spacy.tokens import Doc

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Lines
from assistant.language.data import read_data
from assistant.language.fold import fold, stem


class Senses:
    """The turns of phrase, ready to find in a Doc. Raises KnowledgeError for a broken file."""

    def __init__(self) -> None:
        self._lines: dict[str, Lines]
        self._behind: Lines
        self._lines, self._behind = read_data(corpus_dir() / "language" / "other-senses.toml", _read)

    def elsewhere(self, doc: Doc) -> frozenset[int]:
        """Positions of the words that name nothing to eat, to drink or to come from."""
        typed = [fold(token.text) for token in doc]
        stems = [stem(word) for word in typed]
        return frozenset((*self._phrases(typed, stems), *_next(self._behind, stems)))

    def _phrases(self, typed: list[str], stems: list[str]) -> Iterator[int]:
        for word in self._lines.keys() & set(typed):
            for places in self._lines[word].find(stems):
                yield from (i for i in places if typed[i] == word)


def _next(lines: Lines, stems: list[str]) -> Iterator[int]:
    return (places[-1] + 1 for places in lines.find(stems))


def _read(tables: Mapping[str, Any]) -> tuple[dict[str, Lines], Lines]:
    words = {fold(word): Lines(lines) for word, lines in tables["words"].items()}
    return words, Lines(tables["behind"]["lines"])
