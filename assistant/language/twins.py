"""Names as they are spelt elsewhere: `vegetable lasagna`; words: corpus/language/spellings.toml."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import key

Spellings = Mapping[str, tuple[str, ...]]


def spellings() -> Spellings:
    """The other spellings of each word. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "spellings.toml", _same)


def twins(names: Iterable[str], same: Spellings) -> dict[str, str]:
    """The names by their other spellings; a word alone may mean something else, and has none."""
    several = ([(word, same.get(word, ())) for word in name.split()] for name in sorted(names) if " " in name)
    return {twin: " ".join(word for word, _ in words) for words in several for twin in _spelt(words)}


def _spelt(words: Iterable[tuple[str, Iterable[str]]]) -> list[str]:
    """The other spellings of a name: one of its words is spelt otherwise, or all of them."""
    words = list(words)
    spelt = [word for word, _ in words]
    found = [[*spelt[:i], way, *spelt[i + 1 :]] for i, (_, ways) in enumerate(words) for way in ways]
    both = [next(iter(ways), word) for word, ways in words]
    return [" ".join(one) for one in (*found, both) if one != spelt]


def _same(tables: Mapping[str, Any]) -> Spellings:
    groups = [["".join(key(word)) for word in words] for words in tables["same"]]
    return {word: tuple(o for o in dict.fromkeys(group) if o != word) for group in groups for word in group}
