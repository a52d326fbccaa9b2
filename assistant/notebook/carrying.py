"""A notebook carried between hosts: what goes out, what comes in, and what of it contradicts what stands.

In every notebook its own host is called by the same name; who takes it in gives that host a name.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from assistant.knowledge.problems import Problem
from assistant.language.fold import key
from assistant.notebook import disk
from assistant.notebook.block import block
from assistant.notebook.facts import facts
from assistant.notebook.merging import Merged, merge
from assistant.notebook.reading import Notebook, load
from assistant.notebook.saving import Saved, add
from assistant.notebook.sealing import whole
from assistant.notebook.standing import standing
from assistant.notebook.statement import Statement, withdrawal
from assistant.notebook.versions import newest

HOST = "host"
"""What the owner of a notebook is called in it."""
_ADDRESS = re.compile(r"[A-Za-z][A-Za-z0-9+.-]{1,30}:/")
LIKED, DISLIKED = ("band/strong", "band/good", "band/fair"), ("band/poor", "band/clash")


@dataclass(frozen=True, slots=True)
class Sent:
    """How many statements were written, and how many that take back earlier ones; with `problems` none.

    `damaged`: only what is sound of the notebook was written.
    """

    count: int = 0
    back: int = 0
    problems: tuple[Problem, ...] = ()
    damaged: bool = False


@dataclass(frozen=True, slots=True)
class Brought:
    """What came in: `there` were in the notebook already, of which `stay_back` are taken back in it.

    `idle` take back what this notebook never had. `against`: what came in beside what stood and is opposed.
    """

    merged: Merged
    there: int = 0
    stay_back: int = 0
    idle: int = 0
    against: tuple[tuple[Statement, Statement], ...] = ()


def send(
    notebook: Notebook, file: Path, name: str = HOST, all_of_it: bool = False, over: bool = False
) -> Sent:
    """Writes what stands, or `all_of_it`, with what was taken back; the host is called `name` in it.

    A file that is there is replaced only with `over` and only where it is a notebook too, and whole or not
    at all; never the notebook itself. Raises nothing.
    """
    told = notebook.statements if all_of_it else _of_use(notebook)
    damaged = bool(notebook.problems)
    try:
        refused = _refused(notebook, file, over)
        if refused or not told:
            return Sent(problems=refused, damaged=damaged)
        blocks = [block(replace(one, author=name) if one.author == HOST else one) for one in told]
        disk.write_whole(file.resolve(), whole(newest(), blocks))
    except (OSError, ValueError, RuntimeError) as error:
        return Sent(problems=(disk.unsaved(file, error),))
    back = sum(one.withdraws is not None for one in told)
    return Sent(len(told) - back, back, damaged=damaged)


def _of_use(notebook: Notebook) -> tuple[Statement, ...]:
    """What stands, without withdrawals of what somebody else said: nobody else would take those in."""
    authors = {one.id: one.author for one in notebook.statements}
    stands = standing(notebook.statements)
    return tuple(s for s in stands if s.withdraws is None or authors.get(s.withdraws, s.author) == s.author)


def _refused(notebook: Notebook, file: Path, over: bool) -> tuple[Problem, ...]:
    """Why the file may not be written; empty where it may."""
    if _ADDRESS.match(str(file)):
        return (_remote(file),)
    if not (file.exists() or file.is_symlink()):
        return ()
    if notebook.path.exists() and file.exists() and file.samefile(notebook.path):
        what, remedy = "nothing was written: this is the notebook itself.", "Name another file."
    elif not over:
        what, remedy = "nothing was written: there is a file of this name.", "Name a new one."
    elif not load(file).version:
        what, remedy = "nothing was written: what is there is no notebook.", "Name another file."
    else:
        return ()
    return (Problem(str(file), what, remedy),)


def bring(own: Notebook, file: Path, name: str) -> Brought:
    """Takes in the notebook in a file, whose host is called `name` here: all that may come in, or none."""
    if _ADDRESS.match(str(file)):
        return Brought(Merged(own, problems=(_remote(file),)))
    theirs = load(file)
    known = {one.id: one for one in own.statements}
    told, idle = _as_known_here(theirs.statements, known, name)
    merged = merge(own, replace(theirs, statements=told), HOST)
    if merged.problems:
        return Brought(merged)
    there = [one for one in told if one.id in known]
    stand = {one.id for one in standing(merged.notebook.statements)}
    back = sum(one.id not in stand for one in there)
    before = standing(own.statements)
    against = _opposed((one for one in merged.added if one.id in stand), before)
    return Brought(merged, len(there), back, idle, against)


def _remote(file: Path) -> Problem:
    what = "this is an address, and nothing is fetched from anywhere."
    return Problem(str(file).replace(":/", "://", 1), what, "Save it as a file and name that.")


def brought_by(own: Notebook, file: Path) -> tuple[Notebook, tuple[Statement, ...]]:
    """A file, and what of it stands in the own notebook and is of others."""
    theirs = load(file)
    ids = {one.id for one in theirs.statements}
    return theirs, tuple(s for s in standing(own.statements) if s.id in ids and s.author != HOST)


def take_out(own: Notebook, told: Sequence[Statement], said: str) -> Saved:
    """Withdraws these statements in one step; nothing is erased."""
    made = [withdrawal(one, said, HOST) for one in told]
    wrong = tuple(problem for one in made for problem in one.problems)
    return Saved(own, wrong) if wrong else add(own, *(one.statement for one in made if one.statement))


def _as_known_here(
    told: Iterable[Statement], known: dict[str, Statement], name: str
) -> tuple[tuple[Statement, ...], int]:
    """The statements under the names people have here, and how many take back what is in neither notebook."""
    found: dict[str, Statement] = {}
    idle = 0
    for one in told:
        there = known.get(one.id)
        if there is not None and facts(replace(one, author=there.author)) == facts(there):
            found[one.id] = there
        elif one.withdraws and there is None and not (one.withdraws in known or one.withdraws in found):
            idle += 1
        else:
            found[one.id] = replace(one, author=name) if one.author == HOST else one
    return tuple(found.values()), idle


def _opposed(
    coming: Iterable[Statement], stood: Iterable[Statement]
) -> tuple[tuple[Statement, Statement], ...]:
    """What comes in with what stood and says the opposite of it, the newest of each."""
    before: dict[tuple[str, ...], list[Statement]] = {}
    for one in stood:
        before.setdefault(_matter(one), []).append(one)
    pairs = ((one, other) for one in coming for other in reversed(before.get(_matter(one), ())))
    return tuple((one, other) for one, other in pairs if _contradict(one, other))


def _matter(one: Statement) -> tuple[str, ...]:
    """What two statements must share to be able to contradict each other."""
    about = tuple(sorted(one.about))
    if one.kind == "alias":
        return (one.kind, *key(str(one.value["alias"])))
    dimension = str(one.value.get("dimension", "")).rpartition("#")[2]  # `schema#fat` is read as `fat`
    return (one.kind, dimension, *about)


def _contradict(one: Statement, other: Statement) -> bool:
    """Whether two statements on the same matter exclude each other."""
    if one.kind == "pairing":
        sides = [(v in LIKED) - (v in DISLIKED) for v in (one.value["verdict"], other.value["verdict"])]
        return sides[0] * sides[1] < 0
    if one.kind == "profile":
        return float(one.value["amount"]) * float(other.value["amount"]) < 0
    if one.kind == "alias":
        return one.about != other.about
    return one.kind == "new-food" and one.value.get("like") != other.value.get("like")
