"""The settings in which the guests' sheet can be printed, from corpus/planning/handout/settings.toml."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from assistant.handout.words import data, folder
from assistant.language.data import telling


@dataclass(frozen=True, slots=True)
class Setting:
    """Type in pt, lengths in mm; what the fields mean is told in the file."""

    body: float
    table: float
    title: float
    line: float
    notes: int
    pad: float
    gap: float
    leading: float
    most: int
    why: int
    fahrenheit: bool
    run: bool
    verdicts: bool
    figure: int
    principles: bool


@lru_cache(maxsize=1)
def settings() -> tuple[Setting, ...]:
    """All of them, the most generous first. Raises KnowledgeError where one is not whole."""
    with telling(folder() / "settings.toml"):
        return tuple(Setting(**row) for row in data("setting"))


@dataclass(frozen=True, slots=True)
class Paper:
    """What two papers have in common inside their margins, and how high the taller one is, in mm."""

    width: float
    height: float
    tall: float


@lru_cache(maxsize=1)
def paper() -> Paper:
    """The page of both papers. Raises KnowledgeError where it is not given."""
    with telling(folder() / "settings.toml"):
        return Paper(**data("paper"))
