"""Small words that turn, end or link what is said, from corpus/language/small-words.toml."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from pathlib import Path

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import key


class Lists(dict[str, frozenset[str]]):
    """The lists by name. Raises KnowledgeError for one that the file does not have."""

    def __missing__(self, name: str) -> frozenset[str]:
        return read_data(_file(), lambda lists: frozenset(lists[name]))


@lru_cache(maxsize=1)
def small_words() -> Lists:
    """All lists of the file, folded where they are single words. Raises KnowledgeError for a broken file."""
    return read_data(_file(), _folded)


def _file() -> Path:
    return corpus_dir() / "language" / "small-words.toml"


def _folded(lists: Mapping[str, Iterable[str]]) -> Lists:
    found = {name: words for name, words in lists.items() if not isinstance(words, Mapping)}
    return Lists({n: frozenset(" ".join(key(word)) or word for word in words) for n, words in found.items()})
