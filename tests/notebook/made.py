"""Statements and notebooks of the tests, and what every saved file must be."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path

from assistant.notebook import Notebook, Statement, add, load, stated
from assistant.notebook.statement import Value

WHEN = datetime(2026, 5, 1, 19, 30, 15, 250000, tzinfo=UTC)

EACH_KIND: tuple[tuple[str, tuple[str, ...], dict[str, Value | float]], ...] = (
    ("pairing", ("wine/sancerre", "food/brie"), {"verdict": "band/good"}),
    ("alias", ("food/brie",), {"alias": "the white one"}),
    ("profile", ("my aunt's salami",), {"dimension": "plate#salt", "amount": 3.5, "unit": "points"}),
    ("new-food", ("my aunt's salami",), {"like": "food/salami"}),
    ("note", (), {}),
    ("vote", ("wine/sancerre",), {"verdict": "band/strong", "votes": 6, "guest": "Jen"}),
    ("parked", (), {"question": "why does it smell of smoke"}),
    ("first-voice", ("food/brie",), {"first": "host"}),
    ("quantity", ("wine/sancerre",), {"amount": 7, "unit": "bottles", "people": 12}),
)


def made(
    kind: str = "note",
    said: str = "the cellar door sticks",
    author: str = "Ann",
    about: tuple[str, ...] = (),
    value: Mapping[str, Value | float] | None = None,
    withdraws: str | None = None,
) -> Statement:
    """A statement, which must be sound."""
    result = stated(kind, said, author, about=about, value=value, withdraws=withdraws, when=WHEN)
    assert result.statement is not None, result.problems
    return result.statement


def one_of_each() -> list[Statement]:
    """A statement of every kind, the last of which takes back the first."""
    told = [made(kind, f"a {kind}", about=about, value=value) for kind, about, value in EACH_KIND]
    return [*told, made("withdrawn", "forget that", withdraws=told[0].id)]


def filled(path: Path, *statements: Statement) -> Notebook:
    """A notebook with these statements, one of each kind by default."""
    saved = add(load(path), *(statements or one_of_each()))
    assert not saved.problems, saved.problems
    return saved.notebook


def untouched(path: Path, before: bytes) -> bool:
    """Whether a file is byte for byte what it was, with nothing left beside it but a lock."""
    beside = {file.name for file in path.parent.iterdir()} - {path.name, f"{path.name}.lock"}
    return path.read_bytes() == before and not beside
