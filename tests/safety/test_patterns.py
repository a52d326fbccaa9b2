"""Every regular expression of the program, run on texts made to be slow for it, stays linear; no query is glued."""

from __future__ import annotations

import ast
import json
import re
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.conftest import ROOT

# Imports everything, reads the data files, answers a few questions, and prints what was compiled by our own files.
COLLECT = """
import json, pkgutil, re, sys, importlib, traceback
found, real = {}, re._compile
def watched(pattern, flags):
    made = real(pattern, flags)
    files = [frame.filename for frame in traceback.extract_stack(limit=8)]
    if any('/assistant/' in file for file in files) and isinstance(made.pattern, str):
        found[made.pattern, int(made.flags)] = next(f for f in reversed(files) if '/assistant/' in f)
    return made
re._compile = watched
import assistant
for module in pkgutil.walk_packages(assistant.__path__, 'assistant.'):
    if not module.name.endswith('__main__'):
        importlib.import_module(module.name)
from assistant.session import Session
session = Session()
for line in ('brie', 'what if I add honey', 'two of us are vegan', 'under 12% alcohol', 'on Friday at 7', 'plan it',
             'when I say fizz I mean cava', 'how many bottles for 12', 'is it true that legs mean quality?'):
    session.ask(line)
print(json.dumps([[*key, file] for key, file in found.items()]))
"""
UNITS = (
    "a", " ", "?", "!", "1", "1.", ".", ",", "-", "'", "\"", "\\\", "(", "[", "{", "<", "#", "\n", "\t", "@", "_",
    "a ", "1 ", "?!", "a,", "a'", "ab ", "a.", " and ", ", and ", "x:", "?x ", "$", "é", "aa\n", "[[", '\\"',
)  # fmt: skip
ENDS = ("", "\0", "x", "!", "\n")
SHORT, TIMES, MOST = 2_000, 4, 4 * 4
"""Texts of this length and so many times longer may take so many times longer: twice the linear, four for noise."""
FLOOR = 0.004
"""Seconds below which a longer text is not slow, whatever the ratio."""


@pytest.fixture(scope="module")
def patterns(environment: dict[str, str]) -> list[tuple[str, int, str]]:
    """Every pattern that the program compiled, with its flags and the file that did."""
    done = subprocess.run(
        [sys.executable, "-c", COLLECT], capture_output=True, encoding="utf-8", timeout=300, env=environment
    )
    assert done.returncode == 0, done.stderr[-2000:]
    return [(pattern, flags, Path(file).name) for pattern, flags, file in json.loads(done.stdout)]


def _units(pattern: str) -> Iterator[str]:
    """Texts to be repeated: the usual ones, and what stands plainly in the pattern itself."""
    yield from UNITS
    yield from dict.fromkeys(word for word in re.findall(r"[A-Za-z]{2,}", pattern)[:3])


def _seconds(compiled: re.Pattern[str], text: str) -> float:
    def once() -> float:
        started = time.process_time()
        for _ in compiled.finditer(text):
            pass
        return time.process_time() - started

    first = once()
    return first if first < FLOOR else min(first, once(), once())


def test_every_pattern_is_known(patterns: list[tuple[str, int, str]]) -> None:
    files = {file for _, _, file in patterns}
    assert len(patterns) > 50
    assert {"in_line.py", "lines.py", "turtle.py", "guests.py", "preferences.py", "words.py", "kept.py"} <= files


def test_every_pattern_is_linear(patterns: list[tuple[str, int, str]]) -> None:
    slow = []
    for pattern, flags, file in patterns:
        compiled = re.compile(pattern, flags)
        for unit in _units(pattern):
            for end in ENDS:
                long = _seconds(compiled, unit * (SHORT * TIMES // len(unit)) + end)
                if long < FLOOR:
                    continue
                short = _seconds(compiled, unit * (SHORT // len(unit)) + end)
                if long > MOST * max(short, FLOOR / MOST):
                    slow.append(f"{file}: {pattern[:80]!r} on {unit!r} and {end!r}: {short:.4f} s, {long:.4f} s")
                    break
    assert slow == []


def test_the_check_finds_a_pattern_that_blows_up() -> None:
    bad = re.compile(r"(?:\s*a)*\s*$x")
    long, short = _seconds(bad, " " * SHORT * TIMES), _seconds(bad, " " * SHORT)
    assert long > MOST * max(short, FLOOR / MOST)


# --- queries

QUERY = re.compile(r"\b(?:SELECT|CONSTRUCT|ASK|INSERT|DELETE|DESCRIBE|LOAD)\b[^.]*(?:WHERE|DATA|\{)")
GLUED = {
    ("rules.py", "_query"): "the authored text of a rule of the graph",
    ("glass_asks.py", "glass_ask"): "the same",
    ("check_rules.py", "_syntax_problems"): "the same",
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
    """Calls of `.query(...)` and `.update(...)` on a store, by function, that are given a text put together there."""
    for function in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(function, ast.FunctionDef):
            for node in ast.walk(function):
                called = isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute)
                if called and node.func.attr in ("query", "update") and node.args:  # type: ignore[union-attr]
                    if isinstance(node.args[0], ast.JoinedStr | ast.BinOp):  # type: ignore[union-attr]
                        yield file.name, function.name


def test_no_query_is_put_together_but_from_the_rules() -> None:
    files = sorted((ROOT / "assistant").rglob("*.py"))
    found = {place for file in files for place in (*_put_together(file), *_asked(file))}
    assert {place for place in found if place not in GLUED} == set()


def test_nothing_in_the_program_reaches_for_the_network() -> None:
    wanted = re.compile(r"^\s*(?:import|from)\s+(?:socket|urllib\\.request|http|requests|ftplib|smtplib|ssl|asyncio)\b", re.M)
    assert [f.name for f in (ROOT / "assistant").rglob("*.py") if wanted.search(f.read_text("utf-8"))] == []
