"""Runs the SPARQL checks of ontology/checks/: each row they find is a problem.

A check is a SELECT with two comment lines, `# message:` and `# remedy:`, whose `{name}` slots are
filled from the row, `{this}` from the term to blame. `?term` is that term (a blank node stands for
the term it belongs to, and `{this}` is then the property), `?property` the property whose line is
shown, and `?other` a second term that is blamed instead where it stands in a later file.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

import pyoxigraph as ox

from assistant.knowledge.ground import Ground, shown
from assistant.knowledge.problems import Problem

_SAID = re.compile(r"^# (message|remedy): (.+)$", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Query:
    """One check: its name, its SELECT and the two sentences of its problems."""

    name: str
    text: str
    message: str
    remedy: str


def read_query(file: Path) -> Query:
    """The check in a file. Raises ValueError where a sentence is missing."""
    text = file.read_text("utf-8")
    said = dict(_SAID.findall(text))
    if said.keys() != {"message", "remedy"}:
        raise ValueError(f"{file.name}: a check needs one line `# message:` and one line `# remedy:`")
    return Query(file.stem, text, said["message"], said["remedy"])


def query_problems(ground: Ground, files: Iterable[Path]) -> list[Problem]:
    """Everything that the checks in these files find."""
    return [problem for file in files for problem in _run(read_query(file), ground)]


def _run(query: Query, ground: Ground) -> list[Problem]:
    found = ground.store.query(query.text)
    assert isinstance(found, ox.QuerySolutions), query.name
    columns = [variable.value for variable in found.variables]
    return [_problem(query, dict(zip(columns, row, strict=True)), ground) for row in found]


def _problem(query: Query, row: dict[str, object], ground: Ground) -> Problem:
    predicate = _text(row["property"]) if row.get("property") else None
    row = _later_first(row, predicate, ground)
    values = {name: shown(node) for name, node in row.items() if node is not None}
    return ground.problem(_text(row["term"]), query.message, query.remedy, values, predicate)


def _later_first(row: dict[str, object], predicate: str | None, ground: Ground) -> dict[str, object]:
    """The row with the two terms changed where the other one is stated in a later file."""
    term, other = row["term"], row.get("other")
    if not isinstance(other, ox.NamedNode):
        return row
    files = [ground.files.index(ground.file_of(_text(one), predicate)) for one in (term, other)]
    return {**row, "term": other, "other": term} if files[1] > files[0] else row


def _text(node: object) -> str:
    return str(getattr(node, "value", node))
