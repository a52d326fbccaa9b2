"""Runs the SHACL shapes of ontology/shapes/ with pySHACL and reads its report as problems.

Each shape is a property shape with its own targets, which pySHACL runs for all terms at once.
Blank nodes are given IRIs on the way in, so that a report can be led back to the term they belong to.
"""

from __future__ import annotations

import logging
from collections.abc import Iterable
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


def shape_problems(ground: Ground, shapes: Iterable[Path]) -> list[Problem]:
    """Everything that the shapes in these files have against the ground."""
    import rdflib

    rdflib.NORMALIZE_LITERALS = False
    logging.getLogger("rdflib").setLevel(logging.ERROR)
    from pyshacl import validate

    rules = rdflib.Graph()
    for file in shapes:
        rules.parse(file, format="turtle")
    sound, report, _ = validate(data_graph(ground), shacl_graph=rules, inplace=True, inference="none")
    return [] if sound else _read_report(report, ground)


def data_graph(ground: Ground) -> Graph:
    """The ground as an rdflib graph, in which blank nodes are IRIs of the scheme `blank:`."""
    from rdflib import Graph

    graph = Graph()
    known: dict[object, Literal | URIRef] = {}
    for quad in ground.quads:
        triple = (quad.subject, quad.predicate, quad.object)
        for node in triple:
            if node not in known:
                known[node] = _converted(node)
        graph.add((known[triple[0]], known[triple[1]], known[triple[2]]))
    return graph


def _converted(node: object) -> Literal | URIRef:
    from rdflib.term import Literal, URIRef

    if isinstance(node, ox.NamedNode):
        return URIRef(node.value)
    if isinstance(node, ox.BlankNode):
        return URIRef(_BLANK + node.value)
    if isinstance(node, ox.Literal) and not node.language:
        return Literal(node.value, datatype=URIRef(node.datatype.value))
    return Literal(str(getattr(node, "value", node)), lang=getattr(node, "language", None))


def _read_report(report: Graph, ground: Ground) -> list[Problem]:
    from rdflib.namespace import SH

    problems = []
    for result in report.subjects(SH.focusNode, None):
        focus = str(report.value(result, SH.focusNode)).removeprefix(_BLANK)
        path = report.value(result, SH.resultPath)
        value = report.value(result, SH.value)
        message, remedy = split(str(report.value(result, SH.resultMessage)))
        values = {"value": _shown(value)}
        predicate = str(path) if path else None
        problems.append(ground.problem(focus, message, remedy, values, predicate))
    return problems


def split(message: str) -> tuple[str, str]:
    """A shape's message as what is wrong and what to do: `has no pH: add ...` becomes two sentences."""
    wrong, _, remedy = message.partition(": ")
    return f"{wrong}.", f"{remedy[:1].upper()}{remedy[1:]}."


def _shown(value: object) -> str:
    from rdflib.term import URIRef

    if isinstance(value, URIRef):
        return "[ ... ]" if value.startswith(_BLANK) else names.curie(value)
    return shown(value)
