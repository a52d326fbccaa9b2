"""A list of 100,000 bottles: how long it takes to read, what it weighs, and what it adds to an answer.

`python -m pytest tests/benchmarks/test_stock.py --benchmark-only`. Seconds and megabytes stand in
`extra_info`; the program that measures is started by itself, so that nothing else weighs on it.
"""

from __future__ import annotations

import csv
import json
import random
import subprocess
import sys
from pathlib import Path

import pytest

from assistant.knowledge.store import shipped
from tests.conftest import ROOT

ROWS, SEED = 100_000, 20_260
FIRST = ("Grey", "Copper", "Salt", "Night", "Low", "Black", "Iron", "Chalk", "Amber", "Dry", "Flood", "North")
SECOND = (
    "Heron",
    "Crane",
    "Stair",
    "Watch",
    "Water",
    "Buoy",
    "Ring",
    "Slip",
    "Light",
    "Dock",
    "Gauge",
    "Mole",
)
MOST_SECONDS, MOST_MEGABYTES, MOST_ADDED = 20.0, 300.0, 2.0
MEASURE = """
import json, sys, time
from pathlib import Path
from assistant.session import Session
from assistant.stock.reading import read_stock
from assistant.stock.records import Stock

QUESTIONS = ("what goes with garlic cheddar", "what goes with oysters under 20", "a white under 15 for sushi",
             "what goes with salmon", "does malbec go with brie", "what goes with Thai curry",
             "a red for duck", "what wine for tiramisu")

def resident():
    status = Path("/proc/self/status").read_text().split("VmRSS:")[1]
    return int(status.split()[0]) / 1024

def took(session, question):
    session.new_conversation()
    session.engine.forget()
    start = time.process_time()
    session.ask(question)
    return time.process_time() - start

def all_of(session):
    for question in QUESTIONS:
        took(session, question)
    return sorted(min(took(session, question) for _ in range(3)) for question in QUESTIONS)

session = Session()
plain, before = all_of(session), resident()
start = time.process_time()
stock = read_stock(Path(sys.argv[1]), session.knowledge, session.parser)
reading = time.process_time() - start
session.stock = stock
listed = all_of(session)
print(json.dumps({"rows": stock.count + stock.left_out, "bottles": stock.count, "read_s": reading,
                  "resident_mb": resident(), "added_mb": resident() - before,
                  "slowest_s": listed[-1], "plain_s": plain[-1], "ratio": sum(listed) / sum(plain)}))
"""


@pytest.fixture(scope="module")
def large(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A list with the shipped style names, half of them in a column and half in invented labels."""
    names = [wine.label for wine in shipped().wines.values() if wine.type == "Wine"]
    chance, file = random.Random(SEED), tmp_path_factory.mktemp("large") / "bottles.csv"
    with file.open("w", newline="", encoding="utf-8") as out:
        rows = csv.writer(out, delimiter=";")
        rows.writerow(["label", "style", "vintage", "price", "alcohol", "stock"])
        for n in range(ROWS):
            style, label = chance.choice(names), f"{chance.choice(FIRST)} {chance.choice(SECOND)} {n}"
            price = f"{chance.randint(600, 9000) / 100:.2f} €".replace(".", ",")
            alcohol = f"{chance.randint(80, 150) / 10:.1f} % vol".replace(".", ",")
            said = [label, style] if n % 2 else [f"{label} {style}", ""]
            rows.writerow([*said, chance.randint(2005, 2025), price, alcohol, chance.randint(0, 24)])
    return file


def measured(file: Path) -> dict[str, float]:
    """What the program of its own found."""
    command = [sys.executable, "-c", MEASURE, str(file)]
    ended = subprocess.run(command, capture_output=True, text=True, cwd=ROOT, timeout=600, check=False)
    assert ended.returncode == 0, ended.stderr
    return {name: round(figure, 3) for name, figure in json.loads(ended.stdout).items()}


@pytest.mark.skipif(sys.platform != "linux", reason="the resident memory is read from /proc")
def test_a_hundred_thousand_bottles(benchmark, large: Path) -> None:  # type: ignore[no-untyped-def]
    found = benchmark.pedantic(measured, args=(large,), rounds=1)
    benchmark.extra_info |= found
    assert (found["rows"], found["bottles"]) == (ROWS, ROWS)
    assert found["read_s"] < MOST_SECONDS
    assert found["resident_mb"] < MOST_MEGABYTES
    assert found["ratio"] < MOST_ADDED
