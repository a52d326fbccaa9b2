"""Finds the words that make a name of several words with their neighbours: `mint jlly`, `sparking wine`.

A neighbour that is sure leaves so few words open that a likely slip is sure as well, in a short word too.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence, Set
from itertools import pairwise

from spacy.lang.en.stop_words import STOP_WORDS

from assistant.language.slipping import slip_cost

SHORT, REACH = 5, 2  # letters of a word in which one slip may be, and slips in a longer one

GAP = "*"


class Completions:
    """The words of names by the words beside them."""

    def __init__(self, names: Iterable[str]) -> None:
        split = [name.split() for name in names]
        pairs = sorted({pair for words in split for pair in pairwise(words)})
        self._behind = _grouped(pairs)
        self._before = _grouped((next_, one) for one, next_ in pairs)
        self._between = _grouped(sorted({gap for words in split for gap in _gaps(words)}))

    def beside(self, before: Iterable[str], behind: Iterable[str]) -> set[str]:
        """What may stand behind the one or before the other of two words (or none)."""
        found = {w for one in before for w in self._behind.get(one, "").split()}
        return found | {w for one in behind for w in self._before.get(one, "").split()}

    def around(self, words: Sequence[str], at: int, apart: Set[str]) -> set[str]:
        """What may stand at a place of a text beside its neighbours; what stands `apart` is no such one."""
        ends = (words[max(0, at - 1) : at], words[at + 1 : at + 2])
        return self.beside(*([one for one in end if one not in apart] for end in ends))

    def between(self, words: Sequence[str], at: int) -> set[str]:
        """What makes three words of a name with two of the neighbours."""
        one, two = [*words[at + 1 : at + 3], "", ""][:2]
        before, first = [*words[max(0, at - 2) : at][::-1], "", ""][:2]
        gaps = (f"{GAP} {one} {two}", f"{before} {GAP} {one}", f"{first} {before} {GAP}")
        found = filter(None, map(self._between.get, gaps))
        return {word for text in found for word in text.split()}

    @staticmethod
    def near(word: str, beside: Iterable[str]) -> list[tuple[float, str]]:
        """(cost of the slip, word) of those beside that look like the word."""
        from rapidfuzz import process
        from rapidfuzz.distance import OSA

        reach = 1 if len(word) < SHORT else REACH
        found = process.extract(word, sorted(beside), scorer=OSA.distance, score_cutoff=reach, limit=None)
        return sorted((slip_cost(word, other), other) for other, _, _ in found if other.isalpha())


def _gaps(words: Sequence[str]) -> Iterator[tuple[str, str]]:
    """(two words with the gap between, before or behind them, what stands in the gap) of all three words."""
    for start in range(len(words) - 2):
        for gap in range(3):
            three = list(words[start : start + 3])
            word, three[gap] = three[gap], GAP
            if not STOP_WORDS.issuperset(three[:gap] + three[gap + 1 :]):  # `on the plate`
                yield " ".join(three), word


def _grouped(pairs: Iterable[tuple[str, str]]) -> dict[str, str]:
    """The second words by the first, in one text each: that takes a fourth of the memory of sets."""
    groups: dict[str, list[str]] = {}
    for one, other in pairs:
        groups.setdefault(one, []).append(other)
    return {one: " ".join(others) for one, others in groups.items()}
