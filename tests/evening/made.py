"""Evenings, boards and choices made for tests, without a file."""

from __future__ import annotations

import csv
from collections.abc import Mapping, Sequence
from datetime import datetime
from itertools import combinations
from pathlib import Path
from random import Random
from typing import Any

from assistant.evening.choose_task import Bonus, Quota, Scores, Task, allowed, value
from assistant.evening.labels import dishes_of, wine_of
from assistant.evening.records import Evening, FoodLine, GuestNeeds, WineLine
from assistant.knowledge.store import shipped
from assistant.pairing.dish import Table, single, table_of
from assistant.session import Session

BANDS = shipped().bands
REFERENCE = Path(__file__).resolve().parent.parent / "reference"
START = datetime(2027, 2, 12, 19, 0)
WINES = ("brut sparkling", "off-dry Riesling", "Malbec")
FOODS = ("cheddar", "brie", "salami", "almonds", "crackers")


def rows(name: str) -> list[dict[str, str]]:
    """The rows of a reference table."""
    with (REFERENCE / f"{name}.csv").open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


def evening(
    session: Session,
    wines: Sequence[str] = WINES,
    foods: Sequence[str] = FOODS,
    needs: Sequence[tuple[str, Sequence[str]]] = (),
    **said: Any,
) -> Evening:
    """An evening of twelve, two of them not drinking, with these labels."""
    usual = {
        "title": "Test", "start": START, "zone": None, "guests": 12, "non_drinkers": 2, "meal": "tasting",
        "pour_ml": 60.0, "budget": None, "currency": "EUR", "choose": None, "room_celsius": 21.0,
        "wines": tuple(WineLine(w, wine_of(w, session) or "", price=10.0) for w in wines),
        "foods": tuple(FoodLine(f, dishes_of(f, session)) for f in foods),
        "needs": tuple(GuestNeeds(guest, tuple(words)) for guest, words in needs),
    }  # fmt: skip
    return Evening(**(usual | said))


def scores(of: Mapping[str, Sequence[float]], weights: Sequence[float] | None = None) -> Scores:
    """A board of foods `a`, `b`, `c` ... with these scores, of equal weight by default."""
    size = len(next(iter(of.values())))
    shares = tuple(weights or [1.0 / size] * size)
    foods = tuple(chr(ord("a") + i) for i in range(size))
    return Scores(foods, shares, {wine: tuple(row) for wine, row in of.items()}, BANDS)


def random_task(random: Random, wines: int, foods: int, count: int) -> Task:
    """A choice with everything in it: bonuses, doubles, worths, a quota, prices and perhaps a budget."""
    names = [f"wine/{i:02}" for i in range(wines)]
    raw = [random.uniform(0.2, 1.0) for _ in range(foods)]
    of = {name: [random.gauss(5.0, 18.0) for _ in range(foods)] for name in names}
    some = [frozenset(random.sample(names, max(1, wines // 3))) for _ in range(5)]
    return Task(
        scores(of, [w / sum(raw) for w in raw]),
        count,
        random.choice([0.0, 0.35, 1.0]),
        bonuses=tuple(Bonus(str(i), members, random.uniform(0.5, 4.0)) for i, members in enumerate(some)),
        worth={name: random.uniform(-2.0, 1.0) for name in names},
        alike=frozenset(frozenset(random.sample(names, 2)) for _ in range(wines)),
        alike_cost=3.0,
        must=frozenset(random.sample(names, random.choice([0, 0, 1]))),
        quotas=(Quota("some", some[0], random.choice([0, 1]), random.choice([1, 2, count])),),
        prices={name: random.uniform(5.0, 30.0) for name in names},
        budget=random.choice([None, 14.0 * count]),
    )


def table(*foods: str) -> Table:
    """Shipped foods by local name, side by side."""
    return table_of([single(f"food/{food}") for food in foods])


def exhaustive(task: Task) -> tuple[str, ...] | None:
    """The best choice by trying every set, or None: the plain reference for small boards."""
    sets = (s for s in combinations(task.wines, task.count) if allowed(task, s))
    return max(sets, key=lambda s: value(task, s), default=None)
