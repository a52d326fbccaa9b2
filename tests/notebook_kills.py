"""Kills saves at random system calls and looks at what is left: `python -m tests.notebook_kills --kills 500`.

A child makes SAVES saves and says each on a pipe once it is told "saved". strace attaches to it and kills
it at one system call: each sort of call that a run makes when left alone is as likely as any other, and so
is each of its times. Afterwards the notebook must be sound, must hold everything that was said to be saved,
and at most one statement more.
"""

from __future__ import annotations

import argparse
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from assistant.notebook import Statement, add, load, stated

SAVES = 4
RUNS_A_FILE = 25
_CALL = re.compile(r"^(?:\d+ +)?(\w+)\(|<\.\.\. (\w+) resumed>", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Run:
    """One run of the child: where it was to be killed, whether it was, the ids it said were saved."""

    call: str
    killed: bool
    saved: tuple[str, ...]


def available() -> str:
    """Why saves cannot be killed here; empty where they can."""
    if shutil.which("strace") is None:
        return "strace is not installed"
    with tempfile.TemporaryDirectory() as folder:
        return "" if baseline(Path(folder)) else "strace may not attach to a process here"


def noted(text: str) -> Statement:
    """A note by Ann."""
    made = stated("note", text, "Ann").statement
    assert made is not None
    return made


def child(file: Path, go: int, say: int) -> None:
    """Waits to be told to go, then saves; never returns."""
    os.read(go, 1)
    for number in range(SAVES):
        note = noted(f"note {number}")
        if not add(load(file), note).problems:
            os.write(say, f"{note.id}\n".encode())
    os._exit(0)


def run(file: Path, trace: Path, options: Sequence[str]) -> Run | None:
    """Runs the child under strace; None where strace cannot attach."""
    go, tell = os.pipe()
    hear, say = os.pipe()
    pid = os.fork()
    if not pid:
        child(file, go, say)
    os.close(say)
    tracer = subprocess.Popen(
        ["strace", "-f", "-p", str(pid), "-o", str(trace), *options], stderr=subprocess.PIPE, text=True
    )
    assert tracer.stderr is not None
    attached = "attached" in tracer.stderr.readline()
    os.write(tell, b"x")
    with os.fdopen(hear) as heard:
        saved = tuple(heard.read().split())
    status = os.waitpid(pid, 0)[1]
    tracer.communicate(timeout=20)
    for end in (go, tell):
        os.close(end)
    return Run(" ".join(options), os.WIFSIGNALED(status), saved) if attached else None


def baseline(folder: Path) -> list[str]:
    """The system calls of a run that is left alone, in their order; none where strace cannot attach."""
    trace = folder / "trace"
    if run(folder / "notebook.ttl", trace, ()) is None:
        return []
    return [first or second for first, second in _CALL.findall(trace.read_text())]


def fault(before: Sequence[str], after: Path, found: Run) -> str:
    """What is wrong with the file after a run; empty where nothing is."""
    notebook = load(after)
    ids = [one.id for one in notebook.statements]
    fresh = ids[len(before) :]
    if notebook.problems:
        return f"unsound: {notebook.problems[0]}"
    if ids[: len(before)] != list(before) or tuple(fresh[: len(found.saved)]) != found.saved:
        return "a statement that was saved is lost"
    return "" if len(fresh) <= len(found.saved) + 1 else "more statements than were made"


def kills(number: int, folder: Path, seed: int = 1) -> tuple[int, Counter[str], list[str]]:
    """How many runs were killed, in which calls, and what was wrong afterwards."""
    (folder / "baseline").mkdir()
    calls, chance = baseline(folder / "baseline"), random.Random(seed)
    where: Counter[str] = Counter()
    faults: list[str] = []
    tries = 0
    while where.total() < number and tries < 3 * number:
        file = folder / f"{tries // RUNS_A_FILE}" / "notebook.ttl"
        file.parent.mkdir(exist_ok=True)
        before = [one.id for one in load(file).statements]
        name = chance.choice(sorted(set(calls)))
        nth = chance.randint(1, calls.count(name))
        found = run(file, folder / "trace", ("-e", f"inject={name}:signal=KILL:when={nth}"))
        tries += 1
        assert found is not None
        where[name] += found.killed
        wrong = fault(before, file, found)
        faults += [f"{found.call}: {wrong}"] if wrong else []
    return where.total(), where, faults


def main(arguments: Sequence[str] | None = None) -> int:
    """Prints how many saves were killed where, and every fault."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--kills", type=int, default=500)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args(arguments)
    why = available()
    if why:
        print(why)
        return 1
    with tempfile.TemporaryDirectory() as folder:
        killed, where, faults = kills(options.kills, Path(folder), options.seed)
    print(f"{killed} saves killed, {len(faults)} faults")
    print(", ".join(f"{name} {times}" for name, times in where.most_common()))
    print("\n".join(faults))
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
