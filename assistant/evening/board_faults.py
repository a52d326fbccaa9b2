"""How much is wrong with a board: what is found, weighed, and the same for many boards that are tried."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache

from assistant.evening.board import (
    FEW,
    HUNDRED,
    KEPT,
    LOUD,
    MILD,
    SALT,
    SUPPORT,
    BoardItem,
    Finding,
    of_cheeses,
    support,
)
from assistant.knowledge.store import Knowledge

Some = tuple[BoardItem, ...]


def faults(found: Iterable[Finding], knowledge: Knowledge) -> float:
    """How much is wrong with a board: 0 for one in balance."""
    return sum(f.faults * _counts(f.aspect, knowledge) for f in found if f.faults)


@lru_cache(maxsize=32)
def _counts(aspect: str, knowledge: Knowledge) -> float:
    """How much a fault of an aspect counts."""
    return float(knowledge.entry(aspect)["counts"][0])


def faults_of(items: Sequence[BoardItem], knowledge: Knowledge) -> float:
    """The same of a board shared out evenly, without its findings: ten times as quick."""
    supporting = tuple([item for item in items if SUPPORT in item.places])
    cheeses = tuple([item for item in items if item.cheese])
    return _of_some(supporting, cheeses, knowledge) + _of_all(items, knowledge)


@lru_cache(maxsize=KEPT)
def _of_some(supporting: Some, cheeses: Some, knowledge: Knowledge) -> float:
    return faults([support(supporting, knowledge), *of_cheeses(cheeses, knowledge)], knowledge)


def _of_all(items: Sequence[BoardItem], knowledge: Knowledge) -> float:
    """What hangs on everything: too much salt, nothing mild, nothing loud."""
    limits = knowledge.constants
    each = limits["board-grams"] / max(1, len(items)) / HUNDRED
    wrong = _counts(SALT, knowledge) * (each * sum([i.sodium for i in items]) > limits["board-sodium"])
    if len(items) > FEW:
        aromas = [item.aroma for item in items]
        wrong += _counts(MILD, knowledge) * (min(aromas) > limits["board-mild"])
        wrong += _counts(LOUD, knowledge) * (max(aromas) < limits["board-loud"])
    return wrong
