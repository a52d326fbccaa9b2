"""How fast a notebook of 10,000 statements opens and grows: seconds stand in `extra_info`, ratios are judged.

`python -m pytest tests/benchmarks/test_notebook.py --benchmark-only`
"""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path

import pyoxigraph as ox
import pytest

from assistant.notebook import Notebook, add, load
from tests.notebook.made import filled, made

STATEMENTS = 10_000


@pytest.fixture(scope="module")
def large(tmp_path_factory: pytest.TempPathFactory) -> Notebook:
    """A notebook of pairings."""
    told = (
        made(
            "pairing", f"the {n}th pair", about=("wine/sancerre", "food/brie"), value={"verdict": "band/good"}
        )
        for n in range(STATEMENTS)
    )
    return filled(tmp_path_factory.mktemp("large") / "notebook.ttl", *told)


def best(work: Callable[[], object], times: int = 5) -> float:
    """The shortest of some runs, in seconds of the processor: other programs do not count."""
    took = []
    for _ in range(times):
        start = time.process_time()
        work()
        took.append(time.process_time() - start)
    return min(took)


def bare(path: Path) -> object:
    """The same file through the Turtle parser alone."""
    return list(ox.parse(path=str(path), format=ox.RdfFormat.TURTLE))


def test_opening_takes_a_few_times_what_the_parser_takes(benchmark, large: Notebook) -> None:  # type: ignore[no-untyped-def]
    assert len(load(large.path).statements) == STATEMENTS
    parser, opening = best(lambda: bare(large.path)), best(lambda: load(large.path))
    benchmark.extra_info |= {"parser_s": round(parser, 2), "open_s": round(opening, 2)}
    benchmark.extra_info["ratio"] = round(opening / parser, 1)
    benchmark.pedantic(load, args=(large.path,), rounds=3)
    assert opening < 12 * parser


def test_adding_does_not_read_it_all_again(benchmark, large: Notebook) -> None:  # type: ignore[no-untyped-def]
    opening = best(lambda: load(large.path))
    notebook = load(large.path)

    def grow() -> None:
        nonlocal notebook
        saved = add(notebook, made())
        assert not saved.problems
        notebook = saved.notebook

    adding = best(grow, 5)
    benchmark.extra_info |= {"open_s": round(opening, 3), "add_s": round(adding, 3)}
    benchmark.pedantic(grow, rounds=3)
    assert adding < opening / 2
