"""One statement as a Turtle block, and a block as a statement: each block is parsed on its own.

Nothing is loaded from anywhere, a block is at most LARGEST_BLOCK bytes, and triple terms (which may be
nested without end) are refused before they reach the parser.
"""

from __future__ import annotations

import re
from functools import lru_cache

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.notebook.facts import Facts, Node, facts
from assistant.notebook.statement import Statement
from assistant.notebook.vocabulary import AUTHOR, NAME, NOTE, PROV, SCHEMA_ORG, XSD

LARGEST_BLOCK = 64_000
_OWN = ("food", "wine", "drink", "kind", "band")
_NAMESPACES = {
    "note": NOTE,
    **{prefix: f"{names.BASE}{prefix}/" for prefix in _OWN},
    "gw": names.SCHEMA,
    "plate": names.PLATE,
    "glass": names.GLASS,
    "prov": PROV,
    "schema": SCHEMA_ORG,
    "xsd": XSD,
}
PREFIXES = "\n".join(f"@prefix {prefix}: <{iri}> ." for prefix, iri in _NAMESPACES.items())
_BEFORE = (PREFIXES + "\n").encode()
_LOCAL = re.compile(r"[A-Za-z0-9][A-Za-z0-9-]*")


def block(statement: Statement) -> bytes:
    """The statement as Turtle, one property a line, with the prefixes of PREFIXES; no line is empty."""
    said = facts(statement)
    kind = _written(said.pop(names.RDF_TYPE)[0])
    lines = [f"{_shown(iri)} {_values(iri, values)}" for iri, values in said.items()]
    text = f"<{statement.id}> a {kind} ;\n    " + " ;\n    ".join(lines) + " ."
    return text.replace("<<", "<\\u003C").encode()


def _values(iri: str, values: list[Node]) -> str:
    written = ", ".join(map(_written, values))
    return f"[ {_shown(NAME)} {written} ]" if iri == AUTHOR else written


def _written(node: Node) -> str:
    if isinstance(node, ox.NamedNode):
        return _shown(node.value)
    if node.datatype.value == XSD + "dateTime":
        return f'"{node.value}"^^xsd:dateTime'
    return node.value if node.datatype.value != XSD + "string" else str(node)


@lru_cache(maxsize=4096)
def _shown(iri: str) -> str:
    for prefix, namespace in _NAMESPACES.items():
        if iri.startswith(namespace) and _LOCAL.fullmatch(iri[len(namespace) :]):
            return f"{prefix}:{iri[len(namespace) :]}"
    return str(ox.NamedNode(iri))


def block_facts(text: bytes) -> tuple[str, Facts]:
    """Id and facts of a block. Raises ValueError, in a few words, where it is not one statement."""
    if len(text) > LARGEST_BLOCK:
        raise ValueError(f"it is longer than {LARGEST_BLOCK} bytes")
    if b"<<" in text:
        raise ValueError("it holds a statement about a statement")
    try:
        quads = list(ox.parse(input=_BEFORE + text, format=ox.RdfFormat.TURTLE))
    except SyntaxError as error:
        raise ValueError(f"it is not Turtle, {str(error.msg).split(': ', 1)[-1]}") from None
    return _gathered(quads)


def _gathered(quads: list[ox.Quad]) -> tuple[str, Facts]:
    said: dict[str, list[Node]] = {}
    people: dict[str, list[ox.Quad]] = {}
    ids: set[str] = set()
    told: list[ox.Quad] = []
    for quad in quads:
        if isinstance(quad.subject, ox.NamedNode):
            told.append(quad)
            ids.add(quad.subject.value)
        else:
            people.setdefault(str(quad.subject), []).append(quad)
    for quad in told:
        value = quad.object
        node = value if isinstance(value, ox.NamedNode | ox.Literal) else _person(quad, people)
        said.setdefault(quad.predicate.value, []).append(node)
    if len(ids) != 1 or people:
        raise ValueError("it is not one statement by one person")
    return ids.pop(), said


def _person(quad: ox.Quad, people: dict[str, list[ox.Quad]]) -> ox.Literal:
    """The name of the author, who stands in square brackets."""
    told = people.pop(str(quad.object), [])
    name = told[0].object if len(told) == 1 and told[0].predicate.value == NAME else None
    if quad.predicate.value != AUTHOR or not isinstance(name, ox.Literal):
        raise ValueError("it holds brackets that name no person")
    return name
