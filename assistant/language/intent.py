"""Which question it is: an ordered table of signatures, kept as data in corpus/language/intents.toml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from assistant.language.data import read_data


@dataclass(frozen=True, slots=True)
class Signature:
    """What a question has: cue names and how many of each kind of thing."""

    cues: frozenset[str]
    wines: int
    foods: int
    terms: int
    preferences: int
    standing: bool
    generic: bool = False
    bare: bool = False


def read_intents(file: Path) -> list[dict[str, Any]]:
    """The rows of the decision table, in order."""
    return read_data(file, lambda tables: [{"intent": row["intent"], **row} for row in tables["row"]])


def decide(signature: Signature, rows: list[dict[str, Any]]) -> str:
    """The intent of the first row that holds; the table's last row holds always."""
    return next(str(row["intent"]) for row in rows if _holds(row, signature))


def _holds(row: Mapping[str, Any], has: Signature) -> bool:
    if not has.cues.issuperset(row.get("cue", ())) or has.cues.intersection(row.get("without", ())):
        return False
    if "any" in row and not has.cues.intersection(row["any"]):
        return False
    for name in ("standing", "generic", "bare"):
        if row.get(name, getattr(has, name)) != getattr(has, name):
            return False
    return all(
        row.get(name, 0) <= count <= row.get(f"max_{name}", count)
        for name, count in (
            ("wines", has.wines),
            ("foods", has.foods),
            ("terms", has.terms),
            ("preferences", has.preferences),
        )
    )
