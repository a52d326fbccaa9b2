"""The log of answers: one JSON object a line, each with a check over the rest of its line.

JSON lines, not Turtle: an entry is appended with one write and never touched again, a line that was cut
or damaged spoils no other, and the log is for counting and reading back, not for questions to the graph.
A line is added even behind a damaged one, for a log must not stop because of an old fault.
"""

from __future__ import annotations

import json
import os
import stat
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from datetime import datetime
from hashlib import sha256
from pathlib import Path
from typing import Any

from assistant.answers.sanitise import safe_record
from assistant.knowledge.problems import Problem
from assistant.notebook import disk
from assistant.notebook.reading import LARGEST, read_bytes, unreadable
from assistant.notebook_place import folder, log_place

LONGEST_LINE = 64_000
_FIELDS = {"time", "question", "intent", "ids", "verdict", "unknown"}


@dataclass(frozen=True, slots=True)
class Entry:
    """One answer: when (with time zone), the question, its intent, the ids it named, the verdict if any.

    `unknown`: the words of the question that were not known. A question of health has no words here.
    """

    time: datetime
    question: str
    intent: str
    ids: tuple[str, ...] = ()
    verdict: str | None = None
    unknown: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Log:
    """The sound entries of a log in their order, and the lines that are not."""

    entries: tuple[Entry, ...]
    problems: tuple[Problem, ...] = ()


def note_answer(
    entry: Entry, path: Path | None = None, patience: float = 2.0, settled: bool = True
) -> tuple[Problem, ...]:
    """Appends an entry; without problems it is on the disk. `patience`: seconds to wait for the lock.

    Not `settled`: it is handed to the system, and a power cut may take it.
    """
    file = log_place(path)
    try:
        target = Path(os.path.realpath(file))
        if target.parent == Path(os.path.realpath(folder())):
            disk.make_folder(target.parent)
        with disk.held(target, patience):
            _append(target, line_of(entry), settled)
    except (OSError, ValueError) as error:
        return (disk.unsaved(file, error),)
    return ()


def line_of(entry: Entry) -> bytes:
    """The line of an entry, with its end. Raises ValueError where it is too long or has no time zone."""
    if entry.time.tzinfo is None:
        raise ValueError("the time has no offset from UTC")
    said = safe_record({**asdict(entry), "time": entry.time.isoformat()})
    line = _dumped({**said, "check": _check(said)}).encode() + b"\n"
    if len(line) > LONGEST_LINE:
        raise ValueError(f"the entry is longer than {LONGEST_LINE} bytes")
    return line


def _append(target: Path, line: bytes, settled: bool) -> None:
    """Appends the line whole, or raises OSError and leaves the file as long as it was."""
    flags = os.O_RDWR | os.O_CREAT | getattr(os, "O_NONBLOCK", 0)
    with os.fdopen(os.open(target, flags, 0o600), "r+b", buffering=0) as out:
        about = os.fstat(out.fileno())
        if not stat.S_ISREG(about.st_mode) or about.st_size + len(line) > LARGEST:
            raise OSError("the log is no plain file, or is full")
        try:
            _write(out, about.st_size, line)
            if settled:
                os.fsync(out.fileno())
        except OSError:
            os.ftruncate(out.fileno(), about.st_size)
            raise
    if settled and not about.st_size:
        disk.sync_folder(target.parent)


def _write(out: Any, size: int, line: bytes) -> None:
    out.seek(max(size - 1, 0))
    left = line if not size or out.read(1) == b"\n" else b"\n" + line
    while left:
        left = left[out.write(left) :]


def read_log(path: Path | None = None) -> Log:
    """Reads a log, the user's own by default; a missing one is empty. Raises nothing."""
    file = log_place(path)
    try:
        data = read_bytes(file)
    except FileNotFoundError:
        return Log(())
    except (OSError, ValueError) as error:
        return Log((), (unreadable(file, error),))
    lines = data.split(b"\n")
    read = [_entry(line) for line in lines[:-1]] + ([None] if lines[-1] else [])
    unsound = [number for number, entry in enumerate(read, 1) if entry is None]
    return Log(tuple(entry for entry in read if entry), _told(file, unsound))


def _told(file: Path, unsound: Sequence[int]) -> tuple[Problem, ...]:
    remedy = "The other lines are read; delete this one if you no longer need it."
    return tuple(Problem(str(file), "this line was cut or changed.", remedy, number) for number in unsound)


def _entry(line: bytes) -> Entry | None:
    """The entry of a line, or None where its check or a field is wrong."""
    try:
        said = json.loads(line) if len(line) <= LONGEST_LINE else None
    except (ValueError, RecursionError):
        return None
    if not isinstance(said, dict) or _dumped(said).encode() != line:
        return None
    if said.pop("check", None) != _check(said) or said.keys() != _FIELDS:
        return None
    return _typed(safe_record(said))


def _typed(said: dict[str, Any]) -> Entry | None:
    texts = [said["time"], said["question"], said["intent"], said["verdict"] or ""]
    lists = [said["ids"], said["unknown"]]
    if not all(isinstance(one, list) for one in lists):
        return None
    if not all(isinstance(one, str) for one in [*texts, *lists[0], *lists[1]]):
        return None
    try:
        time = datetime.fromisoformat(said["time"])
    except ValueError:
        return None
    ids, unknown = map(tuple, lists)
    found = Entry(time, said["question"], said["intent"], ids, said["verdict"], unknown)
    return found if time.tzinfo else None


def _check(said: dict[str, Any]) -> str:
    return sha256(_dumped(said).encode()).hexdigest()[:16]


def _dumped(said: dict[str, Any]) -> str:
    return json.dumps(said, ensure_ascii=True, sort_keys=True)
