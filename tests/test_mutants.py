"""The tool that puts faults into the code: what it makes, puts in and counts."""

from __future__ import annotations

import sys
from types import ModuleType

import pytest

pytest.importorskip("mutmut", reason="mutmut comes with the extra `mutants`")

from tests.conftest import ROOT
from tests.mutants.__main__ import report
from tests.mutants.making import Mutant, mutant, sample
from tests.mutants.running import KILLED, _in_child, put_in


def test_a_seed_draws_the_same_faults_again() -> None:
    first, of = sample(4, 1, "pairing/score")
    assert first == sample(4, 1, "pairing/score")[0]
    assert first != sample(4, 2, "pairing/score")[0]
    assert of > len(first) == 4


def test_every_fault_changes_its_line_and_compiles() -> None:
    spots, of = sample(40, 1, "pairing/score")
    assert len(set(spots)) == 40 < of
    sound = (ROOT / "assistant/pairing/score.py").read_text(encoding="utf-8").splitlines()
    for fault in map(mutant, spots):
        compile(fault.source, fault.file, "exec")
        faulty = fault.source.splitlines()
        first = next(n for n, pair in enumerate(zip(sound, faulty, strict=False), 1) if pair[0] != pair[1])
        assert fault.line <= first
        assert faulty[: fault.line - 1] == sound[: fault.line - 1]
    assert "argument or method" in {mutant(spot).kind for spot in spots}


def test_a_fault_is_put_into_function_and_method(monkeypatch: pytest.MonkeyPatch) -> None:
    sound = "def pour(ml=60):\n    return ml + 1\nclass Jug:\n    def fill(self): return pour()\n"
    module = ModuleType("assistant.pairing.carafe")
    exec(sound, module.__dict__)
    monkeypatch.setitem(sys.modules, module.__name__, module)
    name = "assistant/pairing/carafe.py"
    put_in(Mutant(name, "pour", 2, "operator", "", "", sound.replace("ml + 1", "ml - 1").replace("60", "61")))
    assert (module.pour(), module.Jug().fill()) == (60, 60)
    put_in(Mutant(name, "Jug.fill", 4, "other", "", "", sound.replace("pour()", "pour(2)")))
    assert module.Jug().fill() == 1


def test_a_fault_that_never_ends_is_ended() -> None:
    def spin() -> int:
        while True:
            pass

    assert _in_child(spin, 1) < 0
    assert _in_child(lambda: KILLED, 1) == KILLED


def test_what_no_test_runs_is_not_called_noticed() -> None:
    made = [Mutant("f", "g", line, "number", "1", "2", "") for line in range(4)]
    fates = dict(zip(made, ("killed", "timed out", "survived", "untested"), strict=True))
    assert "2 of 4 noticed (50.0 %)" in report(fates, 9, 1)  # type: ignore[arg-type]
    assert "number: 2 of 4 alive" in report(fates, 9, 1)  # type: ignore[arg-type]
