"""Finds the words that make a name of several words with their neighbours: `mint jlly`, `sparking wine`.

A neighbour that is sure leaves so few words open that a likely slip is sure as well, in a short word too.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence, Set
from itertools import pairwise

from assistant.language.spelling import slip_cost

SHORT, REACH = 5, 2  # letters of a word in which one slip may be, and slips in a longer one


class Completions:
    """The words of names by the words beside them."""

    def __init__(self, names: Iterable[str]) -> None:
        pairs = sorted({pair for name in names for pair in pairwise(name.split())})
        self._behind = _grouped(pairs)
        self._before = _grouped((next_, one) for one, next_ in pairs)

    def beside(self, before: Iterable[str], behind: Iterable[str]) -> set[str]:
        """What may stand behind the one or before the other of two words (or none)."""
        found = {w for one in before for w in self._behind.get(one, "").split()}
        return found | {w for one in behind for w in self._before.get(one, "").split()}

    def near(self, words: Sequence[str], at: int, apart: Set[str]) -> list[tuple[float, str]]:
        """(cost of the slip, word) of what may stand at a place of a text beside its neighbours.

        What stands `apart` is no such neighbour.
        """
        from rapidfuzz import process
        from rapidfuzz.distance import OSA

        ends = (words[max(0, at - 1) : at], words[at + 1 : at + 2])
        beside = self.beside(*([one for one in end if one not in apart] for end in ends))
        word = words[at]
        reach = 1 if len(word) < SHORT else REACH
        found = process.extract(word, sorted(beside), scorer=OSA.distance, score_cutoff=reach, limit=None)
        return sorted((slip_cost(word, other), other) for other, _, _ in found if other.isalpha())


def _grouped(pairs: Iterable[tuple[str, str]]) -> dict[str, str]:
    """The second words by the first, in one text each: that takes a fourth of the memory of sets."""
    groups: dict[str, list[str]] = {}
    for one, other in pairs:
        groups.setdefault(one, []).append(other)
    return {one: " ".join(others) for one, others in groups.items()}
