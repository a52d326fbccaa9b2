"""`python -m tests.calibration` checks rule weights; with --fit or --write it fits them too.

Ends with 1 where a weight is out of bounds or the page is out of date. No rule is ever changed.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence

from assistant.knowledge.collector import loading
from tests.calibration.bounds import read_settings, refusals
from tests.calibration.scores import Scores
from tests.calibration.table import PAGE, agrees, fitted, page, read_moves


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one mode and prints its page or its complaints; 0 if all is well."""
    options = _options(arguments)
    scores, settings = Scores(), read_settings()
    refused = refusals(scores.engine.knowledge.rules, settings)
    if refused:
        print("\n".join(refused))
        return 1
    if not (options.fit or options.write):
        return _check(scores)
    with loading():  # what a fit keeps is in use to the end
        found = page(scores, settings, fitted(scores, settings))
    print(found)
    if options.write:
        PAGE.write_text(found, encoding="utf-8")
    return 0


def _options(arguments: Sequence[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser("python -m tests.calibration", description=__doc__)
    parser.add_argument("--fit", action="store_true", help="fit with each source left out and print the page")
    parser.add_argument("--write", action="store_true", help=f"the same, and write {PAGE.name}")
    return parser.parse_args(arguments)


def _check(scores: Scores) -> int:
    written = PAGE.read_text(encoding="utf-8")
    found = page(scores, read_settings(), read_moves(written))
    print(found)
    if agrees(written, found):
        return 0
    print(f"{PAGE.name} is out of date: run python -m tests.calibration --write")
    return 1


if __name__ == "__main__":
    sys.exit(main())
