"""The words of bottle lists, from corpus/stock/."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.answers.wording import Wording
from assistant.knowledge.files import corpus_dir
from assistant.knowledge.problems import Problem
from assistant.language.cues import Lines
from assistant.language.data import read_data
from assistant.language.fold import fold, key

_BRACKETS = re.compile(r"\([^()]*\)|\[[^\[\]]*\]")
_SIGNS = re.compile(r"[\W_]+")
LONGEST_SHOWN = 40


@dataclass(frozen=True, slots=True)
class StockWords:
    """Columns by the names they may have, with their rank; sets of little words, currencies, limits."""

    columns: Mapping[str, tuple[str, int]]
    sets: Mapping[str, frozenset[str]]
    currency: Mapping[str, str]
    means: Mapping[str, str]
    sweetness: tuple[tuple[str, ...], ...]
    limits: Mapping[str, int]


@lru_cache(maxsize=1)
def stock_words() -> StockWords:
    """The words, read once. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "stock" / "columns.toml", _words)


@lru_cache(maxsize=1)
def wording() -> Wording:
    """The sentences about lists."""
    return Wording(corpus_dir() / "stock" / "wording.toml")


@lru_cache(maxsize=1)
def asked_words() -> tuple[Mapping[str, Lines], Mapping[str, tuple[str, ...]]]:
    """The lines by which a list is asked for, and the words around a price."""
    return read_data(
        corpus_dir() / "stock" / "asked.toml",
        lambda tables: (
            {name: Lines(lines) for name, lines in tables["lines"].items()},
            {name: tuple(words) for name, words in tables["price"].items()},
        ),
    )


def _words(tables: Mapping[str, Any]) -> StockWords:
    columns = {
        plain(name): (field, rank)
        for field, names in reversed(tables["columns"].items())
        for rank, name in enumerate(names)
    }
    return StockWords(
        columns=columns,
        sets={name: frozenset(map(str.casefold, words)) for name, words in tables["words"].items()},
        currency={str(sign): str(shown) for sign, shown in tables["currency"].items()},
        means={" ".join(key(word)): str(meant) for word, meant in tables["means"].items()},
        sweetness=tuple(sorted(map(key, tables["sweetness"]["words"]), key=len, reverse=True)),
        limits={name: int(number) for name, number in tables["limits"].items()},
    )


def plain(header: str) -> str:
    """A column's name as it is compared: `Prix (€)` -> `prix`."""
    folded = " ".join(fold(word) for word in _BRACKETS.sub(" ", header).split())
    return " ".join(_SIGNS.sub(" ", folded).split())


def problem(source: str, name: str, line: int | None = None, /, **told: object) -> Problem:
    """A problem in the wording of this name."""
    return Problem(
        source, wording()("problem", name, **told), wording()("problem", f"{name}-do", **told), line
    )


def shown(text: str) -> str:
    """A cell as it may be told in a sentence."""
    flat = " ".join(text.split())
    return f"“{flat if len(flat) <= LONGEST_SHOWN else flat[:LONGEST_SHOWN] + '…'}”"
