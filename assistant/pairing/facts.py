"""Plates and glasses -> the triples that the rules run on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.pairing.glass import Glass
from assistant.pairing.plate import Plate

DECIMAL = ox.NamedNode("http://www.w3.org/2001/XMLSchema#decimal")
TYPE = ox.NamedNode(names.RDF_TYPE)
PLATES = "tonight/"


@lru_cache(maxsize=4096)
def node(name: str) -> ox.NamedNode:
    """The IRI node of a short name."""
    return ox.NamedNode(names.iri(name))


def decimal(value: float) -> ox.Literal:
    """A decimal literal with four places: floats would make comparisons slip."""
    return ox.Literal(f"{value:.4f}", datatype=DECIMAL)


def plate_facts(key: str, plate: Plate) -> Iterator[ox.Quad]:
    """All triples of a plate; `key` is the tail of its IRI."""
    this = node(PLATES + key)
    yield ox.Quad(this, TYPE, node("Plate"))
    for name, value in plate.points.items():
        yield ox.Quad(this, node(f"plate#{name}"), decimal(value))
    yield from _links(this, "plate#trait", sorted(plate.traits))
    yield from _links(this, "plate#kind", plate.kinds)
    yield from _links(this, "plate#home", sorted(plate.homes - plate.countries))
    yield from _links(this, "plate#country", sorted(plate.countries))
    yield ox.Quad(this, node("plate#course"), node(plate.course))


def glass_facts(glass: Glass) -> Iterator[ox.Quad]:
    """All triples of a glass."""
    this = node(glass.wine)
    yield ox.Quad(this, TYPE, node("Glass"))
    for name, value in glass.points.items():
        yield ox.Quad(this, node(f"glass#{name}"), decimal(value))
    yield ox.Quad(this, node("glass#sugar"), decimal(glass.sugar_points))
    yield ox.Quad(this, node("glass#alcoholPercent"), decimal(glass.alcohol_percent))
    yield from _links(this, "glass#smells", sorted(glass.smells))
    yield from _links(this, "glass#kind", glass.kinds)
    yield from _links(this, "glass#home", sorted(glass.homes - glass.countries))
    yield from _links(this, "glass#country", sorted(glass.countries))
    yield ox.Quad(this, node("glass#colour"), node(glass.colour))


def _links(subject: ox.NamedNode, name: str, targets: Iterable[str]) -> Iterator[ox.Quad]:
    for target in targets:
        yield ox.Quad(subject, node(name), node(target))
