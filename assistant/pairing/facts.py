"""Glasses -> the triples that limits are looked up in."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.pairing.glass import Glass

DECIMAL = ox.NamedNode("http://www.w3.org/2001/XMLSchema#decimal")
TYPE = ox.NamedNode(names.RDF_TYPE)


@lru_cache(maxsize=4096)
def node(name: str) -> ox.NamedNode:
    """The IRI node of a short name."""
    return ox.NamedNode(names.iri(name))


def decimal(value: float) -> ox.Literal:
    """A decimal literal with four places: floats would make comparisons slip."""
    return ox.Literal(f"{value:.4f}", datatype=DECIMAL)


def glass_facts(glass: Glass) -> Iterator[ox.Quad]:
    """All triples of a glass."""
    this = node(glass.wine)
    yield ox.Quad(this, TYPE, node("Glass"))
    for name, value in glass.points.items():
        yield ox.Quad(this, node(f"glass#{name}"), decimal(value))
    yield ox.Quad(this, node("glass#sugar"), decimal(glass.sugar_points))
    yield ox.Quad(this, node("glass#alcoholPercent"), decimal(glass.alcohol_percent))
    yield from links(this, "glass#smells", sorted(glass.smells))
    yield from links(this, "glass#kind", glass.kinds)
    yield from links(this, "glass#home", sorted(glass.homes - glass.countries))
    yield from links(this, "glass#country", sorted(glass.countries))
    yield ox.Quad(this, node("glass#colour"), node(glass.colour))


def links(subject: ox.NamedNode, name: str, targets: Iterable[str]) -> Iterator[ox.Quad]:
    """A triple for each of the targets."""
    for target in targets:
        yield ox.Quad(subject, node(name), node(target))
