"""Plates -> triples, for engines that run the rules as they are written."""

from __future__ import annotations

from collections.abc import Iterator

import pyoxigraph as ox

from assistant.pairing.facts import TYPE, decimal, links, node
from assistant.pairing.plate import Plate

PLATES = "tonight/"


def plate_facts(key: str, plate: Plate) -> Iterator[ox.Quad]:
    """All triples of a plate; `key` is the tail of its IRI."""
    this = node(PLATES + key)
    yield ox.Quad(this, TYPE, node("Plate"))
    for name, value in plate.points.items():
        yield ox.Quad(this, node(f"plate#{name}"), decimal(value))
    yield from links(this, "plate#trait", sorted(plate.traits))
    yield from links(this, "plate#kind", plate.kinds)
    yield from links(this, "plate#home", sorted(plate.homes - plate.countries))
    yield from links(this, "plate#country", sorted(plate.countries))
    yield ox.Quad(this, node("plate#course"), node(plate.course))
