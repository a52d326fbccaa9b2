"""Ways of asking: lines of which only the intent is told. The weights are fitted to them as well.

Where a question of the corpus tells all that must be read in it, a line here costs a minute less, and it is
of wordings that an intent needs most.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from assistant.evaluate.corpus import intents
from assistant.knowledge.files import corpus_dir
from assistant.knowledge.problems import KnowledgeError, Problem
from assistant.language.data import telling

REMARK = "#"
REMEDY = "Write the intent, a tab and what is asked."


@dataclass(frozen=True, slots=True)
class Way:
    """What somebody would say, the intent it has, and the pass it was written in."""

    ask: str
    intent: str
    author: str


def shipped_ways() -> list[Path]:
    """The files of ways of asking, one for each pass, in a fixed order."""
    return sorted((corpus_dir() / "fitting" / "ways").glob("*.tsv"))


def read_ways(files: Sequence[Path] = ()) -> tuple[Way, ...]:
    """The ways of asking in these files, the shipped ones by default; the pass is the name of the file.

    Raises KnowledgeError with a problem for each line that cannot be used, or for a file that cannot be read.
    """
    found = [row for file in files or shipped_ways() for row in _rows(file)]
    problems = [row for row in found if isinstance(row, Problem)]
    if problems:
        raise KnowledgeError(problems)
    return tuple(row for row in found if isinstance(row, Way))


def _rows(file: Path) -> Iterator[Way | Problem]:
    with telling(file):
        lines = file.read_text("utf-8").splitlines()
    for number, line in enumerate(lines, 1):
        if line.strip() and not line.startswith(REMARK):
            yield _row(line, file, number)


def _row(line: str, file: Path, number: int) -> Way | Problem:
    intent, _, ask = line.partition("\t")
    where = f"{file.parent.name}/{file.name}"
    if not ask.strip() or "\t" in ask:
        return Problem(where, f"{line!r} is no row of two columns.", REMEDY, number)
    if intent not in intents():
        return Problem(
            where, f"{intent!r} is no intent.", f"Use one of {', '.join(sorted(intents()))}.", number
        )
    return Way(ask.strip(), intent, file.stem)
