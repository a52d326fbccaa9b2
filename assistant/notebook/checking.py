"""Looks a notebook through as `goeswith check` does: its seal, its statements, and what they point at.

A notebook does not go through pySHACL with the rest: the shapes are held against each statement as it is
read, which takes a third of the time. What shapes and checks find by looking around is looked for here.
"""

from __future__ import annotations

from collections.abc import Container, Iterator
from pathlib import Path

from assistant.knowledge import names
from assistant.knowledge.problems import Problem
from assistant.notebook.facts import pointed_at
from assistant.notebook.reading import Notebook, load

MEND = "Mend its spelling, or declare it in the file of its kind."
ABOVE = "Name one of those above it."


def notebook_problems(file: Path, declared: Container[str]) -> tuple[Problem, ...]:
    """Everything wrong with the notebook in a file; `declared`: the IRIs that the knowledge has."""
    notebook = load(file)
    return (*notebook.problems, *_loose(notebook, declared))


def _loose(notebook: Notebook, declared: Container[str]) -> Iterator[Problem]:
    """Statements that take back or point at what is not there."""
    seen = set[str]()
    for one in notebook.statements:
        if one.withdraws and one.withdraws not in seen:
            told = "takes back a statement that does not stand above it in this file."
            yield _problem(notebook.path, one.id, told, ABOVE)
        seen.add(one.id)
        for iri in pointed_at(one):
            if iri not in declared:
                told = f"points at {names.curie(iri)}, which is not declared in any file."
                yield _problem(notebook.path, one.id, told, MEND)


def _problem(file: Path, statement: str, told: str, remedy: str) -> Problem:
    """A problem with the line on which the statement begins."""
    lines = file.read_text("utf-8").split("\n")
    at = next((n for n, line in enumerate(lines, 1) if line.startswith(f"<{statement}> ")), None)
    return Problem(str(file), told, remedy, at, f"<{statement}>")
