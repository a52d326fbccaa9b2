"""The little words by which a turn takes up the one before, from corpus/language/follow-ups.toml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold, stem

Words = frozenset[str]


@dataclass(frozen=True, slots=True)
class FollowWords:
    """Folded words by what they do; `places` counts from 1, -1 is the last; `amounts` are factors."""

    places: Mapping[str, int]
    amounts: Mapping[str, float]
    it: Words
    place_after: Words
    adds_before: Words
    adds_after: Words
    another_before: Words
    lead: Words
    drops: Words
    for_: Words
    instead_of: Words
    swaps: Words
    becomes: Words
    by_now: Words
    price_between: Words
    price_before: Words
    load_behind: Words
    price_not_between: Words
    price_not: Words
    one: Words
    cheaper: Words
    more: Words
    several: Words
    also_before: Words
    before_name: Words
    own_before: Words
    bottle_before: Words
    bottle_like: Words


@lru_cache(maxsize=1)
def follow_words() -> FollowWords:
    """The shipped words. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "follow-ups.toml", _words)


def _words(tables: Mapping[str, Any]) -> FollowWords:
    lists = tables["words"]
    names = [name for name in FollowWords.__slots__ if name not in ("places", "amounts")]
    found = {name: frozenset(map(_folded, lists[name.strip("_").replace("_", "-")])) for name in names}
    places = {_folded(word): int(place) for word, place in tables["places"].items()}
    amounts = {_folded(word): float(times) for word, times in tables["amounts"].items()}
    return FollowWords(places, amounts, **found)


def _folded(phrase: str) -> str:
    return " ".join(stem(fold(word)) for word in phrase.split())
