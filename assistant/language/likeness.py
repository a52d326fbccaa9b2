"""How alike two names sound, by what is easily misheard: a vowel for a vowel, `b` for `p`, `m` for `n`.

Sounds are those of `sounding.py`: consonants as letters, `S` for all of sh, ch and j, vowels a e i o u.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import lru_cache

from assistant.language.by_sound import BySound
from assistant.language.remembering import remembered
from assistant.language.sounding import ONE_VOWEL

VOWELS = frozenset("aeiou")
NEVER = 99.0
# What it costs, in slips of one letter, to hear one sound for another of its class, for any other, or none.
VOWEL, NEAR_VOWEL, NO_VOWEL = 0.15, 0.08, 0.3
IN_CLASS, CONSONANT, NO_CONSONANT, WEAK = 0.25, 0.7, 0.6, 0.3
FIRST = 0.25  # besides, where the first sound differs: the start of a word is heard best
_CLASSES = ("bp", "td", "kg", "fv", "sS", "mn", "fp", "vb")
_CLOSE = ("ei", "ou", "ao", "ae")
_SWALLOWED = frozenset("rhtdn")  # before another consonant and at the end
CHEAPEST = 0.25  # what any slip costs, but for a vowel heard for a vowel
FEWEST = 3  # consonants, of more of which one may be misheard


@lru_cache(maxsize=8192)
def unlike(sound: str, other: str) -> float:
    """The least that was misheard to make one sound of the other, in slips of one letter."""
    row = [0.0]
    for letter in range(len(other)):
        row.append(row[-1] + _missed(other, letter))
    for at in range(len(sound)):
        row = _next_row(row, sound, at, other)
    return row[-1] + (FIRST if sound[:1] != other[:1] else 0.0)


def _next_row(row: Sequence[float], sound: str, at: int, other: str) -> list[float]:
    missed = _missed(sound, at)
    new = [row[0] + missed]
    for to, letter in enumerate(other):
        swapped = row[to] + _swapped(sound[at], letter)
        new.append(min(swapped, row[to + 1] + missed, new[to] + _missed(other, to)))
    return new


def _missed(sound: str, at: int) -> float:
    """What it costs not to hear a sound."""
    letter, after = sound[at], sound[at + 1 : at + 2]
    if letter in VOWELS:
        return NO_VOWEL
    return WEAK if letter in _SWALLOWED and after not in VOWELS else NO_CONSONANT


@lru_cache(maxsize=1024)
def _swapped(one: str, other: str) -> float:
    if one == other:
        return 0.0
    pair = {one, other}
    if pair <= VOWELS:
        return NEAR_VOWEL if any(pair == set(close) for close in _CLOSE) else VOWEL
    if pair & VOWELS:
        return NO_VOWEL + NO_CONSONANT
    return IN_CLASS if any(pair == set(alike) for alike in _CLASSES) else CONSONANT


def like_any(readings: Sequence[str], others: Mapping[str, Sequence[str]], limit: float) -> dict[str, float]:
    """How unlike a word the others sound, by name: all whose slips for each sound are within the limit.

    Readings are those of `Sounds.readings`: a word typed by ear is read as English respells each language.
    """
    from rapidfuzz.distance import Levenshtein

    found: dict[str, float] = {}
    for name, sounds in others.items():
        pairs = {*((readings[0], sound) for sound in sounds), *zip(readings, sounds, strict=False)}
        near = ((one, other) for one, other in pairs if _may_be_within(one, other, limit))
        off = min((_within(one, other, limit, Levenshtein.distance) for one, other in near), default=NEVER)
        if off <= limit:
            found[name] = off
    return found


def _may_be_within(sound: str, other: str, limit: float) -> bool:
    """Whether their lengths allow it: each sound more is a slip at least."""
    one, two = len(sound), len(other)
    return CHEAPEST * abs(one - two) <= limit * max(one, two, 1)


def _within(sound: str, other: str, limit: float, distance: Callable[[str, str], int]) -> float:
    """How unlike two sounds are, for each sound; more than the limit where that is plain to see."""
    longer = max(len(sound), len(other), 1)
    if CHEAPEST * distance(_shape(sound), _shape(other)) > limit * longer:
        return NEVER
    return unlike(sound, other) / longer


class Echoes:
    """Names by their bones (see `sounding.py`), found though one consonant was misheard."""

    def __init__(self, heard: BySound) -> None:
        self._heard = heard
        self._one_off = remembered(self._found_one_off, 1024)

    def alike(self, sought: Iterable[tuple[str, str]], limit: float) -> dict[str, float]:
        """How unlike the names sound, by name: all whose slips for each sound are within the limit."""
        from rapidfuzz.distance import Levenshtein

        found: dict[str, float] = {}
        for bones, sound in _once(sought):
            fuzzy = limit * (len(sound) + 1) >= CHEAPEST
            shape, letters = _shape(sound), len(sound)
            for name, other in self._entries(bones, fuzzy):
                longer = max(letters, len(other), 1)
                most = min(limit, found.get(name, limit)) * longer
                if CHEAPEST * abs(letters - len(other)) > most:
                    continue  # each sound more is a slip at least
                if CHEAPEST * Levenshtein.distance(shape, _shape(other)) <= most:
                    found[name] = min(found.get(name, NEVER), unlike(sound, other) / longer)
        return {name: off for name, off in found.items() if off <= limit}

    def _entries(self, bones: str, fuzzy: bool) -> Iterator[tuple[str, str]]:
        """(name, sound) of what has these bones, or all of them but for one."""
        tongue, bones = (bones[0], bones[1:]) if bones[:1].isdigit() else ("", bones)
        if not fuzzy or len(bones) <= FEWEST:
            yield from self._heard.of(bones, tongue)
            return
        for near in self._one_off(bones):
            yield from self._heard.of(near, tongue)

    def _found_one_off(self, bones: str) -> tuple[str, ...]:
        """Those of the bones nearly like these that any name has."""
        return tuple(self._heard.among(_one_off(bones, self._heard.letters)))


def _once(sought: Iterable[tuple[str, str]]) -> dict[tuple[str, str], None]:
    """What is sought, once for all languages where it sounds as in English (the first)."""
    every = list(sought)
    english = every[0][1] if every else ""
    return dict.fromkeys((bones[1:] if sound == english else bones, sound) for bones, sound in every)


@lru_cache(maxsize=8192)
def _shape(sound: str) -> str:
    return sound.translate(ONE_VOWEL)


def _one_off(bones: str, letters: Sequence[str]) -> set[str]:
    """The bones, and what is made of them by one consonant."""
    halves = [(bones[:at], bones[at:]) for at in range(len(bones) + 1)]
    fewer = {left + right[1:] for left, right in halves if right}
    others = {left + letter + right[1:] for left, right in halves if right for letter in letters}
    return {bones} | fewer | others | {left + letter + right for left, right in halves for letter in letters}
