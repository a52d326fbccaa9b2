"""Fixture files of the checks: `name.good.ttl` is sound, `name.bad.ttl` says itself what must be found.

A line `# expect: term: message` in a bad file stands for one problem; the message may be cut short.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path

from assistant.knowledge.files import ontology_dir
from assistant.knowledge.ground import Ground
from assistant.knowledge.problems import Problem
from assistant.knowledge.turtle import Turtle, read_turtle

FIXTURES = Path(__file__).parent / "fixtures"
CONTEXT = (
    "schema.ttl", "scales.ttl", "composition.ttl", "kinds-food.ttl", "kinds-wine.ttl", "traits.ttl",
    "regions.ttl", "aromas.ttl", "grapes.ttl", "families.ttl", "sources.ttl", "care.ttl", "data/methods.ttl",
)  # fmt: skip


@lru_cache(maxsize=1)
def context() -> tuple[Turtle, ...]:
    """The small vocabularies of the shipped knowledge, on which the fixtures build."""
    return tuple(read_turtle(ontology_dir() / name, name) for name in CONTEXT)


def ground(file: Path, with_context: bool = False) -> Ground:
    """One fixture, with the small vocabularies or alone."""
    return Ground([*(context() if with_context else ()), read_turtle(file, file.name)])


def fixture(folder: str, name: str, sort: str) -> Path:
    """The `good` or `bad` fixture of a name."""
    return FIXTURES / folder / f"{name}.{sort}.ttl"


def names(folder: str) -> set[str]:
    """Names that have fixtures in a folder, one of them at least."""
    return {file.name.split(".")[0] for file in (FIXTURES / folder).iterdir()}


def told(problems: Iterable[Problem], file: Path) -> list[str]:
    """`term: message` of every problem in this file, sorted."""
    return sorted(f"{p.term}: {p.message}" for p in problems if p.source == file.name)


def as_expected(found: list[str], file: Path) -> bool:
    """Whether what was found are exactly the problems that the fixture expects."""
    expected = sorted(re.findall(r"^# expect: (.+)$", file.read_text("utf-8"), re.MULTILINE))
    pairs = list(zip(found, expected, strict=False))
    return len(found) == len(expected) > 0 and all(one.startswith(other) for one, other in pairs)


def well_told(problem: Problem) -> bool:
    """Whether a problem has its place and two whole sentences."""
    sentences = (problem.message, problem.remedy)
    whole = all(text.endswith(".") and "{" not in text.replace("{ ... }", "") for text in sentences)
    return whole and problem.remedy[0].isupper() and bool(problem.line or problem.term == "[ ... ]")
