"""How fast an evening is chosen and planned: `python -m pytest tests/benchmarks --benchmark-only`."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from statistics import median
from time import perf_counter

import pytest

from assistant.evening.plan import plan
from assistant.evening.records import Evening
from assistant.evening.selecting import select
from assistant.evening.tasting import taste
from assistant.session import Session
from tests.evening.made import evening

WINES = 35
FOODS = (
    "brie", "Stilton", "goat cheese", "manchego", "garlic cheddar", "salami", "prosciutto", "olives",
    "almonds", "grilled salmon", "oysters", "vindaloo", "roast chicken", "steak", "mushroom risotto",
    "pizza", "crackers", "dark chocolate", "apple pie", "grapes",
)  # fmt: skip
NEEDS = [
    ("R.", ["pregnant", "tree nut allergy"]),
    ("Mo", ["vegan"]),
    ("K.", ["coeliac"]),
    ("L.", ["milk allergy"]),
]
ALL_GUESTS = {"guests": 20, "non_drinkers": 3, "needs": NEEDS, "budget": 400.0}
RUNS = 5
MOST_RATIO = 2.2


@lru_cache(maxsize=1)
def session() -> Session:
    """One session for all evenings."""
    return Session()


def labels(count: int) -> list[str]:
    """So many wines, the easiest to buy first."""
    wines = [wine for wine in session().knowledge.wines.values() if wine.type == "Wine"]
    return [wine.label for wine in sorted(wines, key=lambda w: (-w.availability, w.id))][:count]


def constrained() -> Evening:
    """Five of 35 wines for 20 foods, with all limits there are: money, what must be and what is owned."""
    made = evening(session(), labels(WINES), FOODS, choose=5, **ALL_GUESTS)
    lines = [replace(w, price=8.0 + i % 11, must=i == 3, owned=int(i == 9)) for i, w in enumerate(made.wines)]
    return replace(made, wines=tuple(lines))


def chosen(made: Evening) -> tuple[str, ...]:
    """The wines of an evening, nothing kept from before."""
    session().engine.forget()
    return select(made, taste(made, session().engine), session().engine).poured


def planned(made: Evening) -> float:
    """Seconds for a whole plan, nothing kept from before."""
    session().engine.forget()
    start = perf_counter()
    plan(made, session())
    return perf_counter() - start


def test_five_of_35_wines_for_20_foods(benchmark) -> None:  # type: ignore[no-untyped-def]
    made = constrained()
    assert len(made.wines) == WINES
    assert len(made.foods) == len(FOODS) == 20
    poured = benchmark.pedantic(chosen, args=(made,), rounds=RUNS, warmup_rounds=1)
    assert len(poured) == 5


def test_whole_plan(benchmark) -> None:  # type: ignore[no-untyped-def]
    benchmark.pedantic(planned, args=(evening(session(), labels(6), FOODS, **ALL_GUESTS),), rounds=RUNS)


@pytest.mark.parametrize("wines", [5, 6])
def test_whole_plan_cold(benchmark, tmp_path: Path, wines: int) -> None:  # type: ignore[no-untyped-def]
    """From the command line, loading everything; with five a sixth is looked for in the shops."""
    file = tmp_path / "evening.toml"
    file.write_text(written(wines), "utf-8")
    command = [sys.executable, "-m", "assistant", "plan", str(file), "--json"]
    done = benchmark.pedantic(subprocess.run, args=(command,), kwargs={"capture_output": True}, rounds=RUNS)
    assert done.returncode == 0, done.stdout


def written(count: int) -> str:
    """The evening as its file."""
    wines = [f'[[wines]]\nlabel = "{label}"\nprice = 12.0' for label in labels(count)]
    foods = [f'[[foods]]\nlabel = "{label}"' for label in FOODS]
    needs = [f'[[needs]]\nguest = "{guest}"\nneeds = {said}' for guest, said in NEEDS]
    head = "start = 2999-02-12T19:00:00\nguests = 20\nnon_drinkers = 3\nbudget = 400.0"
    return "\n".join([head, *wines, *foods, *needs])


def test_twice_the_foods(benchmark) -> None:  # type: ignore[no-untyped-def]
    """The ratio of a plan with 20 foods to one with 10, taken in turn within one run."""
    few, many = (evening(session(), labels(6), FOODS[:count], **ALL_GUESTS) for count in (10, 20))
    planned(many)
    pairs = [(planned(few), planned(many)) for _ in range(RUNS)]
    ratio = median(m for _, m in pairs) / median(f for f, _ in pairs)
    benchmark.extra_info["ratio"] = round(ratio, 2)
    assert ratio <= MOST_RATIO
    benchmark.pedantic(planned, args=(many,), rounds=RUNS)


@pytest.mark.parametrize("count", [10, 20])
def test_the_evenings_are_read_in_full(count: int) -> None:
    """The benchmark would be fast for nothing if a label were not understood."""
    made = evening(session(), labels(WINES), FOODS[:count])
    assert all(line.wine for line in made.wines)
    assert all(line.dishes for line in made.foods)
