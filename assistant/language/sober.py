"""`drives`, `isn't drinking tonight`: whether no more is said of a guest than that no alcohol is drunk."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data

_APOSTROPHE = re.compile(r"['’]")


@dataclass(frozen=True, slots=True)
class SoberWords:
    """The table `sober` of corpus/language/guests.toml: what is said, and small words around it."""

    said: frozenset[tuple[str, ...]]
    around: frozenset[str]
    drives: tuple[str, ...]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> SoberWords:
        """The words of the file. Raises KeyError for a key that is missing."""
        table = tables["sober"]
        return cls(
            frozenset(tuple(said.split()) for said in table["words"]),
            frozenset(table["around"]),
            tuple(table["drives"]),
        )


@lru_cache(maxsize=1)
def _sober_words() -> SoberWords:
    """The shipped words. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", SoberWords.of)


def is_sober(need: str) -> bool:
    """Whether nothing else is said of a guest than that no alcohol is drunk, or a car driven."""
    known = _sober_words()
    words = _APOSTROPHE.sub("", need.lower()).replace("-", " ").split()
    return tuple(word for word in words if word not in known.around) in known.said


def plainly_driving(need: str) -> str:
    """`drive` or `has to drive` as it is noted of every driver; any other need as it is."""
    known = _sober_words().drives
    return known[0] if need.lower() in known else need
