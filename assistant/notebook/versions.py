"""The formats there were: each step turns the facts of one statement into those of the next format.

There is one format so far, and so no step. When the vocabulary changes: write a function here that takes
and gives Facts, put it under the number of the format that it starts from, and raise nothing else.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.notebook.facts import Facts

Step = Callable[[Facts], Facts]
STEPS: dict[int, Step] = {}
"""The step from each old format to the next."""


def newest() -> int:
    """The format that is written."""
    return 1 + len(STEPS)


def migrated(said: Facts, version: int) -> Facts:
    """Facts of an older format as the newest one has them."""
    for number in range(version, newest()):
        said = STEPS[number](said)
    return said
