"""Takes the statements of another host's notebook into one's own: all that may come in, or none.

Their words are cleaned and held against the same shapes as one's own. A withdrawal comes in only from
the author of what it takes back, or from the host of this notebook.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from assistant.knowledge.problems import Problem
from assistant.notebook.block import PREFIXES, block
from assistant.notebook.reading import Notebook
from assistant.notebook.saving import add
from assistant.notebook.standing import standing
from assistant.notebook.statement import Statement
from assistant.notebook.vocabulary import SHAPES


@dataclass(frozen=True, slots=True)
class Merged:
    """The notebook after a merge; with `problems` nothing came in.

    `added` are the statements that came in, `taken_back` one's own that no longer stand because of
    them, `left_out` says which of theirs did not come in, and `remarks` what was cleaned.
    """

    notebook: Notebook
    added: tuple[Statement, ...] = ()
    taken_back: tuple[Statement, ...] = ()
    left_out: tuple[Problem, ...] = ()
    remarks: tuple[Problem, ...] = ()
    problems: tuple[Problem, ...] = ()


def merge(own: Notebook, theirs: Notebook, host: str) -> Merged:
    """Adds their statements to the own notebook and saves it; `host` is the author name of its owner."""
    if theirs.problems or not theirs.version:
        return Merged(own, problems=theirs.problems or (_missing(theirs),))
    coming, left_out = incoming(own.statements, theirs, host)
    wrong = shape_faults([*own.statements, *coming] if coming else (), coming, str(theirs.path))
    if wrong:
        return Merged(own, left_out=left_out, problems=wrong)
    saved = add(own, *coming)
    if saved.problems:
        return Merged(saved.notebook, left_out=left_out, problems=saved.problems)
    still = {one.id for one in standing(saved.notebook.statements)}
    taken_back = tuple(one for one in standing(own.statements) if one.id not in still)
    return Merged(saved.notebook, coming, taken_back, left_out, theirs.remarks)


def _missing(theirs: Notebook) -> Problem:
    return Problem(str(theirs.path), "there is no notebook of this name.", "Check how it is written.")


def incoming(
    own: Sequence[Statement], theirs: Notebook, host: str
) -> tuple[tuple[Statement, ...], tuple[Problem, ...]]:
    """Those of their statements that come in, and why others do not."""
    known = {one.id: one for one in own}
    coming: list[Statement] = []
    left_out: list[Problem] = []
    for one in theirs.statements:
        why = _refusal(one, known, host)
        if why:
            left_out.append(Problem(str(theirs.path), why, "It was left out.", None, one.id))
        elif one.id not in known:
            coming.append(one)
            known[one.id] = one
    return tuple(coming), tuple(left_out)


def _refusal(one: Statement, known: dict[str, Statement], host: str) -> str:
    """Why a statement may not come in; empty where it may, or is there already."""
    there = known.get(one.id)
    if there is not None:
        return "" if there == one else "under this name your notebook has other words."
    if one.withdraws is None:
        return ""
    target = known.get(one.withdraws)
    if target is None:
        return "it takes back a statement that is in neither notebook."
    if one.author not in (target.author, host):
        return f"{one.author} takes back what {target.author} said."
    return ""


def shape_faults(
    all_of_them: Iterable[Statement], coming: Sequence[Statement], source: str
) -> tuple[Problem, ...]:
    """What the shapes, run by pySHACL, have against those that are coming, among all others."""
    coming = _telling(coming)
    if not coming:
        return ()
    import pyoxigraph as ox

    from assistant.knowledge.check_shapes import shape_problems
    from assistant.knowledge.files import ontology_dir
    from assistant.knowledge.ground import Ground
    from assistant.knowledge.turtle import Turtle

    text = "\n".join([PREFIXES, *_needed(all_of_them, coming)])
    quads = tuple(ox.parse(input=text, format=ox.RdfFormat.TURTLE, rename_blank_nodes=True))
    found = shape_problems(Ground([Turtle(source, text, quads)]), [ontology_dir() / SHAPES])
    return tuple(
        replace(problem, line=None) for problem in found
    )  # lines of the cleaned text, not of the file


def _telling(coming: Iterable[Statement]) -> list[Statement]:
    """Withdrawals, and of other statements one for each author, kind and set of keys.

    Whatever the shapes ask of one statement alone was asked as it was read, by limits out of the same file
    (`faults`). What only pySHACL sees is an author's name and whether it is known what is taken back.
    """
    alike = {(s.kind, s.author, frozenset(s.value), bool(s.evening), s.withdraws): s for s in coming}
    return list(alike.values())


def _needed(all_of_them: Iterable[Statement], coming: Sequence[Statement]) -> Iterator[str]:
    """The blocks that are coming, and those that they take back."""
    wanted = {one.id for one in coming} | {one.withdraws for one in coming}
    return (block(one).decode() for one in all_of_them if one.id in wanted)
