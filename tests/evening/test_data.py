"""Every number of an evening has its range in order, a unit, a basis and a source."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from typing import Any

import pytest

from assistant.evening.facts import tables
from assistant.evening.kit import measures
from assistant.evening.needs import _rows
from assistant.knowledge.store import shipped
from assistant.session import Session
from tests.evening.made import evening

FILES = ("amounts", "cooling", "alcohol", "limits", "kit", "clock", "storage", "after")
BASES = {"measured", "published", "recalled", "judged", "computed"}


MEMORY = re.compile(r"recalled|judge|memory|any handbook", re.IGNORECASE)


def with_basis(value: Any) -> Iterator[dict[str, Any]]:
    """Every table that tells how it is known, at any depth."""
    if isinstance(value, dict) and "basis" in value:
        yield value
    for inner in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from with_basis(inner)


def ranges(value: Any) -> Iterator[dict[str, Any]]:
    """Every table with a typical value, at any depth."""
    if isinstance(value, dict) and "typical" in value:
        yield value
    elif isinstance(value, dict | list):
        for inner in value.values() if isinstance(value, dict) else value:
            yield from ranges(inner)


@pytest.mark.parametrize("name", FILES)
def test_numbers_are_sourced(name: str) -> None:
    found = list(ranges(tables(name)))
    assert found
    for row in found:
        assert row["low"] <= row["typical"] <= row["high"]
        assert row["basis"] in BASES
        assert row["source"]
        assert row["unit"]


@pytest.mark.parametrize("name", [*FILES, "rehearse"])
def test_memory_is_never_called_published(name: str) -> None:
    read = [row for row in with_basis(tables(name)) if row["basis"] in ("published", "measured")]
    assert [row["source"] for row in read if MEMORY.search(row["source"])] == []


def test_the_quantiles_are_those_of_students_distribution() -> None:
    """Half of 95 % lies between 0 and each of them."""
    for degrees, t in enumerate(tables("after")["student"]["t95"], 1):
        assert half_below(t, degrees) == pytest.approx(0.475, abs=5e-5)


def half_below(t: float, degrees: int, steps: int = 2000) -> float:
    """The share of Student's distribution between 0 and `t`, by Simpson's rule."""
    scale = math.exp(math.lgamma((degrees + 1) / 2) - math.lgamma(degrees / 2)) / math.sqrt(degrees * math.pi)
    at = [scale * (1 + (t * i / steps) ** 2 / degrees) ** (-(degrees + 1) / 2) for i in range(steps + 1)]
    return t / steps / 3 * (at[0] + at[-1] + 4 * sum(at[1:-1:2]) + 2 * sum(at[2:-1:2]))


@pytest.mark.parametrize(("name", "table"), [("kit", "item"), ("clock", "step")])
def test_rows_are_sourced(name: str, table: str) -> None:
    for row in tables(name)[table]:
        assert row["basis"] in BASES
        assert row["source"]


@pytest.mark.parametrize(("name", "table"), [("amounts", "class"), ("clock", "out"), ("storage", "keeps")])
def test_kinds_exist(name: str, table: str) -> None:
    known = shipped().digest
    assert all(f"kind/{kind}" in known for row in tables(name)[table] for kind in row["kinds"])


def test_what_keeps_outside_exists() -> None:
    known, ambient = shipped().digest, tables("clock")["ambient"]
    assert ambient["basis"] in BASES
    assert ambient["source"]
    assert [kind for kind in ambient["kinds"] if f"kind/{kind}" not in known] == []
    assert [name for name in (*ambient["foods"], *ambient["except"]) if f"food/{name}" not in known] == []


def test_what_is_eaten_hot_exists() -> None:
    known = shipped().digest
    for row in tables("clock")["hot"]:
        assert [name for name in row["foods"] if f"food/{name}" not in known] == []
        assert [kind for kind in row["kinds"] if f"kind/{kind}" not in known] == []
        assert [name for name in row.get("methods", ()) if f"method/{name}" not in known] == []


def test_the_last_class_takes_every_food() -> None:
    knowledge = shipped()
    last = tables("amounts")["class"][-1]
    assert [
        f for f in knowledge.of_type("Food") if f"kind/{last['kinds'][0]}" not in knowledge.broader(f)
    ] == []


def test_measures_of_kit_and_clock_exist(session: Session) -> None:
    known = measures(evening(session, (), ()), [], [], 0, session.knowledge)
    used = {row["per"] for row in (*tables("kit")["item"], *tables("clock")["step"]) if "per" in row}
    assert used <= set(known)


def test_needs_name_what_exists(session: Session) -> None:
    known = session.knowledge.digest
    topics = session.parser.topics.by_id
    for row in _rows():
        kinds = [k for key in row if key.endswith("kinds") for k in row[key]]
        assert all(f"kind/{kind}" in known for kind in kinds), row["id"]
        assert all(mark in known for mark in row.get("leaves_out", ())), row["id"]
        assert f"diet/{row.get('diet', 'vegan')}" in known
        said = (*row.get("topics", ()), *row.get("topics_said", ()), row.get("topic_marks", "allergy"))
        assert set(said) <= set(topics), row["id"]
