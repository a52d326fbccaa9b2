"""Turns of phrase that name nothing and take up what stands, from corpus/language/follow-ups.toml."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Line, match, read_line
from assistant.language.data import read_data
from assistant.language.frame import Frame

SMALL = ("as", "for", "under", "called", "the", "evening", "please")


@lru_cache(maxsize=1)
def follow_lines() -> Mapping[str, Sequence[Line]]:
    """The lines of corpus/language/follow-ups.toml by what they do. Raises KnowledgeError as `read_data`."""
    return read_data(
        corpus_dir() / "language" / "follow-ups.toml",
        lambda tables: {name: tuple(map(read_line, lines)) for name, lines in tables["lines"].items()},
    )


def says(frame: Frame, name: str) -> bool:
    """Whether a line of this name stands in the text."""
    return bool(_found(frame.text.stems, name))


def behind(frame: Frame, name: str) -> str:
    """The words behind a line of this name, without small ones at their start; empty where there are none."""
    ends = [places[-1] + 1 for places in _found(frame.text.stems, name)]
    words = list(frame.text.words[max(ends) :]) if ends else []
    while words and not (words[0].isalnum() and words[0].lower() not in SMALL):
        words.pop(0)
    return " ".join(word for word in words if word[:1].isalnum())


def _found(stems: Sequence[str], name: str) -> list[tuple[int, ...]]:
    found = (match(line, stems, at) for line in follow_lines()[name] for at in range(len(stems)))
    return [places for places in found if places]
