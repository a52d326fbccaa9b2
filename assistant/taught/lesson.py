"""A lesson: the statements made of what was taught, and the words in which it is told back."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.notebook import Stated, stated
from assistant.notebook.statement import Value
from assistant.taught.keeper import AUTHOR
from assistant.taught.telling import Hearing


@dataclass(frozen=True, slots=True)
class Lesson:
    """What is to be kept and what is said of it when it is."""

    made: tuple[Stated, ...]
    say: str
    lines: tuple[str, ...] = ()


def told(heard: Hearing, kind: str, about: tuple[str, ...], value: dict[str, Value | float]) -> Stated:
    """A statement of this kind in the words heard."""
    return stated(kind, heard.said, AUTHOR, about=about, value=value, evening=heard.evening)
