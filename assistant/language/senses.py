"""Names that stand for something else in a turn of phrase: `date night`, `a toast`, `warm as soup`.

Which words, and in which turns, stands in corpus/language/other-senses.toml.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from spacy.tokens import Doc

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Cue, Lines
from assistant.language.data import read_data
from assistant.language.fold import fold, stem
from assistant.language.frame import Reading

NO_THINGS = ("term", "aroma", "method")  # what keeps its sense in any turn of phrase


class Senses:
    """The turns of phrase, ready to find in a Doc. Raises KnowledgeError for a broken file."""

    def __init__(self) -> None:
        self._lines: dict[str, Lines]
        self._behind: Lines
        self._verbs: dict[str, Lines]
        self._towns: Lines
        self._lines, self._behind, self._verbs, self._towns = read_data(
            corpus_dir() / "language" / "other-senses.toml", _read
        )

    def elsewhere(self, doc: Doc) -> frozenset[int]:
        """Positions of the words that name nothing to eat, to drink or to come from."""
        typed = [fold(token.text) for token in doc]
        stems = [stem(word) for word in typed]
        both = (*_phrases(self._lines, typed, stems), *_phrases(self._verbs, typed, stems))
        towns = (places[-1] for places in self._towns.find(stems))
        return frozenset((*both, *_next(self._behind, stems), *towns))

    def verbs(self, doc: Doc) -> frozenset[int]:
        """Positions of the words that are not even a term of the trade (`what must I buy`)."""
        typed = [fold(token.text) for token in doc]
        return frozenset(_phrases(self._verbs, typed, [stem(word) for word in typed]))


def lies_in(reading: Reading, elsewhere: frozenset[int]) -> bool:
    """Whether a name of one word stands for something else where it stands."""
    return reading.end - reading.start == 1 and reading.start in elsewhere and reading.kind not in NO_THINGS


def undisturbed(cues: Iterable[Cue], readings: Iterable[Reading]) -> list[Cue]:
    """Cues that do not lie wholly inside a name (`order` in `mail order cheese` does)."""
    spans = [(r.start, r.end) for r in readings if r.end - r.start > 1]
    return [c for c in cues if not any(s <= c.start and c.end <= e for s, e in spans)]


def _phrases(lines: Mapping[str, Lines], typed: list[str], stems: list[str]) -> Iterator[int]:
    for word in lines.keys() & set(typed):
        for places in lines[word].find(stems):
            yield from (i for i in places if typed[i] == word)


def _next(lines: Lines, stems: list[str]) -> Iterator[int]:
    return (places[-1] + 1 for places in lines.find(stems))


def _read(
    tables: Mapping[str, Any],
) -> tuple[dict[str, Lines], Lines, dict[str, Lines], Lines]:
    words, verbs = (
        {fold(word): Lines(lines) for word, lines in tables[table].items()} for table in ("words", "verbs")
    )
    towns = Lines([*_ended(tables["towns"]), *_ended(tables["alike"])])
    return words, Lines(tables["behind"]["lines"]), verbs, towns


def _ended(table: Mapping[str, Any]) -> Iterator[str]:
    """The lines, each with the names of towns behind it."""
    names = "|".join(table["names"])
    return (f"{line} {names}" for line in table["lines"])
