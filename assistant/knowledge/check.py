"""Checks the knowledge: Turtle syntax, SHACL shapes, SPARQL checks and the text of the rules.

`examine` looks at the shipped files together with files of the user's own. A file of the user's
that has the name of a shipped one and declares some of its terms stands in for it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from os.path import realpath
from pathlib import Path

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.knowledge.check_queries import query_problems
from assistant.knowledge.check_report import Report
from assistant.knowledge.check_rules import rule_problems
from assistant.knowledge.check_shapes import shape_problems
from assistant.knowledge.files import knowledge_files, ontology_dir
from assistant.knowledge.ground import Ground
from assistant.knowledge.problems import KnowledgeError, Problem
from assistant.knowledge.turtle import Turtle, read_turtle
from assistant.notebook.checking import notebook_problems
from assistant.notebook.reading import read_bytes
from assistant.notebook.sealing import BEGINNING

_LABEL = ox.NamedNode("http://www.w3.org/2004/02/skos/core#prefLabel")
_TYPE = ox.NamedNode(names.RDF_TYPE)
_RULE = ox.NamedNode(names.iri("PairingRule"))


def check(files: Sequence[Path] = (), root: Path | None = None) -> list[Problem]:
    """All problems of the knowledge under `root` (the shipped one by default) and of these files."""
    try:
        return list(examine(files, root).problems)
    except KnowledgeError as error:
        return error.problems


def examine(files: Sequence[Path] = (), root: Path | None = None) -> Report:
    """Checks everything. Raises KnowledgeError with one problem for each file that cannot be read."""
    folder = root or ontology_dir()
    notebooks = [file for file in files if is_notebook(file)]
    ground = Ground(read_files([file for file in files if file not in notebooks], folder))
    twice = twice_declared(ground)
    muddled = {problem.term for problem in twice}  # two things in one: nothing else can be said of them
    others = [
        *shape_problems(ground, sorted((folder / "shapes").glob("*.ttl"))),
        *query_problems(ground, sorted((folder / "checks").glob("*.rq"))),
        *rule_problems(ground),
    ]
    problems = [*twice, *(problem for problem in others if problem.term not in muddled)]
    rules = {q.subject for q in ground.store.quads_for_pattern(None, _TYPE, _RULE, None)}
    named = {q.subject for q in ground.store.quads_for_pattern(None, _LABEL, None, None)}
    kept = [problem for file in notebooks for problem in _of_notebook(file, ground)]
    return Report((*_in_order(problems, ground), *kept), len(named - rules), len(rules))


def is_notebook(file: Path) -> bool:
    """Whether a file begins as a notebook does; one that cannot be read does not."""
    try:
        return read_bytes(file).startswith(BEGINNING.encode())
    except (OSError, ValueError):
        return False


def _of_notebook(file: Path, ground: Ground) -> tuple[Problem, ...]:
    """The problems of a notebook, which is held against its shapes as it is read and not with the rest."""
    declared = {q.subject.value for q in ground.quads if isinstance(q.subject, ox.NamedNode)}
    return notebook_problems(file, declared)


def _in_order(problems: Sequence[Problem], ground: Ground) -> tuple[Problem, ...]:
    """Each problem once, file by file as they were read, from the top to the bottom of each."""
    files = [file.source for file in ground.files]
    once = dict.fromkeys(problems)
    return tuple(sorted(once, key=lambda p: (files.index(p.source), p.line or 0, p.term or "", p.message)))


def read_files(named: Sequence[Path], root: Path) -> list[Turtle]:
    """The knowledge under `root`, then the named files. Raises KnowledgeError for all unreadable ones."""
    shipped = {p: f"{root.name}/{p.relative_to(root).as_posix()}" for p in knowledge_files(root)}
    same = {realpath(p) for p in shipped}
    own = {realpath(p): p for p in named if realpath(p) not in same}
    problems: list[Problem] = []
    base = [f for path, source in shipped.items() for f in _read(path, source, problems)]
    added = [f for path in own.values() for f in _read(path, str(path), problems)]
    if problems:
        raise KnowledgeError(problems)
    return [f for f in base if not any(_stands_in(mine, f) for mine in added)] + added


def _read(path: Path, source: str, problems: list[Problem]) -> list[Turtle]:
    try:
        return [read_turtle(path, source)]
    except KnowledgeError as error:
        problems.extend(error.problems)
        return []


def _stands_in(mine: Turtle, shipped: Turtle) -> bool:
    same_name = Path(mine.source).name == Path(shipped.source).name
    return same_name and not mine.declared.isdisjoint(shipped.declared)


def twice_declared(ground: Ground) -> list[Problem]:
    """Terms whose class is stated in two places: two things under one name, or one pasted twice."""
    typed = (q for q in ground.quads if q.predicate == _TYPE and _is_own(q.object))
    stated = Counter((q.subject, q.object) for q in typed)
    twice = dict.fromkeys(s for (s, _), times in stated.items() if times > 1 and isinstance(s, ox.NamedNode))
    return [
        ground.problem(
            subject.value,
            f"{{this}} is declared more than once ({_everywhere(subject.value, ground)}).",
            "Keep one of them, or give the other a name of its own.",
        )
        for subject in twice
        if isinstance(subject, ox.NamedNode)
    ]


def _everywhere(subject: str, ground: Ground) -> str:
    lines = [(f.source, line) for f in ground.files for line in f.starts.get(subject, ())]
    return ", ".join(f"{source} line {line}" for source, line in lines)


def _is_own(cls: object) -> bool:
    return isinstance(cls, ox.NamedNode) and cls.value.startswith(names.SCHEMA)
