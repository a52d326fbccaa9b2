"""Each sentence of the wording and each number of an evening is asked for by some module."""

from __future__ import annotations

import ast
import re
import tomllib
from pathlib import Path
from typing import Any

import pytest

import assistant
from assistant.knowledge.files import corpus_dir, ontology_dir
from assistant.knowledge.store import shipped

SPOKEN = ("say", "line", "reason", "order", "missing", "plan")
LITERAL = 2  # letters that a name put together must hold as they stand


def names_asked() -> tuple[set[str], list[re.Pattern[str]]]:
    """The texts that stand in the program, and the patterns of those put together."""
    whole: set[str] = set()
    patterns: list[re.Pattern[str]] = []
    for file in Path(assistant.__file__).parent.rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                whole.add(node.value)
            elif isinstance(node, ast.JoinedStr):
                patterns += pattern_of(node)
    return whole, patterns


def pattern_of(node: ast.JoinedStr) -> list[re.Pattern[str]]:
    """What a text put together looks like; none where hardly a letter of it stands fast."""
    parts = [p.value if isinstance(p, ast.Constant) else None for p in node.values]
    if sum(len(str(p)) for p in parts if p is not None) <= LITERAL:
        return []
    return [re.compile("".join(".+" if p is None else re.escape(str(p)) for p in parts))]


def unasked(tables: dict[str, Any]) -> set[str]:
    """The entries of tables that no module asks for by name."""
    whole, patterns = names_asked()
    named = {name: key for key, table in tables.items() if isinstance(table, dict) for name in table}
    return {
        f"{table}.{name}"
        for name, table in named.items()
        if name not in whole and not any(pattern.fullmatch(name) for pattern in patterns)
    }


def read(file: Path) -> dict[str, Any]:
    """The tables of a file."""
    return tomllib.loads(file.read_text("utf-8"))


def test_each_sentence_is_asked_for() -> None:
    wording = read(corpus_dir() / "language" / "wording.toml")
    judged = {f"say.judge-{band.verdict}" for band in shipped().bands}  # by the verdict
    assert unasked({table: wording[table] for table in SPOKEN}) - judged == set()


@pytest.mark.parametrize("name", ["after", "cooling", "limits"])
def test_each_number_of_an_evening_is_asked_for(name: str) -> None:
    assert unasked(read(ontology_dir() / "evening" / f"{name}.toml")) == set()
