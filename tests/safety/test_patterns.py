"""Every regular expression stays linear on texts made to be slow for it; no query is glued."""

from __future__ import annotations

import ast
import json
import re
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.conftest import ROOT

# Imports everything, reads the data files, answers a few questions, prints what our own files compiled.
COLLECT = """
import json, pkgutil, re, sys, importlib, traceback
found, real = {}, re._compile
def watched(pattern, flags):
    made = real(pattern, flags)
    files = [frame.filename for frame in traceback.extract_stack(limit=8)]
    if any('/assistant/' in file for file in files):
        text = made.pattern if isinstance(made.pattern, str) else made.pattern.decode('latin-1')
        by = next(file for file in reversed(files) if '/assistant/' in file)
        found[text, int(made.flags), isinstance(made.pattern, bytes)] = by
    return made
re._compile = watched
import assistant
for module in pkgutil.walk_packages(assistant.__path__, 'assistant.'):
    if not module.name.endswith('__main__'):
        importlib.import_module(module.name)
from assistant.session import Session
session = Session()
for line in ('brie', 'what if I add honey', 'two of us are vegan', 'under 12% alcohol', 'on Friday at 7',
             'plan it', 'when I say fizz I mean cava', 'save it as friday', 'how many bottles for 12',
             'is it true that legs mean quality?'):
    session.ask(line)
print(json.dumps([[*key, file] for key, file in found.items()]))
"""
Pattern = tuple[str, re.Pattern[Any]]
UNITS = (
    "a", " ", "?", "!", "1", "1.", ".", ",", "-", "'", '"', "\\", "(", "[", "{", "<", "#", "\n", "\t",
    "@", "_",
    "a ", "1 ", "?!", "a,", "a'", "ab ", "a.", " and ", ", and ", "x:", "?x ", "$", "é", "aa\n", "[[", '\\"',
)  # fmt: skip
ENDS = ("", "\0", "x", "!", "\n")
BROUGHT = "…"
"""In what the tokenizer's library brings; it gets short texts only (test_reading_is_linear)."""
SHORT, TIMES, MOST = 500, 4, 3 * 4
"""A text so many times longer may take three times as much longer; by the square it would be four times."""
FLOOR = 0.004
"""Seconds below which a longer text is not slow, whatever the ratio."""


@pytest.fixture(scope="module")
def patterns(environment: dict[str, str], tmp_path_factory: pytest.TempPathFactory) -> list[Pattern]:
    """Every pattern that the program compiled, and those it writes out for when they are needed."""
    done = subprocess.run(
        [sys.executable, "-c", COLLECT], capture_output=True, encoding="utf-8", timeout=300,
        env=environment | {"XDG_DATA_HOME": str(tmp_path_factory.mktemp("data"))},
    )  # fmt: skip
    assert done.returncode == 0, done.stderr[-2000:]
    rows = json.loads(done.stdout)
    compiled = {
        (Path(file).name, re.compile(p.encode("latin-1"), flags) if raw else re.compile(p, flags))
        for p, flags, raw, file in rows
    }
    return sorted(compiled | set(_written()), key=str)


def _written() -> Iterator[Pattern]:
    """Patterns that stand as plain text where they are used."""
    for file in (ROOT / "assistant").rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            used = isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.args
            if used and isinstance(node.func.value, ast.Name) and node.func.value.id == "re":  # type: ignore[union-attr]
                first = node.args[0]  # type: ignore[union-attr]
                if isinstance(first, ast.Constant) and node.func.attr != "escape":  # type: ignore[union-attr]
                    start = "\\A" if node.func.attr in ("match", "fullmatch") else ""  # type: ignore[union-attr]
                    yield file.name, re.compile(f"{start}(?:{first.value})" if start else first.value)  # type: ignore[arg-type,str-bytes-safe]


def _units(pattern: str) -> Iterator[str]:
    """Texts to be repeated: the usual ones, and what stands plainly in the pattern itself."""
    yield from UNITS
    yield from dict.fromkeys(word for word in re.findall(r"[A-Za-z]{2,}", pattern)[:3])


def _seconds(compiled: re.Pattern[Any], text: str | bytes) -> float:
    def once() -> float:
        started = time.process_time()
        for _ in compiled.finditer(text):
            pass
        return time.process_time() - started

    first = once()
    return first if first < FLOOR else min(first, once(), once())


def test_every_pattern_is_known(patterns: list[Pattern]) -> None:
    files = {file for file, _ in patterns}
    assert len(patterns) > 50
    assert {
        "in_line.py",
        "lines.py",
        "turtle.py",
        "guests.py",
        "preferences.py",
        "words.py",
        "kept.py",
    } <= files


def test_every_pattern_is_linear(patterns: list[Pattern]) -> None:
    ours = [
        (file, compiled)
        for file, compiled in patterns
        if not (file == "words.py" and BROUGHT in str(compiled.pattern))
    ]
    slow = [
        f"{file}: {compiled.pattern!r:.90}: {found}" for file, compiled in ours if (found := _slow(compiled))
    ]
    assert not slow, "\n".join(slow)


def _slow(compiled: re.Pattern[Any]) -> str:
    """A text that takes more than its share of time, or nothing."""
    for unit in _units(str(compiled.pattern)):
        for end in ENDS:
            long, short = _text(unit, end, SHORT * TIMES, compiled), _text(unit, end, SHORT, compiled)
            if (took := _seconds(compiled, long)) > FLOOR:
                before = _seconds(compiled, short)
                if took > MOST * max(before, FLOOR / MOST):
                    return f"{unit!r} and {end!r}: {before:.4f} s, {took:.4f} s"
    return ""


def _text(unit: str, end: str, size: int, compiled: re.Pattern[Any]) -> str | bytes:
    text = unit * (size // len(unit)) + end
    return text.encode() if isinstance(compiled.pattern, bytes) else text


def test_the_check_finds_a_pattern_that_blows_up() -> None:
    bad = re.compile(r"(?:\s*a)*\s*$x")
    long = _seconds(bad, " " * SHORT * TIMES)
    short = min(_seconds(bad, " " * SHORT) for _ in range(5))
    assert long > MOST * max(short, FLOOR / MOST)


# --- queries

QUERY = re.compile(r"\b(?:SELECT|CONSTRUCT|ASK|INSERT|DELETE|DESCRIBE|LOAD)\b[^.]*(?:WHERE|DATA|\{)")
GLUED = {
    ("check_rules.py", "_unparsed"): "the authored text of a rule of the graph",
}


def _put_together(file: Path) -> Iterator[tuple[str, str]]:
    """Functions of a file in which a text like a query is put together from parts."""
    tree = ast.parse(file.read_text("utf-8"))
    for function in ast.walk(tree):
        if isinstance(function, ast.FunctionDef | ast.AsyncFunctionDef):
            for node in ast.walk(function):
                made = isinstance(node, ast.JoinedStr) or (
                    isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Mod)
                )
                if made and QUERY.search(ast.unparse(node)):
                    yield file.name, function.name


def _asked(file: Path) -> Iterator[tuple[str, str]]:
    """Functions that give `.query(...)` or `.update(...)` a text put together on the spot."""
    for function in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(function, ast.FunctionDef):
            for node in ast.walk(function):
                if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.args:
                    glued = isinstance(node.args[0], ast.JoinedStr) or (
                        isinstance(node.args[0], ast.BinOp) and node.func.attr == "query"
                    )
                    if glued and node.func.attr in ("query", "update"):
                        yield file.name, function.name


def test_no_query_is_put_together_but_from_the_rules() -> None:
    files = sorted((ROOT / "assistant").rglob("*.py"))
    found = {place for file in files for place in (*_put_together(file), *_asked(file))}
    assert {place for place in found if place not in GLUED} == set()


def test_nothing_in_the_program_reaches_for_the_network() -> None:
    wanted = re.compile(r"^\s*(?:import|from)\s+(?:urllib|http|requests|ftplib|smtplib|ssl|asyncio)\b", re.M)
    assert [f.name for f in (ROOT / "assistant").rglob("*.py") if wanted.search(f.read_text("utf-8"))] == []
