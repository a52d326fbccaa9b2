"""Makes the faults: one changed node of one function, by the operators of mutmut."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from random import Random

import libcst
from libcst.metadata import CodeRange, MetadataWrapper, PositionProvider
from mutmut.mutation.file_mutation import Mutation, MutationVisitor
from mutmut.mutation.mutators import mutation_operators
from mutmut.mutation.pragma_handling import IgnoredCode

from tests.conftest import ROOT

PACKAGES = ("pairing", "evening")
Spot = tuple[Path, int]
KINDS = {
    "Arg": "argument", "Assign": "assignment", "AnnAssign": "assignment", "AugAssign": "assignment",
    "BinaryOperation": "operator", "BooleanOperation": "and, or", "Call": "argument or method",
    "ComparisonTarget": "comparison", "IfExp": "condition", "UnaryOperation": "not, minus",
    "Integer": "number", "Float": "number", "SimpleString": "string", "Name": "true, false",
}  # fmt: skip


@dataclass(frozen=True)
class Mutant:
    """A fault: where it stands, the node before and after, and the whole text of the module with it."""

    file: str
    function: str
    line: int
    kind: str
    before: str
    after: str
    source: str

    @property
    def name(self) -> str:
        """Where it is and what it is, on one line."""
        before, after = (" ".join(text.split()) for text in (self.before, self.after))
        return f"{self.file}:{self.line} {self.function} [{self.kind}] {before} -> {after}"


def sample(number: int, seed: int, only: str = "") -> tuple[list[Spot], int]:
    """So many faults drawn evenly from all in files whose path holds `only`, and how many there are.

    They come in no order, so that a run that was broken off is a sample too.
    """
    files = [file for package in PACKAGES for file in sorted((ROOT / "assistant" / package).glob("*.py"))]
    every = [
        (file, index) for file in files if only in str(file) for index in range(len(_mutations(file)[1]))
    ]
    return Random(seed).sample(every, min(number, len(every))), len(every)


@cache
def _mutations(file: Path) -> tuple[libcst.Module, list[Mutation]]:
    """The module and its faults; those outside of functions run before any test and are left out."""
    wrapped = MetadataWrapper(libcst.parse_module(file.read_text(encoding="utf-8")))
    visitor = MutationVisitor(mutation_operators, IgnoredCode(set(), set(), set()))
    wrapped.visit(visitor)
    inside = [
        m for m in visitor.mutations if isinstance(m.contained_by_top_level_function, libcst.FunctionDef)
    ]
    return wrapped.module, inside


@cache
def _places(file: Path) -> tuple[Mapping[libcst.CSTNode, CodeRange], dict[libcst.CSTNode, str]]:
    """Where each node of a module stands, and the names of its functions."""
    module = _mutations(file)[0]
    lines = MetadataWrapper(module, unsafe_skip_copy=True).resolve(PositionProvider)
    return lines, dict(_functions(module))  # type: ignore[return-value]


def mutant(spot: Spot) -> Mutant:
    """The fault at a spot."""
    file, index = spot
    module, mutations = _mutations(file)
    (lines, names), made = _places(file), mutations[index]
    old, new = made.original_node, made.mutated_node
    function = names[made.contained_by_top_level_function]  # type: ignore[index]
    kind = KINDS.get(type(old).__name__, "other")
    texts = module.code_for_node(old), module.code_for_node(new), module.deep_replace(old, new).code  # type: ignore[attr-defined]
    return Mutant(str(file.relative_to(ROOT)), function, lines[old].start.line, kind, *texts)


def _functions(module: libcst.Module) -> Iterator[tuple[libcst.CSTNode, str]]:
    """The functions of a module and the methods of its classes, with their qualified names."""
    for node in module.body:
        if isinstance(node, libcst.FunctionDef):
            yield node, node.name.value
        elif isinstance(node, libcst.ClassDef):
            for inner in node.body.body:
                if isinstance(inner, libcst.FunctionDef):
                    yield inner, f"{node.name.value}.{inner.name.value}"
