"""Mends misspelt words, and only those: a word that is English or known is never touched.

The word list and the distance library are loaded on the first word that needs them.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache

SHORTEST = 4
_BRITISH = (
    (re.compile(r"our(?=(s|ed|ing|ful|ite|ites|able|er|ers)?$)"), "or"),
    (re.compile(r"(?<=[iy])s(?=(e|es|ed|ing|er|ers)$)"), "z"),
)
_SOUNDS = (
    ("ph", "f"), ("sh", "ch"), ("ck", "k"), ("c", "k"), ("q", "k"), ("z", "s"), ("g", "j"), ("v", "w"),
    ("x", "s"),
)  # fmt: skip


@lru_cache(maxsize=1)
def english() -> frozenset[str]:
    """A large list of English words (read on first need)."""
    from spellchecker import SpellChecker

    return frozenset(SpellChecker(language="en", distance=1).word_frequency.dictionary)


def is_english(word: str) -> bool:
    """Whether the folded word, or its American twin, is English."""
    american = word
    for british, twin in _BRITISH:
        american = british.sub(twin, american)
    return bool({word, american, f"{word}s"} & english())


class Speller:
    """Finds the known word a misspelt one was meant to be."""

    def __init__(self, words: Iterable[str]) -> None:
        self._words = sorted(w for w in words if len(w) >= SHORTEST and w.isalpha())
        self._known = frozenset(self._words)

    def mend(self, word: str) -> tuple[str, ...]:
        """Known words nearest to a misspelt one, best first; empty when none is near enough."""
        if len(word) < SHORTEST or word in self._known or not word.isalpha():
            return ()
        from rapidfuzz import process
        from rapidfuzz.distance import OSA

        found = process.extract(word, self._words, scorer=OSA.distance, score_cutoff=_reach(word), limit=12)
        near = [(int(d), _strangeness(word, w), w) for w, d, _ in found if _plausible(word, w, int(d))]
        near.sort()
        return tuple(w for d, _, w in near if d == near[0][0])


def _reach(word: str) -> int:
    return 1 if len(word) <= 5 else 2 if len(word) <= 9 else 3


def _plausible(word: str, other: str, distance: int) -> bool:
    """Starts alike, and where half the letters' worth of slips is needed, sounds alike too."""
    if word[0] != other[0] and _sound(word)[:2] != _sound(other)[:2]:
        return False
    from rapidfuzz.distance import OSA

    if distance <= max(1, len(word) // 4):
        return True
    return OSA.distance(_sound(word), _sound(other)) <= (len(word) >= 9)


def _strangeness(word: str, other: str) -> int:
    """How differently two words sound and start: breaks ties between equally near words."""
    from rapidfuzz.distance import OSA

    return OSA.distance(_sound(word), _sound(other)) + (word[0] != other[0])


def _sound(word: str) -> str:
    for letters, sound in _SOUNDS:
        word = word.replace(letters, sound)
    doubled = [c for i, c in enumerate(word) if i == 0 or c != word[i - 1]]
    return "".join(c for i, c in enumerate(doubled) if i == 0 or c not in "aeiouyh")


def runs_together(words: Sequence[str]) -> str:
    """Two typed pieces as one word (`shar donnay`)."""
    return "".join(words)
