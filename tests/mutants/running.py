"""Runs tests against faults, each in a process of its own that is forked after the tests were collected."""

from __future__ import annotations

import importlib
import json
import os
import resource
import sys
import time
import types
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Any, Literal

import pytest
from coverage import Coverage, CoverageData

from tests.conftest import ROOT
from tests.mutants.making import PACKAGES, Mutant

Fate = Literal["killed", "timed out", "survived", "untested"]
KILLED, SURVIVED, BROKEN = 10, 11, 12
STARTS_A_PROGRAM = {"goeswith", "environment", "usual_environment", "browser"}
QUICK_SECONDS, LEAST_SECONDS, TIMES = 6.0, 20, 5
SLOWEST_SECONDS = 3.0


class Forking:
    """A plugin of pytest that runs, in place of the tests themselves, the tests against each fault."""

    def __init__(
        self, mutants: Iterable[Mutant], told: Callable[[Mutant, Fate, str], None], kept: Path
    ) -> None:
        self.mutants, self.told, self.kept = mutants, told, kept

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Learns which test runs which line, then puts every fault to its tests."""
        items = [i for i in session.items if not STARTS_A_PROGRAM & set(getattr(i, "fixturenames", ()))]
        _warm()
        if not self.kept.exists():
            _in_child(lambda: _learn(items, self.kept), None)
        seconds = json.loads((self.kept / "seconds.json").read_text(encoding="utf-8"))
        data = CoverageData(str(self.kept / "lines"))
        data.read()
        for mutant in self.mutants:
            self._judge(mutant, _quick(items, _running(data, mutant), seconds), seconds)
        return True

    def _judge(self, mutant: Mutant, items: Sequence[pytest.Item], seconds: dict[str, float]) -> None:
        if not items:
            return self.told(mutant, "untested", "")
        allowed = int(LEAST_SECONDS + TIMES * sum(seconds[item.nodeid] for item in items))
        note = self.kept / "killer"
        note.unlink(missing_ok=True)
        code = _in_child(lambda: _against(mutant, items, note), allowed)
        fates: dict[int, Fate] = {KILLED: "killed", SURVIVED: "survived"}
        if code == BROKEN:
            raise RuntimeError(f"the fault could not be put in: {mutant.name}")
        return self.told(mutant, fates.get(code, "timed out"), note.read_text() if note.exists() else "")


def _warm() -> None:
    """Loads what has nothing to do with both packages, and forgets what they did meanwhile."""
    from assistant.session import Session

    Session()
    for name, module in list(sys.modules.items()):
        if name.startswith("assistant.") and name.split(".")[1] in (*PACKAGES, "answers"):
            for value in vars(module).values():
                getattr(value, "cache_clear", lambda: None)()


def _in_child(work: Callable[[], int], seconds: int | None) -> int:
    """The exit code of work done in a fork, negative where it was ended by a signal or its time was up."""
    sys.stdout.flush()
    child = os.fork()
    if not child:
        if seconds:
            resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds + 1))
        code = BROKEN
        try:
            code = work()
        finally:
            os._exit(code)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def _learn(items: Sequence[pytest.Item], kept: Path) -> int:
    """Runs every test once; keeps its seconds, and the lines of both packages that it ran."""
    kept.mkdir(parents=True)
    packages = [f"assistant.{package}" for package in PACKAGES]
    measured = Coverage(data_file=str(kept / "lines"), source_pkgs=packages, config_file=False)
    seconds = {}
    measured.start()
    for item, following in _with_next(items):
        measured.switch_context(item.nodeid)
        started = time.process_time()
        sound = _passes(item, following)
        seconds[item.nodeid] = time.process_time() - started if sound else -1.0
    measured.stop()
    measured.save()
    (kept / "seconds.json").write_text(json.dumps(seconds), encoding="utf-8")
    return 0


def _running(data: CoverageData, mutant: Mutant) -> set[str]:
    """The ids of the tests that run the line of a fault, or else any line of a statement around it."""
    lines = data.contexts_by_lineno(str(ROOT / mutant.file))
    for line in range(mutant.line, max(mutant.line - 8, 0), -1):
        if found := set(lines.get(line, ())) - {""}:
            return found
    return set()


def _quick(items: Iterable[pytest.Item], ids: set[str], seconds: dict[str, float]) -> list[pytest.Item]:
    """The quickest of the tests with these ids that passed, as many as a fault is given, file by file."""
    able = sorted(
        (i for i in items if i.nodeid in ids and 0 <= seconds[i.nodeid] <= SLOWEST_SECONDS),
        key=lambda i: seconds[i.nodeid],
    )
    taken, left = [], QUICK_SECONDS
    for item in able:
        left -= seconds[item.nodeid]
        if left < 0:
            break
        taken.append(item)
    first = {item.path: index for index, item in reversed(list(enumerate(taken)))}
    return sorted(taken, key=lambda item: first[item.path])


def _against(mutant: Mutant, items: Sequence[pytest.Item], note: Path) -> int:
    """Whether the tests notice a fault; stops at the first that does, and notes its id."""
    put_in(mutant)
    for item, following in _with_next(items):
        if not _passes(item, following):
            note.write_text(item.nodeid)
            return KILLED
    return SURVIVED


def put_in(mutant: Mutant) -> None:
    """Gives the function of a fault the code and the defaults that it has with the fault."""
    name = mutant.file.removesuffix(".py").replace("/", ".")
    module = importlib.import_module(name)  # first, as dataclasses look their module up by name
    fresh = types.ModuleType(name)
    fresh.__dict__.update(__file__=str(ROOT / mutant.file), __package__=name.rpartition(".")[0])
    exec(compile(mutant.source, mutant.file, "exec"), fresh.__dict__)
    old, new = (_function(of, mutant.function) for of in (module, fresh))
    old.__code__, old.__defaults__, old.__kwdefaults__ = new.__code__, new.__defaults__, new.__kwdefaults__


def _function(module: types.ModuleType, name: str) -> Any:
    found: Any = module
    for part in name.split("."):
        found = vars(found)[part]
    return getattr(found, "__func__", found)


def _passes(item: pytest.Item, following: pytest.Item | None) -> bool:
    from _pytest.runner import runtestprotocol

    return not any(report.failed for report in runtestprotocol(item, log=False, nextitem=following))


def _with_next(items: Sequence[pytest.Item]) -> Iterable[tuple[pytest.Item, pytest.Item | None]]:
    return zip(items, [*items[1:], None], strict=True)
