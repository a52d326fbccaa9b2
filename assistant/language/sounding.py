"""How words sound, so that `poo yee foosay` can be found to mean Pouilly-Fuissé.

A word is read as English, French, Italian, Spanish and German would read it: names come from all of
them, and so do the respellings of those who have only heard them. Two words sound alike where any two of
their readings have the same consonants in the same order; how much their vowels differ is counted.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from assistant.language.remembering import remembered

VOWELS = "aeiou"
# Voiced and unvoiced are heard alike.
_ALIKE = str.maketrans(
    {"b": "p", "d": "t", "g": "k", "v": "f", "S": "s", "a": "", "e": "", "i": "", "o": "", "u": ""}
)
ONE_VOWEL = str.maketrans(dict.fromkeys(VOWELS, "a"))
_DOUBLED = re.compile(r"(.)\1+")

Rules = Mapping[str, Sequence[Sequence[str]]]


class Sounds:
    """Readings of words by the letter groups of several languages."""

    def __init__(self, rules: Rules) -> None:
        self._tongues = [_Tongue(pairs) for pairs in rules.values()]
        self._remembered = remembered(self._sought, 1024)

    def readings(self, words: Sequence[str]) -> list[str]:
        """How the words sound in one breath in each language, in the order of the rules (English first)."""
        return [_once("".join(map(tongue.read, words))) for tongue in self._tongues]

    def entries(self, words: Sequence[str], english: bool) -> list[tuple[str, str]]:
        """(bones, sound) under which a name is kept; English words are read as English alone."""
        readings = self.readings(words)
        return [(_bones(n, sound), sound) for n, sound in enumerate(readings[:1] if english else readings)]

    def sought(self, words: Sequence[str]) -> list[tuple[str, str]]:
        """(bones, sound) under which typed words are looked up: English respells every language."""
        return list(self._remembered(tuple(words)))

    def _sought(self, words: tuple[str, ...]) -> list[tuple[str, str]]:
        readings = self.readings(words)
        respelt = [(_bones(n, readings[0]), readings[0]) for n in range(len(readings))]
        return list(dict.fromkeys(respelt + [(_bones(n, s), s) for n, s in enumerate(readings)]))


class _Tongue:
    """The letter groups of one language."""

    def __init__(self, pairs: Sequence[Sequence[str]]) -> None:
        self._letters = re.compile("|".join(f"({letters})" for letters, _ in pairs))
        self._sounds = [sound for _, sound in pairs]
        self.read = remembered(self._read, 4096)

    def _read(self, word: str) -> str:
        return self._letters.sub(lambda m: self._sounds[(m.lastindex or 1) - 1], word)


def _once(sound: str) -> str:
    return _DOUBLED.sub(r"\1", sound)


def _bones(tongue: int, sound: str) -> str:
    """The consonants of a reading, voiced and unvoiced as one, behind the number of its language."""
    return str(tongue) + sound.translate(_ALIKE)


def apart(sound: str, other: str) -> float:
    """How differently two readings with the same bones sound, in slips of one letter."""
    from rapidfuzz.distance import OSA, Levenshtein

    shape, shape2 = sound.translate(ONE_VOWEL), other.translate(ONE_VOWEL)
    steps = OSA.distance(shape, shape2)  # a vowel may stand on the other side of a consonant: `per` for `pre`
    swaps = Levenshtein.distance(shape, shape2) - steps
    consonants = max(0, steps - swaps - abs(len(sound) - len(other)))
    return 0.3 * steps + 0.2 * consonants + 0.12 * max(0, OSA.distance(sound, other) - steps)
