"""What it takes to make one word of another: about 1 for each strange letter, less for likely slips.

The distance library is loaded on the first word that needs it.
"""

from __future__ import annotations

import re
from functools import lru_cache

from assistant.language.keyboard import are_neighbours

SHUFFLED, ONE_DROPPED, ALSO_DROPPED, NEVER = 0.8, 0.65, 0.15, 99.0
SWAPPED, FIRST = 0.55, 0.4  # two letters in each other's place; a slip in the first letter, besides
MORE = 0.1  # a letter too many is rarer than one that was left away
_CONSONANTS = re.compile(r"([^aeiouyhw])\1*")
_VOWEL = re.compile("[aeiou]")
_VOWELS = frozenset("aeiouy")
_VOICED = tuple(map(set, ("bp", "dt", "gk", "fv", "sz")))  # and unvoiced, easily taken for each other
# Both may be written c, but neither is heard for the other.
_HARD_AND_SOFT = tuple(map(set, ("ks", "kz", "qs", "qz")))
_START = {"k": "c", "q": "c", "s": "c", "z": "c", "g": "j", "v": "w", "x": "c"}


@lru_cache(maxsize=4096)
def slip_cost(word: str, other: str) -> float:
    """What it takes to make one word of the other: about 1 for each strange letter, less for likely slips."""
    return min(_edits(word, other), _shuffled(word, other), _bare(word, other))


def _shuffled(word: str, other: str) -> float:
    """The cost where all letters are there behind the first, one at the wrong place: `satek`."""
    same = word[0] == other[0] and len(word) == len(other) > 4 and sorted(word) == sorted(other)
    return SHUFFLED if same else NEVER


def _bare(word: str, other: str) -> float:
    """The cost where vowels were left away, as in short messages: `chckn`."""
    dropped = len(other) - len(word)
    if dropped < 2 or consonants(word) < 3 or _VOWEL.sub("", word) != _VOWEL.sub("", other):
        return NEVER
    letters = iter(other)
    return ONE_DROPPED + ALSO_DROPPED * (dropped - 1) if all(c in letters for c in word) else NEVER


def _edits(word: str, other: str) -> float:
    from rapidfuzz.distance import OSA, Levenshtein

    steps = Levenshtein.editops(word, other)
    swaps = len(steps) - OSA.distance(word, other)
    nearer = _put_right(word, other) if swaps else word
    if swaps and Levenshtein.distance(nearer, other) < len(steps):
        return SWAPPED + (FIRST / 2 if word[0] != nearer[0] else 0.0) + _edits(nearer, other)
    return sum(_step(step.tag, step.src_pos, step.dest_pos, word, other) for step in steps)


def _put_right(word: str, other: str) -> str:
    """The word with those two neighbours swapped that bring it nearest to the other."""
    from rapidfuzz.distance import Levenshtein

    ways = (word[:i] + word[i + 1] + word[i] + word[i + 2 :] for i in range(len(word) - 1))
    return min(ways, key=lambda way: (Levenshtein.distance(way, other), way))


def _step(tag: str, at: int, to: int, word: str, other: str) -> float:
    first = FIRST if at == 0 or to == 0 else 0.0
    if tag == "replace":
        return _swap(word[at], other[to]) + (first if start_of(word[at]) != start_of(other[to]) else 0.0)
    text, place = (word, at) if tag == "delete" else (other, to)
    letter = text[place]
    if start_of(letter) in map(start_of, text[max(0, place - 1) : place] + text[place + 1 : place + 2]):
        return 0.35
    return (
        first + (0.65 if letter in "aeiouyh" else 0.9) + (MORE if tag == "delete" and letter != "h" else 0.0)
    )


@lru_cache(maxsize=1024)
def _swap(one: str, other: str) -> float:
    if one in _VOWELS and other in _VOWELS:
        return 0.6
    if start_of(one) == start_of(other) and {one, other} not in _HARD_AND_SOFT:
        return 0.6
    if {one, other} in _VOICED:
        return 0.7
    return 0.75 if are_neighbours(one, other) else 1.0


def start_of(letter: str) -> str:
    """The letter that stands for all with which a name may as well be written."""
    return _START.get(letter, letter)


def consonants(word: str) -> int:
    """How many consonants a word has, a doubled one counted once."""
    return len(_CONSONANTS.findall(word))
