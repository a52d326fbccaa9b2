"""How many bottles a question asks for, by the words of corpus/language/small-words.toml."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold, stem
from assistant.language.frame import Text
from assistant.language.quantities import numbers, quantity_words
from assistant.language.small_words import small_words

REACH = 3
_NUMBER = re.compile(r"\d+(?:\.\d+)?")


@dataclass(frozen=True, slots=True)
class Count:
    """Bottles wanted in all (None: not said) and of single kinds of wine."""

    total: int | None
    kinds: tuple[tuple[str, int], ...] = ()


@lru_cache(maxsize=1)
def counted_words() -> Mapping[str, str]:
    """Folded words that count bottles, with the kind of wine they mean. Raises KnowledgeError."""
    return read_data(corpus_dir() / "language" / "small-words.toml", _words)


def _words(tables: Mapping[str, Any]) -> Mapping[str, str]:
    return {stem(fold(word)): str(kind) for word, kind in tables["counted"].items()}


def bottles(text: Text) -> Count:
    """What is counted as wine; where nothing is, the first small number that counts no food and no money."""
    found = [(n, _counted(text, i)) for i, n in _numbers(text)]
    total = next((n for n, kind in found if kind == ""), None)
    kinds = tuple((kind, n) for n, kind in found if kind)
    if total is None and kinds:
        total = sum(n for _, n in kinds)
    return Count(total or _bare(text), kinds)


def _numbers(text: Text) -> list[tuple[int, int]]:
    """Last places and values of whole numbers from one on that count no people (`one of them hates`)."""
    people = {places[0] for places in quantity_words().not_bottles.find(text.stems)}
    found = ((end - 1, int(n)) for _, end, n in numbers(text.stems) if n >= 1 and n == int(n))
    return [(at, n) for at, n in found if at not in people]


def _counted(text: Text, at: int) -> str | None:
    """The kind of wine that the number at this place counts, "" for any, None for something else."""
    counted, ends, known = counted_words(), small_words()["ends"], quantity_words().numbers
    for word in text.stems[at + 1 : at + 1 + REACH]:
        if word in counted:
            return counted[word]
        if word in ends or word in known or word.isdecimal():
            return None
    return None


def _bare(text: Text) -> int | None:
    starts = {reading.start for reading in text.readings}
    money, most = small_words()["money"], quantity_words().most_bare
    for at, n in _numbers(text):
        near = {*text.stems[max(0, at - 1) : at], *text.stems[at + 1 : at + 2]}
        if n <= most and at + 1 not in starts and not near & money:
            return n
    return None


def numbers_in(text: Text) -> dict[str, float]:
    """The first number, and how many bottles are asked for."""
    found = [float(w) for w in text.words if _NUMBER.fullmatch(w)]
    total = bottles(text).total
    return ({"first": found[0]} if found else {}) | ({"bottles": float(total)} if total else {})
