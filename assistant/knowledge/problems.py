"""A problem with something that was read: data, not an exception."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.answers.sanitise import safe_line


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong with a file: where, what, and what to do about it; as text, one safe line."""

    source: str
    message: str
    remedy: str
    line: int | None = None
    term: str | None = None

    def __str__(self) -> str:
        where = self.source if self.line is None else f"{self.source}, line {self.line}"
        what = self.message if self.term is None else f"{self.term}: {self.message}"
        return safe_line(f"{where}: {what} {self.remedy}")


class KnowledgeError(Exception):
    """The shipped knowledge cannot be used; `problems` says why."""

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__("; ".join(map(str, problems)))
        self.problems = problems
