"""Runs the SHACL shapes of ontology/shapes/ with pySHACL and reads its report as problems.

Each shape is a property shape with its own targets, which pySHACL runs for all terms at once.
Blank nodes are given IRIs on the way in, so that a report can be led back to the term they belong
to, and those that say the very same are looked at once.
"""

from __future__ import annotations

import logging
import re
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.knowledge.ground import Ground, shown
from assistant.knowledge.problems import Problem

if TYPE_CHECKING:
    from rdflib import Graph
    from rdflib.term import Literal, URIRef

_BLANK = "blank:"
_XSD = "http://www.w3.org/2001/XMLSchema#"
_NUMERIC = {_XSD + name for name in ("decimal", "integer", "double")}
_NUMBER = re.compile(r"[+-]?(?:\d{1,15}(?:\.\d{0,15})?|\.\d{1,15})(?:[eE][+-]?\d{1,2})?")


def shape_problems(ground: Ground, shapes: Iterable[Path]) -> list[Problem]:
    """Everything that the shapes in these files have against the ground."""
    import rdflib

    rdflib.NORMALIZE_LITERALS = False
    logging.getLogger("rdflib").setLevel(logging.ERROR)
    from pyshacl import validate

    rules = rdflib.Graph()
    for file in shapes:
        rules.parse(file, format="turtle")
    firsts = _firsts(ground)
    data = data_graph(ground, firsts)
    sound, report, _ = validate(data, shacl_graph=rules, inplace=True, inference="none")
    return [] if sound else _read_report(report, ground, firsts)


def _firsts(ground: Ground) -> dict[str, str]:
    """Of each blank node the first one that says the very same, often itself: most amounts are alike."""
    says: dict[str, list[tuple[object, object]]] = {}
    for quad in ground.quads:
        if isinstance(quad.subject, ox.BlankNode):
            says.setdefault(quad.subject.value, []).append((quad.predicate, quad.object))
    firsts: dict[tuple[tuple[object, object], ...], str] = {}
    return {node: firsts.setdefault(tuple(said), node) for node, said in says.items()}


def data_graph(ground: Ground, firsts: Mapping[str, str]) -> Graph:
    """The ground as an rdflib graph, in which the first of alike blank nodes stands for all of them."""
    from rdflib import Graph

    graph = Graph()
    known: dict[object, Literal | URIRef] = {}
    for quad in ground.quads:
        if firsts.get(getattr(quad.subject, "value", "")) not in (None, quad.subject.value):  # type: ignore[union-attr]
            continue
        triple = (quad.subject, quad.predicate, quad.object)
        for node in triple:
            if node not in known:
                known[node] = _converted(node, firsts)
        graph.add((known[triple[0]], known[triple[1]], known[triple[2]]))
    return graph


def _converted(node: object, firsts: Mapping[str, str]) -> Literal | URIRef:
    from rdflib.term import Literal, URIRef

    if isinstance(node, ox.NamedNode):
        return URIRef(node.value)
    if isinstance(node, ox.BlankNode):
        return URIRef(_BLANK + firsts.get(node.value, node.value))
    if isinstance(node, ox.Literal) and _has_plain_value(node):
        return Literal(node.value, datatype=URIRef(node.datatype.value))
    return Literal(str(getattr(node, "value", node)), lang=getattr(node, "language", None))


def _has_plain_value(literal: ox.Literal) -> bool:
    """Whether a literal is a number or truth value; all others are text, for pySHACL fails on some."""
    datatype = literal.datatype.value
    if datatype in _NUMERIC:
        return _NUMBER.fullmatch(literal.value) is not None
    return datatype == _XSD + "boolean" and literal.value in ("true", "false")


def _read_report(report: Graph, ground: Ground, firsts: Mapping[str, str]) -> list[Problem]:
    from rdflib.namespace import SH

    alike: dict[str, list[str]] = {}
    for node, first in firsts.items():
        alike.setdefault(_BLANK + first, []).append(node)
    problems = []
    for result in report.subjects(SH.focusNode, None):
        focus, path = str(report.value(result, SH.focusNode)), report.value(result, SH.resultPath)
        message, remedy = split(str(report.value(result, SH.resultMessage)))
        values = {"value": _shown(report.value(result, SH.value))}
        for node in alike.get(focus, [focus]):
            problems.append(ground.problem(node, message, remedy, values, str(path) if path else None))
    return list(dict.fromkeys(problems))


def split(message: str) -> tuple[str, str]:
    """A shape's message as what is wrong and what to do: `has no pH: add ...` becomes two sentences."""
    wrong, _, remedy = message.partition(": ")
    return f"{wrong}.", f"{remedy[:1].upper()}{remedy[1:]}."


def _shown(value: object) -> str:
    from rdflib.term import URIRef

    if isinstance(value, URIRef):
        return "[ ... ]" if value.startswith(_BLANK) else names.curie(value)
    return shown(str(value))
