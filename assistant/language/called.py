"""Wines that are named, as the words that lines about wine use: `the malbec` is a `red` and a `wine`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from assistant.knowledge.store import Knowledge
from assistant.language.frame import Reading, Text

Called = tuple[list[str], list[int]]


def as_called(text: Text, words: Mapping[str, str], knowledge: Knowledge) -> Iterator[Called]:
    """The stems of a text with its wines called by each of `words` (by kind), and where each stem stands."""
    kinds = [(reading, _kinds(reading, knowledge)) for reading in text.readings]
    for kind, word in words.items():
        named = {reading.start: reading.end for reading, of in kinds if kind in of}
        if named:
            yield _with(text.stems, named, word)


def _kinds(reading: Reading, knowledge: Knowledge) -> frozenset[str]:
    """The kinds that every wine of this name is of."""
    every = [frozenset(knowledge.wines[style].kinds) for style in knowledge.styles_of(reading.id)]
    return frozenset.intersection(*every) if every else frozenset()


def _with(stems: Sequence[str], named: Mapping[int, int], word: str) -> Called:
    """The stems with one word for each name that starts and ends here."""
    found: list[str] = []
    places: list[int] = []
    end = 0
    for at, stem in enumerate(stems):
        if at >= end:
            end = named.get(at, at)
            found.append(word if at in named else stem)
            places.append(at)
    return found, places
