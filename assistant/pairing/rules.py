"""Runs the pairing rules on a store that holds the plates of one question and the glasses.

The rules are authored as SHACL CONSTRUCT rules. Here each is run as the SELECT of the very
variables its template would write, read as CSV, because reading triples one by one costs as
much as finding them; a test compares the firings with two engines that run the CONSTRUCT.

The glasses of the cellar stay on a shelf, and so do the plates of the larder, where one wine
looks for a food. Rules that the plates or the glass rule out beforehand are not run.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from typing import NamedTuple, cast

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.knowledge.concepts import Rule
from assistant.pairing.demands import Demands, demands_of, offer_of
from assistant.pairing.facts import PLATES
from assistant.pairing.glass import Glass
from assistant.pairing.glass_asks import glass_ask
from assistant.pairing.plate import Plate
from assistant.pairing.shelf import Shelf, glass_quads, plate_quads

_CONSTRUCT = re.compile(r"CONSTRUCT\s*\{(?P<template>[^}]*)\}\s*WHERE\s*", re.DOTALL)
_SLOT = re.compile(r"(?<![\w:])(?P<property>[\w:]+)\s+[?$](?P<variable>\w+)")
WORKERS = 2
_NAME_AT = len(names.BASE)
_PLATE_AT = len(names.BASE + PLATES)


class Seen(Mapping[str, float]):
    """The values a rule saw, by plate or glass property; turned into numbers when looked at."""

    __slots__ = ("_names", "_texts")

    def __init__(self, names_: Sequence[str], texts: Sequence[str]) -> None:
        self._names, self._texts = names_, texts

    def __getitem__(self, name: str) -> float:
        return float(self._texts[self._names.index(name)])

    def __iter__(self) -> Iterator[str]:
        return iter(self._names)

    def __len__(self) -> int:
        return len(self._names)


class Firing(NamedTuple):
    """One rule that held for one plate and wine: strength 0-1, a cap if a veto, and what it saw."""

    rule: str
    plate: str
    wine: str
    strength: float
    cap: float | None
    values: Mapping[str, float]


@dataclass(frozen=True, slots=True)
class _Query:
    """A rule as a SELECT: the properties its columns stand for, and what it asks of plate and glass."""

    rule: str
    text: str
    at: Mapping[str, int]
    seen: tuple[str, ...]
    demands: Demands
    ask: str


class RuleRunner:
    """The rules as constant query texts; what is found depends on plates and glasses alone."""

    def __init__(self, rules: Mapping[str, Rule]) -> None:
        self._queries = [_query(rule) for rule in rules.values()]
        self._workers = ThreadPoolExecutor(WORKERS)
        self._possible: dict[str, list[_Query]] = {}

    def run(self, plates: Mapping[str, Plate], glasses: Iterable[Glass]) -> list[Firing]:
        """All firings for these plates (by key) and glasses, rule by rule."""
        return self.run_on(Shelf(glass_quads(glasses)), plate_quads(plates), plates)

    def run_on(self, shelf: Shelf, own: Sequence[ox.Quad], plates: Mapping[str, Plate]) -> list[Firing]:
        """The same with a shelf that holds the glasses (or plates); `own` are the other's facts."""
        with shelf.with_facts(own) as store:
            return self._fired(store, plates)

    def run_for(self, glass: Glass, shelf: Shelf, plates: Mapping[str, Plate]) -> list[Firing]:
        """The same for one glass and a shelf of plates, without the rules that this glass rules out."""
        own = glass_quads([glass])
        if glass.wine not in self._possible:
            alone = ox.Store()
            alone.extend(own)
            self._possible[glass.wine] = [q for q in self._queries if alone.query(q.ask)]
        with shelf.with_facts(own) as store:
            return self._fired(store, plates, self._possible[glass.wine])

    def _fired(
        self, store: ox.Store, plates: Mapping[str, Plate], among: Sequence[_Query] | None = None
    ) -> list[Firing]:
        """Runs the rules that could fire; oxigraph works outside the interpreter's lock."""
        offers = [offer_of(plate) for plate in plates.values()]
        asked = self._queries if among is None else among
        queries = [q for q in asked if any(map(q.demands.met_by, offers))]
        tables = self._workers.map(lambda query: _table(query, store), queries)
        return [f for query, table in zip(queries, tables, strict=True) for f in _firings(query, table)]


def _query(rule: Rule) -> _Query:
    head = _CONSTRUCT.search(rule.construct)
    if head is None:
        raise ValueError(f"{rule.id}: sh:construct is not of the form CONSTRUCT {{...}} WHERE {{...}}")
    slots = [(m["property"], m["variable"]) for m in _SLOT.finditer(head["template"])]
    slots.sort(key=lambda slot: not slot[0].startswith("gw:"))  # what was seen comes last
    where = rule.construct[head.end() :]
    chosen = " ".join(f"?{variable}" for _, variable in slots)
    text = f"{names.QUERY_PREFIXES}\nSELECT {chosen} WHERE {where}"
    at = {name: i for i, (name, _) in enumerate(slots)}
    seen = tuple(name.replace(":", ".") for name, _ in slots if not name.startswith("gw:"))
    return _Query(rule.id, text, at, seen, demands_of(where), glass_ask(where))


def _table(query: _Query, store: ox.Store) -> bytes:
    """The rows of a rule as CSV."""
    found = cast(ox.QuerySolutions, store.query(query.text))
    return found.serialize(format=ox.QueryResultsFormat.CSV) or b""


def _firings(query: _Query, table: bytes) -> Iterator[Firing]:
    at = query.at
    for line in table.decode().splitlines()[1:]:
        cells = line.split(",")
        yield Firing(
            query.rule,
            cells[at["gw:plate"]][_PLATE_AT:],
            cells[at["gw:glass"]][_NAME_AT:],
            float(cells[at["gw:strength"]]),
            float(cells[at["gw:cap"]]) if "gw:cap" in at else None,
            Seen(query.seen, cells[len(cells) - len(query.seen) :]),
        )
