"""Prints how many faults the tests notice: `python -m tests.mutants --sample N --seed S`."""

from __future__ import annotations

import argparse
import hashlib
import sys
import tempfile
from collections import Counter
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

from tests.conftest import ROOT
from tests.mutants.making import PACKAGES, Mutant, mutant, sample
from tests.mutants.running import Fate, Forking

TESTS = (
    "tests/pairing", "tests/evening", "tests/test_what_if.py", "tests/test_sugar_terms.py",
    "tests/test_limits.py", "tests/test_choose_answers.py", "tests/test_quantity.py",
    "tests/test_table_asked.py", "tests/test_evening_by_talk.py",
)  # fmt: skip
QUIET = ("-qq", "--tb=no", "-p", "no:cacheprovider")


def main() -> int:
    """Draws, runs and reports."""
    options = arguments().parse_args()
    spots, of = sample(options.sample, options.seed, options.only)
    fates: dict[Mutant, Fate] = {}

    def told(fault: Mutant, fate: Fate, killer: str) -> None:
        fates[fault] = fate
        if options.verbose or fate in ("survived", "untested"):
            print(f"{len(fates)}/{len(spots)} {fate}: {fault.name} {killer}", flush=True)

    patient = {"deadline": None, "suppress_health_check": list(HealthCheck)}
    settings.register_profile("faults", derandomize=True, database=None, **patient)
    settings.load_profile("faults")  # a slow machine is no fault, and a seed gives the same run again
    pytest.main([*QUIET, *TESTS], [Forking(map(mutant, spots), told, _kept())])
    print(report(fates, of, options.seed))
    return 0 if len(fates) == len(spots) else 2


def arguments() -> argparse.ArgumentParser:
    """The options."""
    parser = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__)
    parser.add_argument("--sample", type=int, default=350, metavar="N", help="how many faults (default 350)")
    parser.add_argument("--seed", type=int, default=1, metavar="S", help="which ones (default 1)")
    parser.add_argument("--only", default="", metavar="PART", help="only in files whose path holds PART")
    parser.add_argument("--verbose", action="store_true", help="tell also what was killed, and by which test")
    return parser


def _kept() -> Path:
    """The folder of what was learnt of these tests and this code; another one after any change."""
    digest = hashlib.sha256()
    for folder in (*(ROOT / "assistant" / package for package in PACKAGES), ROOT / "tests"):
        for file in sorted(folder.rglob("*.py")):
            digest.update(b"" if file.parent.name == "mutants" else file.read_bytes())
    return Path(tempfile.gettempdir(), f"goeswith-mutants-{digest.hexdigest()[:16]}")


def report(fates: dict[Mutant, Fate], of: int, seed: int) -> str:
    """The rate, and what survived by kind."""
    counts = Counter(fates.values())
    noticed = counts["killed"] + counts["timed out"]
    kinds = Counter(fault.kind for fault in fates)
    alive = Counter(fault.kind for fault, fate in fates.items() if fate in ("survived", "untested"))
    lines = [f"  {kind}: {alive[kind]} of {number} alive" for kind, number in kinds.most_common()]
    rate = f"{noticed} of {len(fates)} noticed ({100 * noticed / max(len(fates), 1):.1f} %)"
    said = ", ".join(f"{number} {fate}" for fate, number in counts.most_common())
    return "\n".join([f"seed {seed}, drawn from {of}: {rate}: {said}", *lines])


if __name__ == "__main__":
    sys.exit(main())
