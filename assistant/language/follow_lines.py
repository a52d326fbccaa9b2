"""Turns of phrase that name nothing and take up what stands, from corpus/language/follow-ups.toml."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Line, match, read_line
from assistant.language.data import read_data
from assistant.language.frame import Frame


@lru_cache(maxsize=1)
def follow_lines() -> Mapping[str, Sequence[Line]]:
    """The lines of corpus/language/follow-ups.toml by what they do. Raises KnowledgeError as `read_data`."""
    return read_data(
        corpus_dir() / "language" / "follow-ups.toml",
        lambda tables: {name: tuple(map(read_line, lines)) for name, lines in tables["lines"].items()},
    )


def says(frame: Frame, name: str) -> bool:
    """Whether a line of this name stands in the text."""
    stems = frame.text.stems
    return any(match(line, stems, at) for line in follow_lines()[name] for at in range(len(stems)))
