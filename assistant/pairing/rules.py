"""Runs the pairing rules on a throw-away store that holds the plates and the candidate glasses.

The rules are authored as SHACL CONSTRUCT rules. Here each is run as the SELECT of the very
variables its template would write, read as CSV, because reading triples one by one costs as
much as finding them; a test compares the firings with two engines that run the CONSTRUCT.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, field
from typing import cast

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.knowledge.concepts import Rule
from assistant.pairing.facts import PLATES, glass_facts, plate_facts
from assistant.pairing.glass import Glass
from assistant.pairing.plate import Plate

_CONSTRUCT = re.compile(r"CONSTRUCT\s*\{(?P<template>[^}]*)\}\s*WHERE\s*", re.DOTALL)
_SLOT = re.compile(r"(?P<property>[\w:]+)\s+[?$](?P<variable>\w+)")
_DEMAND = re.compile(r"plate:(?:trait|kind|course)\s+(?P<name>\w+:[\w-]+)\s*[.;]")
_ANY_TRAIT = re.compile(
    r"FILTER EXISTS \{ \?plate plate:trait \?anyTrait \. FILTER\(\?anyTrait IN \((?P<names>[^)]*)\)\) \}"
)


_NAME_AT = len(names.BASE)
_PLATE_AT = len(names.BASE + PLATES)


@dataclass(frozen=True, slots=True)
class Firing:
    """One rule that held for one plate and wine: strength 0-1, a cap if a veto, and what it saw."""

    rule: str
    plate: str
    wine: str
    strength: float
    cap: float | None = None
    values: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Query:
    """A rule as a SELECT: the properties its columns stand for, and what a plate must have."""

    rule: str
    text: str
    columns: tuple[str, ...]
    demands: frozenset[str]
    any_of: frozenset[str]

    def concerns(self, has: Set[str]) -> bool:
        """Whether a plate with these traits, kinds and course could make the rule fire."""
        return self.demands <= has and (not self.any_of or not self.any_of.isdisjoint(has))


class RuleRunner:
    """The rules as constant query texts; `run` is a pure function of plates and glasses."""

    def __init__(self, rules: Mapping[str, Rule]) -> None:
        self._queries = [_query(rule) for rule in rules.values()]
        self._facts: dict[str, tuple[Glass, list[ox.Quad]]] = {}

    def run(self, plates: Mapping[str, Plate], glasses: Sequence[Glass]) -> list[Firing]:
        """All firings for these plates (by key) and glasses, rule by rule."""
        store = ox.Store()
        for key, plate in plates.items():
            store.extend(plate_facts(key, plate))
        for glass in glasses:
            store.extend(self._glass(glass))
        offered = [p.traits | set(p.kinds) | {p.course} for p in plates.values()]
        return [
            firing
            for query in self._queries
            if any(query.concerns(has) for has in offered)
            for firing in _fire(query, store)
        ]

    def _glass(self, glass: Glass) -> list[ox.Quad]:
        """The facts of a glass, kept for as long as the very same glass is asked about."""
        kept = self._facts.get(glass.wine)
        if kept is None or kept[0] is not glass:
            kept = self._facts[glass.wine] = (glass, list(glass_facts(glass)))
        return kept[1]


def _query(rule: Rule) -> _Query:
    head = _CONSTRUCT.search(rule.construct)
    if head is None:
        raise ValueError(f"{rule.id}: sh:construct is not of the form CONSTRUCT {{...}} WHERE {{...}}")
    slots = [(m["property"], m["variable"]) for m in _SLOT.finditer(head["template"])]
    where = rule.construct[head.end() :]
    chosen = " ".join(f"?{variable}" for _, variable in slots)
    text = f"{names.QUERY_PREFIXES}\nSELECT {chosen} WHERE {where}"
    return _Query(rule.id, text, tuple(p for p, _ in slots), _demands(where), _any_of(where))


def _demands(where: str) -> frozenset[str]:
    """Traits, kinds and courses that the outermost pattern asks of the plate: without them no firing."""
    outer, depth = [], 0
    for character in where:
        depth += (character == "{") - (character == "}")
        if depth == 1:
            outer.append(character)
    found = _DEMAND.finditer("".join(outer))
    return frozenset(m["name"].replace(":", "/", 1) for m in found)


def _any_of(where: str) -> frozenset[str]:
    """Traits of which the plate must have at least one."""
    found = _ANY_TRAIT.search(where)
    names_in = found["names"].split(",") if found and _outermost(where, found.start()) else []
    return frozenset(name.strip().replace(":", "/", 1) for name in names_in)


def _outermost(where: str, at: int) -> bool:
    return where[:at].count("{") - where[:at].count("}") == 1


def _fire(query: _Query, store: ox.Store) -> Iterator[Firing]:
    found = cast(ox.QuerySolutions, store.query(query.text))
    table = found.serialize(format=ox.QueryResultsFormat.CSV) or b""
    for line in table.decode().splitlines()[1:]:
        seen = dict(zip(query.columns, line.split(","), strict=True))
        plate, wine = seen.pop("gw:plate"), seen.pop("gw:glass")
        strength, cap = float(seen.pop("gw:strength")), seen.pop("gw:cap", None)
        yield Firing(
            query.rule,
            plate[_PLATE_AT:],
            wine[_NAME_AT:],
            strength,
            None if cap is None else float(cap),
            {name.replace(":", "."): float(value) for name, value in seen.items()},
        )
