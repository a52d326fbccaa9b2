"""The words of rehearsing, from corpus/language/rehearse.toml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Lines
from assistant.language.data import read_data
from assistant.language.fold import key


@dataclass(frozen=True, slots=True)
class RehearseWords:
    """Cue lines by use, phrases (as stems) that name a moment, needs to ask for, troubles by kind of wine.

    `most`: questions of each sort, in the order of sorts; `weak`: words for rules that are not sure;
    `bounds`: words before a moment from which on is meant; `narrower`: traits that the food of a claim has.
    """

    lines: Mapping[str, Lines]
    when: Mapping[str, tuple[tuple[str, ...], ...]]
    diets: tuple[str, ...]
    trouble: Mapping[str, str]
    most: Mapping[str, int]
    weak: frozenset[str]
    bounds: frozenset[str]
    narrower: Mapping[str, frozenset[str]]


@lru_cache(maxsize=1)
def rehearse_words() -> RehearseWords:
    """The words, read once. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "rehearse.toml", _words)


def _words(tables: Mapping[str, Any]) -> RehearseWords:
    return RehearseWords(
        lines={name: Lines(lines) for name, lines in tables["lines"].items()},
        when={name: tuple(tuple(key(one)) for one in ones) for name, ones in tables["when"].items()},
        diets=tuple(tables["diets"]["asked"]),
        trouble=dict(tables["trouble"]),
        most={kind: int(count) for kind, count in tables["most"].items()},
        weak=frozenset(tables["weak"]["confidence"]),
        bounds=frozenset(tables["bounds"]["words"]),
        narrower={claim: frozenset(traits) for claim, traits in tables["narrower"].items()},
    )
