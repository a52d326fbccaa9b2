"""Words that say what a food is like: a kind described (`a mild creamy cheese`) instead of a name."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold, stem
from assistant.language.frame import Text
from assistant.pairing.dish import Dish

POURED = ("wine", "preference", "grape")
KIND = "kind/"
LIKE = "like"

Amounts = Mapping[str, float]


@lru_cache(maxsize=1)
def profile_words() -> Mapping[str, Amounts]:
    """Amounts per 100 g by folded word. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "profile-words.toml", _words)


def _words(tables: Mapping[str, Any]) -> Mapping[str, Amounts]:
    return {stem(fold(word)): dict(row["amounts"]) for row in tables["word"] for word in row["words"]}


def described(dishes: Sequence[Dish], text: Text, taken: Collection[int]) -> tuple[list[Dish], set[int]]:
    """The dishes with the first one tasted as it was described, and the positions of the words used.

    Only a kind is described, or a food that an unknown one is said to be like; `taken` positions are
    left alone.
    """
    used = _positions(text, taken) if dishes and _needs_words(dishes[0], text) else set()
    if not used:
        return list(dishes), set()
    added: dict[str, float] = {}
    for at in used:
        for name, amount in profile_words()[text.stems[at]].items():
            added[name] = added.get(name, 0.0) + amount
    return [replace(dishes[0], added=added), *dishes[1:]], used


def _needs_words(dish: Dish, text: Text) -> bool:
    """Whether a dish is a kind only, or what an unknown food is said to be like."""
    kinds = {r.id for r in text.readings if any(i.startswith(KIND) for i in (r.id, *r.others))}
    return dish.main.food in kinds or (LIKE in text.stems and bool(text.left_out))


def _positions(text: Text, taken: Collection[int]) -> set[int]:
    named = {i for r in text.readings for i in range(r.start, r.end)}
    known = profile_words()
    found = {i for i, word in enumerate(text.stems) if word in known and i not in named and i not in taken}
    return {i for i in found if not _of_wine(text, i)}


def _of_wine(text: Text, at: int) -> bool:
    """Whether the word stands before a wine, at once or after another such word (`a creamy white`)."""
    while at + 1 < len(text.stems) and text.stems[at + 1] in (*profile_words(), ",", "and"):
        at += 1
    return any(r.start == at + 1 and r.kind in POURED for r in text.readings)
