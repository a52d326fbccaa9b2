"""The one place that knows the IRIs: everything else speaks of short names such as `food/brie`."""

from __future__ import annotations

BASE = "https://example.org/goeswith/"
SCHEMA = BASE + "schema#"
PLATE = BASE + "plate#"
GLASS = BASE + "glass#"
RDF_TYPE = "http://www.w3.org/1999/02/22-rdf-syntax-ns#type"
RDF_FIRST = "http://www.w3.org/1999/02/22-rdf-syntax-ns#first"
RDF_REST = "http://www.w3.org/1999/02/22-rdf-syntax-ns#rest"
RDF_NIL = "http://www.w3.org/1999/02/22-rdf-syntax-ns#nil"

QUERY_PREFIXES = "\n".join(
    f"PREFIX {prefix}: <{BASE}{tail}>"
    for prefix, tail in (
        ("gw", "schema#"),
        ("plate", "plate#"),
        ("glass", "glass#"),
        ("rule", "rule/"),
        ("trait", "trait/"),
        ("kind", "kind/"),
        ("aroma", "aroma/"),
        ("course", "course/"),
        ("colour", "colour/"),
        ("region", "region/"),
    )
)


def short(iri: str) -> str:
    """`https://example.org/goeswith/food/brie` -> `food/brie`; schema names lose their `schema#`."""
    if iri.startswith(SCHEMA):
        return iri[len(SCHEMA) :]
    if iri.startswith(BASE):
        return iri[len(BASE) :]
    return iri.rsplit("#", 1)[-1].rsplit("/", 1)[-1]


def local(name: str) -> str:
    """`food/brie` -> `brie`, `plate#acid` -> `acid`."""
    return name.rsplit("/", 1)[-1].rsplit("#", 1)[-1]


def iri(name: str) -> str:
    """The full IRI of a short name."""
    return BASE + name if "/" in name or "#" in name else SCHEMA + name
