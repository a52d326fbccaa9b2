"""Finds the known words a misspelt one may have been meant for, each with what the slip costs.

A slip of the finger to the next key, a doubled letter, a vowel for a vowel cost less than a strange
letter; words that sound alike by the letter groups of any language of the names cost little.
The word list and the distance library are loaded on the first word that needs them.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from pathlib import Path

from assistant.knowledge.cache import cached, content_key
from assistant.language import word_list
from assistant.language.by_sound import BySound
from assistant.language.remembering import remembered
from assistant.language.slipping import NEVER, consonants, slip_cost, start_of
from assistant.language.sounding import Sounds, apart
from assistant.language.word_list import WordList, shelved

SHORTEST, LONG = 4, 6
MARGIN = 0.09  # words whose costs differ by less are equally likely
LONGEST_SLIP = 30
HEARD, LOOKS = 0.35, 0.3  # what it costs to sound the same and be spelt otherwise, and to look otherwise
STRANGEST, SHORT_SLIP = 1.8, 2.5
JUST_SO = 1.2  # how otherwise at most what sounds just so counts as spelt (`barreek` for barrique)
SHORT_WORD, BY_LETTER = 0.85, 0.17  # what a slip may cost in a word of up to five letters; for each of more
LIKE = 0.2  # slips for each letter below which words look alike
# How differently what does not may sound, for each letter, and how much less for each slip in one: a name
# that is often asked for, and another.
OFF, OFF_SELDOM = (0.05, 0.08), (0.02, 0.1)
ONE_VOWEL = 0.12  # how differently one vowel for another sounds
ENDING = 3
VOWELS_OFF = 0.05  # how differently, for each letter, what has the same consonants may sound
_MOST = 8
_BRITISH = (
    (re.compile(r"our(?=(s|ed|ing|ful|ite|ites|able|er|ers)?$)"), "or"),
    (re.compile(r"(?<=[iy])s(?=(e|es|ed|ing|er|ers)$)"), "z"),
)


@lru_cache(maxsize=1)
def english() -> WordList:
    """A large list of English words (read on first need, from the cache where it was read before)."""
    import spellchecker

    version = content_key([Path(word_list.__file__)]) + str(getattr(spellchecker, "__version__", ""))
    return WordList(cached("english", version, _english_words))


def _english_words() -> dict[str, str]:
    from spellchecker import SpellChecker

    return shelved(SpellChecker(language="en", distance=1).word_frequency.dictionary)


def everyday(at_least: int = 1000) -> frozenset[str]:
    """English words counted so often in the list's texts that they are sure to be read as English (slow)."""
    from spellchecker import SpellChecker

    counts = SpellChecker(language="en", distance=1).word_frequency.dictionary
    return frozenset(word for word, count in counts.items() if count >= at_least)


def is_english(word: str) -> bool:
    """Whether the folded word, or its American twin, is English."""
    american = word
    for british, twin in _BRITISH:
        american = british.sub(twin, american)
    full = f"{word[:-1]}ie" if word.endswith("y") else word  # `bry` is the stem of `brie`
    plural = word if word.endswith(("s", "u", "i")) else f"{word}s"  # `asparagu` is no stem of `asparagus`
    known = english()
    return any(form in known for form in (word, american, full, plural))


class Speller:
    """Finds the known words a misspelt one may have been meant for; `heard` has the names by their bones."""

    def __init__(
        self,
        words: Iterable[str],
        sounds: Sounds | None = None,
        heard: BySound | None = None,
    ) -> None:
        self._known = frozenset(w for w in words if len(w) >= SHORTEST and w.isalpha())
        self._by_start: dict[tuple[str, int], list[str]] = {}  # and by the number of letters
        for word in sorted(self._known):
            self._by_start.setdefault((start_of(word[0]), len(word)), []).append(word)
        self._firsts = sorted({word[0] for word in self._known})
        self._sounds, self.heard = sounds, heard or BySound({})
        self._remembered = remembered(self._nearest, 1024)

    def mend(self, word: str) -> tuple[str, ...]:
        """The known words likeliest meant, all equally likely; empty when none is near enough."""
        found = self.near(word)
        return tuple(other for cost, other in found if cost <= found[0][0] + MARGIN)

    def near(self, word: str, pieces: Sequence[str] = ()) -> list[tuple[float, str]]:
        """(cost of the slip, known word), the cheapest first; `pieces`: the words as typed apart."""
        return list(self._remembered(word, tuple(pieces)))

    def _nearest(self, word: str, pieces: tuple[str, ...]) -> list[tuple[float, str]]:
        if not SHORTEST <= len(word) <= LONGEST_SLIP or word in self._known or not word.isalpha():
            return []
        found = {other: slip_cost(word, other) for other in self._spelt_like(word, len(pieces) < 2)}
        for other, off in self.sounding_like(pieces or (word,)):
            slip = found.get(other) or slip_cost(word, other)
            if not _believable(word, other, slip, off):
                continue
            looks = min(slip, STRANGEST if off or consonants(other) < 3 else JUST_SO)
            found[other] = min(HEARD + off + LOOKS * looks, found.get(other, slip))
        near = (
            (c, other)
            for other, c in found.items()
            if c <= allowed(max(len(word), len(other))) and not _derived(word, other)
        )
        return sorted(near)[:_MOST]

    def far_off(self, pieces: Sequence[str], other: str, familiar: bool) -> bool:
        """Whether the pieces look unlike a name that is known by its sound, and sound unlike it as well."""
        word = "".join(pieces)
        strange = slip_cost(word, other) / len(word) - LIKE
        off = self.off(pieces).get(other, 0.0) if strange > 0 else 0.0
        most, less = OFF if familiar else OFF_SELDOM
        return off > max(0.0, most - less * strange) * len(word)

    def off(self, pieces: Sequence[str]) -> dict[str, float]:
        """How differently the names with the same consonants sound, by name."""
        found: dict[str, float] = {}
        for name, off in self.sounding_like(pieces):
            found[name] = min(off, found.get(name, NEVER))
        return found

    def _spelt_like(self, word: str, alone: bool) -> list[str]:
        from rapidfuzz import process
        from rapidfuzz.distance import OSA

        reach = _reach(word)
        starts = dict.fromkeys((start_of(word[0]), start_of(word[1])))
        letters = range(len(word) - reach, len(word) + reach + 1)
        lists = [[w for n in letters for w in self._by_start.get((start, n), ())] for start in starts]
        found = [
            hit
            for words in lists
            for hit in process.extract(word, words, scorer=OSA.distance, score_cutoff=reach, limit=2 * _MOST)
        ]
        if alone and not found and len(word) >= LONG:  # one slip, and that in the first letter
            known = (first + rest for rest in (word[1:], word) for first in self._firsts)
            return [other for other in known if other in self._known][:_MOST]
        return [other for other, _, _ in sorted(found, key=lambda hit: hit[1])[: 3 * _MOST]]

    def sounding_like(self, pieces: Sequence[str], fewest: int = 1) -> Iterator[tuple[str, float]]:
        """(name, how differently it sounds) of names with the same consonants, at least so many.

        With two consonants only, the vowels must agree as well.
        """
        letters = sum(map(len, pieces))
        for key, sound in self._sounds.sought(pieces) if self._sounds else ():
            consonants = len(key) - 1  # behind the number of the language
            limit = VOWELS_OFF * letters if consonants > 2 else 0.13 if consonants == 2 else 0.0
            for name, other in self.heard.of(key[1:], key[0]) if limit and consonants >= fewest else ():
                if (off := apart(sound, other)) <= limit:
                    yield name, off


def allowed(letters: int) -> float:
    """What a slip in a word of so many letters may cost: in short words only the likeliest slips."""
    return SHORT_WORD if letters <= 5 else min(2.9, BY_LETTER * letters)


def _believable(word: str, other: str, slip: float, off: float) -> bool:
    """Whether what looks otherwise sounds near enough: `zobo` sounds like too many words."""
    strange, fewest = slip / len(word), min(map(consonants, (word, other)))
    if strange <= LIKE or (off == 0.0 and len(word) > 5):
        return True
    if fewest < 3:
        return off == 0.0 and slip <= SHORT_SLIP
    return fewest > 3 or off <= ONE_VOWEL


def _derived(word: str, other: str) -> bool:
    """Whether a word is another one with an ending: `andouillette` is no slip for `andouille`."""
    return len(word) - len(other) >= ENDING and word.startswith(other[:-1])


def _reach(word: str) -> int:
    return 1 if len(word) <= 4 else 2 if len(word) <= 8 else 3 if len(word) <= 12 else 4
