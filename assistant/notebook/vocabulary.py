"""The vocabulary of notebooks as ontology/notebook.ttl and its shapes give it: kinds, keys, limits."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache
from typing import Any

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.knowledge.files import ontology_dir

NOTE = names.BASE + "note#"
PROV = "http://www.w3.org/ns/prov#"
SCHEMA_ORG = "https://schema.org/"
XSD = "http://www.w3.org/2001/XMLSchema#"
AUTHOR, WHEN = PROV + "wasAttributedTo", PROV + "generatedAtTime"
NAME, SAID, ABOUT = SCHEMA_ORG + "name", SCHEMA_ORG + "text", SCHEMA_ORG + "about"
EVENING, WITHDRAWS = NOTE + "evening", NOTE + "withdraws"
SHAPES = "shapes/notebook.ttl"
_SH = "http://www.w3.org/ns/shacl#"
_NOTATION = "http://www.w3.org/2004/02/skos/core#notation"
_OWL_CLASS = ox.NamedNode("http://www.w3.org/2002/07/owl#Class")
_RANGE = "http://www.w3.org/2000/01/rdf-schema#range"


@dataclass(frozen=True, slots=True)
class Limit:
    """What a property shape asks of one property, for statements of some classes or with some property."""

    classes: frozenset[str]
    having: frozenset[str]
    path: str
    least: int
    most: int | None
    shortest: int
    longest: int | None
    pattern: re.Pattern[str] | None
    among: frozenset[str]
    datatype: str | None
    low: Decimal | None
    high: Decimal | None
    message: str


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """Class of each kind, property of each key, both the other way round, ranges, limits of the shapes."""

    kinds: dict[str, str]
    keys: dict[str, str]
    kind_of: dict[str, str]
    key_of: dict[str, str]
    ranges: dict[str, str]
    limits: tuple[Limit, ...]


@lru_cache(maxsize=1)
def vocabulary() -> Vocabulary:
    """The shipped vocabulary, read once."""
    terms = _store("notebook.ttl")
    classes = {quad.subject.value for quad in _quads(terms, names.RDF_TYPE, _OWL_CLASS)}
    named = [(quad.object.value, quad.subject.value) for quad in _quads(terms, _NOTATION)]
    ranges = {quad.subject.value: quad.object.value for quad in _quads(terms, _RANGE)}
    kinds = {notation: iri for notation, iri in named if iri in classes}
    keys = {notation: iri for notation, iri in named if iri in ranges}
    kind_of, key_of = ({iri: name for name, iri in named.items()} for named in (kinds, keys))
    return Vocabulary(kinds, keys, kind_of, key_of, ranges, tuple(_limits(_store(SHAPES))))


@lru_cache(maxsize=1024)
def limits(kind: str, properties: frozenset[str]) -> tuple[Limit, ...]:
    """The limits that concern a statement of this class with these properties."""
    return tuple(
        limit
        for limit in vocabulary().limits
        if kind in limit.classes or not limit.having.isdisjoint(properties)
    )


def _quads(terms: Any, predicate: str, value: ox.NamedNode | None = None) -> Any:
    return terms.quads_for_pattern(None, ox.NamedNode(predicate), value, None)


def _store(name: str) -> Any:
    store = ox.Store()
    store.bulk_load(path=str(ontology_dir() / name), format=ox.RdfFormat.TURTLE)
    return store


def _limits(shapes: Any) -> Iterator[Limit]:
    """A limit for each shape whose path is one property; pySHACL runs all of them at import and check."""
    for quad in sorted(_quads(shapes, _SH + "path"), key=lambda quad: str(quad.subject)):
        said: dict[str, list[Any]] = {}
        for other in shapes.quads_for_pattern(quad.subject, None, None, None):
            said.setdefault(other.predicate.value.removeprefix(_SH), []).append(other.object)
        targets = "targetClass" in said or "targetSubjectsOf" in said
        if targets and isinstance(quad.object, ox.NamedNode):
            yield _limit(said, shapes)


def _limit(said: dict[str, list[Any]], shapes: Any) -> Limit:
    one = {name: values[0].value for name, values in said.items()}
    return Limit(
        frozenset(node.value for node in said.get("targetClass", ())),
        frozenset(node.value for node in said.get("targetSubjectsOf", ())),
        one["path"],
        int(one.get("minCount", 0)),
        int(one["maxCount"]) if "maxCount" in one else None,
        int(one.get("minLength", 0)),
        int(one["maxLength"]) if "maxLength" in one else None,
        re.compile(one["pattern"]) if "pattern" in one else None,
        frozenset(_list(said["in"][0], shapes)) if "in" in said else frozenset(),
        one.get("datatype"),
        Decimal(one["minInclusive"]) if "minInclusive" in one else None,
        Decimal(one["maxInclusive"]) if "maxInclusive" in one else None,
        one["message"],
    )


def _list(node: Any, shapes: Any) -> Iterator[str]:
    while node.value != names.RDF_NIL:
        first, rest = (
            next(iter(shapes.quads_for_pattern(node, ox.NamedNode(link), None, None))).object
            for link in (names.RDF_FIRST, names.RDF_REST)
        )
        yield first.value
        node = rest
