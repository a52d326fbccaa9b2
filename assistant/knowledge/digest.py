"""Turtle files -> the digest: one plain dictionary that holds everything.

Digest shape: `{subject: {property: [value, ...]}}` with short names; blank nodes become
nested dictionaries, RDF lists become Python lists, decimals become floats. An amount (the
commonest blank node by far) becomes an `Amount`.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields
from pathlib import Path
from typing import Any

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.knowledge.concepts import Amount
from assistant.knowledge.problems import KnowledgeError, Problem

Digest = dict[str, dict[str, list[Any]]]
_Triples = dict[str, dict[str, list[Any]]]

_NUMBERS = {
    "http://www.w3.org/2001/XMLSchema#decimal",
    "http://www.w3.org/2001/XMLSchema#integer",
    "http://www.w3.org/2001/XMLSchema#double",
}
_BOOLEAN = "http://www.w3.org/2001/XMLSchema#boolean"


def read_digest(files: Iterable[Path]) -> Digest:
    """Reads Turtle files into a digest. Raises KnowledgeError naming file, line and remedy."""
    digest: Digest = {}
    problems: list[Problem] = []
    for file in files:
        try:
            _add_file(file, digest)
        except (SyntaxError, OSError) as error:
            problems.append(_problem(file, error))
    if problems:
        raise KnowledgeError(problems)
    return digest


def _problem(file: Path, error: SyntaxError | OSError) -> Problem:
    if isinstance(error, SyntaxError):
        what = f"this is not Turtle ({str(error.msg).split(': ', 1)[-1]})."
        return Problem(file.name, what, "Mend the line or restore the file.", error.lineno)
    return Problem(file.name, "the file cannot be read.", "Check that it exists and may be read.")


def _add_file(file: Path, digest: Digest) -> None:
    triples = _triples(file)
    for subject, properties in triples.items():
        if subject.startswith("_:"):
            continue
        entry = digest.setdefault(names.short(subject), {})
        for name, values in properties.items():
            entry.setdefault(name, []).extend(_plain(value, triples) for value in values)


def _triples(file: Path) -> _Triples:
    triples: _Triples = {}
    for quad in ox.parse(path=str(file), format=ox.RdfFormat.TURTLE):
        subject = _key(quad.subject)
        properties = triples.setdefault(subject, {})
        properties.setdefault(names.short(quad.predicate.value), []).append(quad.object)
    return triples


def _key(node: Any) -> str:
    return f"_:{node.value}" if isinstance(node, ox.BlankNode) else str(node.value)


def _plain(value: Any, triples: _Triples) -> Any:
    if isinstance(value, ox.Literal):
        return _literal(value)
    if isinstance(value, ox.BlankNode):
        inner = triples.get(_key(value), {})
        if "first" in inner:
            return _list(value, triples)
        nested = {name: [_plain(v, triples) for v in values] for name, values in inner.items()}
        return _amount(nested) if "typical" in nested else nested
    return [] if value.value == names.RDF_NIL else names.short(value.value)


def _amount(nested: dict[str, list[Any]]) -> Amount:
    return Amount(*(nested.get(field.name, [None])[0] for field in fields(Amount)))


def _list(node: Any, triples: _Triples) -> list[Any]:
    items = []
    while isinstance(node, ox.BlankNode):
        inner = triples[_key(node)]
        items.append(_plain(inner["first"][0], triples))
        node = inner["rest"][0]
    return items


def _literal(value: ox.Literal) -> str | float | bool:
    kind = value.datatype.value
    if kind in _NUMBERS:
        return float(value.value)
    return value.value == "true" if kind == _BOOLEAN else value.value
