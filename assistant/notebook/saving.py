"""Adds statements to a notebook: all of them are on the disk when `add` says so, or none is."""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import dataclass, replace
from hashlib import sha256
from pathlib import Path

from assistant.knowledge.problems import Problem
from assistant.notebook import disk
from assistant.notebook.block import block
from assistant.notebook.faults import faults
from assistant.notebook.reading import LARGEST, Notebook, load, parsed, read_bytes, unreadable
from assistant.notebook.sealing import longer, whole
from assistant.notebook.statement import Statement
from assistant.notebook.versions import newest
from assistant.notebook_place import folder


@dataclass(frozen=True, slots=True)
class Saved:
    """The notebook as it now stands in the file; with `problems`, as it was, and nothing was saved."""

    notebook: Notebook
    problems: tuple[Problem, ...] = ()


def add(notebook: Notebook, *statements: Statement, patience: float = disk.PATIENCE) -> Saved:
    """Appends statements, after whatever others have added since; those already there are not added twice.

    `patience` is how many seconds to wait for the lock. A symbolic link is followed; the folder is made
    only where it is the user's own data folder.
    """
    wrong = tuple(problem for one in statements for problem in faults(one, str(notebook.path)))
    if wrong or not statements:
        return Saved(notebook, wrong)
    try:
        target = Path(os.path.realpath(notebook.path))
        if target.parent == Path(os.path.realpath(folder())):
            disk.make_folder(target.parent)
        with disk.held(target, patience):
            return _add(notebook, target, statements)
    except (OSError, ValueError) as error:
        return Saved(notebook, (disk.unsaved(notebook.path, error),))


def _add(notebook: Notebook, target: Path, statements: Sequence[Statement]) -> Saved:
    """The same with the lock held. Raises OSError."""
    old, now = _now(notebook, target)
    if now.problems:
        return Saved(now, (_refused(now),))
    there = {one.id for one in now.statements}
    fresh = tuple({one.id: one for one in statements if one.id not in there}.values())
    if not fresh:
        disk.sync_folder(target.parent)  # an earlier save may have failed at this very step
        return Saved(now)
    data = _grown(old, now, fresh)
    if len(data) > LARGEST:
        raise OSError(f"it would be larger than {LARGEST // 1_000_000} MB")
    _keep_older(target, old, now.version)
    disk.clear_drafts(target)
    disk.write_whole(target, data)
    digest = sha256(data).hexdigest()
    return Saved(replace(now, statements=(*now.statements, *fresh), version=newest(), digest=digest))


def _now(notebook: Notebook, target: Path) -> tuple[bytes, Notebook]:
    """The file's bytes and what they say, read anew unless they are those that were read before."""
    try:
        data = read_bytes(target)
    except FileNotFoundError:
        return b"", Notebook(notebook.path)
    except OSError as error:
        return b"", Notebook(notebook.path, problems=(unreadable(notebook.path, error),))
    same = notebook.digest == sha256(data).hexdigest()
    return data, notebook if same else parsed(notebook.path, data)


def _refused(now: Notebook) -> Problem:
    """Why nothing is saved into an unsound file: its first problem."""
    first = now.problems[0]
    return replace(first, message=f"nothing was saved, for the notebook is not sound: {first.message}")


def _grown(old: bytes, now: Notebook, fresh: Sequence[Statement]) -> bytes:
    """The new file: the old bytes and the new blocks, or all blocks anew where its format is another."""
    if now.version == newest():
        return longer(old, now.version, len(now.statements), [block(one) for one in fresh])
    return whole(newest(), [block(one) for one in (*now.statements, *fresh)])


def _keep_older(target: Path, old: bytes, version: int) -> None:
    """Keeps a copy of a file whose format is about to change."""
    if version not in (0, newest()):
        name = f"{target.stem}.format-{version}-{sha256(old).hexdigest()[:8]}{target.suffix}"
        disk.write_whole(target.with_name(name), old)


def export(notebook: Notebook, path: Path) -> tuple[Problem, ...]:
    """Writes the statements, those of the sound part of a damaged file, to a file that must be new."""
    if path.exists() or path.is_symlink():
        return (Problem(str(path), "nothing was written: there is a file of this name.", "Name a new one."),)
    return add(load(path), *notebook.statements).problems
