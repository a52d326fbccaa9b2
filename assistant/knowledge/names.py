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
_PREFIXED = {
    SCHEMA: "gw",
    PLATE: "plate",
    GLASS: "glass",
    BASE + "note#": "note",
    BASE + "source/": "src",
    "http://www.w3.org/1999/02/22-rdf-syntax-ns#": "rdf",
    "http://www.w3.org/2000/01/rdf-schema#": "rdfs",
    "http://www.w3.org/2002/07/owl#": "owl",
    "http://www.w3.org/2004/02/skos/core#": "skos",
    "http://www.w3.org/ns/shacl#": "sh",
    "http://purl.org/dc/terms/": "dcterms",
    "http://qudt.org/schema/qudt/": "qudt",
    "http://www.w3.org/ns/prov#": "prov",
    "https://schema.org/": "schema",
}

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


def curie(iri: str) -> str:
    """The IRI as the Turtle files write it: `food:brie`, `gw:pH`; `<...>` where no prefix fits."""
    for namespace, prefix in _PREFIXED.items():
        if iri.startswith(namespace):
            return f"{prefix}:{iri[len(namespace) :]}"
    kind, slash, local = iri.removeprefix(BASE).partition("/")
    plain = iri.startswith(BASE) and slash and local and "/" not in local
    return f"{kind}:{local}" if plain else f"<{iri}>"
