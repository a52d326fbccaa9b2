"""What `goeswith check` prints: every problem with its place, file by file, and the counts."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from itertools import groupby
from typing import Any

from assistant.knowledge.problems import Problem


@dataclass(frozen=True, slots=True)
class Report:
    """What a check found, and how much it looked at: named concepts and, apart from them, rules.

    `conflicts` are told in sentences; no problems, for hosts and book may differ. None: nobody looked.
    `remarks` say what was not looked at.
    """

    problems: tuple[Problem, ...]
    concepts: int
    rules: int
    conflicts: tuple[str, ...] | None = None
    remarks: tuple[str, ...] = ()

    def text(self) -> str:
        """One line for each problem, an empty line after each file, the counts last."""
        groups = groupby(self.problems, key=lambda problem: problem.source)
        blocks = ["\n".join(map(_line, found)) for _, found in groups]
        lines = (*(self.conflicts or ()), *self.remarks)
        told = ["\n".join(map(_flat, lines))] if lines else []
        return "\n\n".join([*blocks, *told, self._counts()])

    def as_json(self) -> dict[str, Any]:
        """The counts, and the problems with `source`, `message`, `remedy`, `line` and `term`."""
        return {
            "concepts": self.concepts,
            "rules": self.rules,
            "problems": [asdict(problem) for problem in self.problems],
            "conflicts": list(self.conflicts or ()),
            "remarks": list(self.remarks),
        }

    def _counts(self) -> str:
        problems = len(self.problems)
        counts = [(self.concepts, "concept"), (self.rules, "rule"), (problems, "problem")]
        counts += [(len(self.conflicts), "conflict")] if self.conflicts is not None else []
        return ", ".join(f"{n:,} {word}{'' if n == 1 else 's'}" for n, word in counts)


def sentence(problem: Problem) -> str:
    """A problem as one sentence: where, what is wrong and what to do."""
    remedy = problem.remedy[:1].lower() + problem.remedy[1:]
    where = problem.source if problem.line is None else f"{problem.source}, line {problem.line}"
    return _flat(f"{where}: {problem.message.rstrip('.')}; {remedy}")


def _line(problem: Problem) -> str:
    return _flat(str(problem))


def _flat(text: str) -> str:
    return " ".join(text.split())
