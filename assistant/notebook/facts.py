"""A statement as RDF: the values of each property, from a statement and back to one."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import datetime
from decimal import Decimal

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.notebook.statement import Statement, Value
from assistant.notebook.vocabulary import ABOUT, AUTHOR, EVENING, SAID, WHEN, WITHDRAWS, XSD, vocabulary

Node = ox.NamedNode | ox.Literal
Facts = Mapping[str, list[Node]]
"""Values by the IRI of their property; the author stands as a literal in place of the blank node."""

_TERM = re.compile(r"\A[a-z]+/[a-z0-9]+(?:-[a-z0-9]+)*")
_CONCEPT = re.compile(r"[A-Za-z][A-Za-z0-9-]*(?:[/#][A-Za-z0-9][A-Za-z0-9-]*)?")
_DIGITS = re.compile(r"[+-]?[0-9]{1,12}(?:\.[0-9]{1,6})?")
_DATE_TIME = ox.NamedNode(XSD + "dateTime")
_TYPE = names.RDF_TYPE
_TEXT = XSD + "string"


def facts(statement: Statement) -> dict[str, list[Node]]:
    """What the notebook says of a statement. Raises ValueError for one whose kind or keys are unknown."""
    said: dict[str, list[Node]] = {
        _TYPE: [ox.NamedNode(_known(vocabulary().kinds, statement.kind))],
        AUTHOR: [ox.Literal(statement.author)],
        WHEN: [ox.Literal(statement.when.isoformat(), datatype=_DATE_TIME)],
        SAID: [ox.Literal(statement.said)],
        ABOUT: [_about(one) for one in statement.about],
        EVENING: [ox.Literal(statement.evening)] if statement.evening is not None else [],
        WITHDRAWS: [ox.NamedNode(statement.withdraws)] if statement.withdraws is not None else [],
    }
    said |= {_known(vocabulary().keys, key): [_node(key, value)] for key, value in statement.value.items()}
    return {name: values for name, values in said.items() if values}


def pointed_at(told: Statement) -> list[str]:
    """The IRIs of the terms that a statement speaks of."""
    ranges, keys = vocabulary().ranges, vocabulary().keys
    concepts = [
        v for k, v in told.value.items() if isinstance(v, str) and not ranges[keys[k]].startswith(XSD)
    ]
    return [names.iri(name) for name in (*filter(_TERM.fullmatch, told.about), *concepts)]


def statement(id: str, said: Facts) -> Statement:
    """The statement that the facts describe. Raises ValueError, in a few words, where they describe none."""
    kinds, keys = vocabulary().kind_of, vocabulary().key_of
    strange = [iri for iri in said if iri not in keys and iri not in _PLAIN]
    if strange:
        raise ValueError(f"it uses {names.curie(strange[0])}, which no statement has")
    return Statement(
        id,
        _known(kinds, _one(said, _TYPE, ox.NamedNode)),
        _one(said, AUTHOR, ox.Literal),
        _time(_one(said, WHEN, ox.Literal)),
        _one(said, SAID, ox.Literal),
        tuple(_spoken(node) for node in said.get(ABOUT, ())),
        {keys[iri]: _value(iri, said) for iri in said if iri in keys},
        _one(said, EVENING, ox.Literal) if EVENING in said else None,
        _one(said, WITHDRAWS, ox.NamedNode) if WITHDRAWS in said else None,
    )


_PLAIN = {_TYPE, AUTHOR, WHEN, SAID, ABOUT, EVENING, WITHDRAWS}


def _known(names_: Mapping[str, str], name: str) -> str:
    if name not in names_:
        raise ValueError(f"{name} is nothing that a notebook has a word for")
    return names_[name]


def _about(one: str) -> Node:
    return ox.NamedNode(names.iri(one)) if _TERM.fullmatch(one) else ox.Literal(one)


def _spoken(node: Node) -> str:
    """A term by its short name, anything else by its text, as long as that leads back to the same node."""
    text = names.short(node.value) if isinstance(node, ox.NamedNode) else node.value
    if _about(text) != node:
        raise ValueError(f"it is about {node}, which is neither a term nor a plain name")
    return text


def _node(key: str, value: Value) -> Node:
    range_ = vocabulary().ranges[vocabulary().keys[key]]
    if isinstance(value, str) and not range_.startswith(XSD) and _CONCEPT.fullmatch(value):
        return ox.NamedNode(names.iri(value))
    if isinstance(value, str) and range_ == _TEXT:
        return ox.Literal(value)
    if isinstance(value, int | Decimal) and not isinstance(value, bool):
        return ox.Literal(_number(value, range_), datatype=ox.NamedNode(range_))
    raise ValueError(f"its {key} is of the wrong sort")


def _number(value: int | Decimal, range_: str) -> str:
    """A number in the digits of its datatype: at most 12 before the point and 6 after it."""
    whole = range_ == XSD + "integer"
    exact = Decimal(value)
    if not exact.is_finite() or exact.copy_abs() >= 10**12 or (whole and exact != exact.to_integral_value()):
        raise ValueError("its number cannot be written down")
    if whole:
        return str(int(value))
    places = f"{exact.quantize(Decimal('0.000001')):f}".rstrip("0")
    return places + "0" if places.endswith(".") else places


def _value(iri: str, said: Facts) -> Value:
    range_ = vocabulary().ranges[iri]
    if not range_.startswith(XSD):
        return _concept(_one(said, iri, ox.NamedNode))
    text = _one(said, iri, ox.Literal)
    found = said[iri][0]
    if isinstance(found, ox.Literal) and found.datatype.value != range_:
        raise ValueError(f"its {names.curie(iri)} is of the wrong sort")
    if range_ == _TEXT:
        return text
    if not _DIGITS.fullmatch(text):
        raise ValueError(f"its {names.curie(iri)} is no number of a usual size")
    return int(Decimal(text)) if range_ == XSD + "integer" else Decimal(text)


def _concept(iri: str) -> str:
    """The short name of a term, as long as it leads back to the same term."""
    name = names.short(iri)
    if not _CONCEPT.fullmatch(name) or names.iri(name) != iri:
        raise ValueError(f"it names {names.curie(iri)}, which is no term of the knowledge")
    return name


def _one(said: Facts, iri: str, sort: type[ox.NamedNode] | type[ox.Literal]) -> str:
    values = said.get(iri, [])
    if len(values) != 1 or not isinstance(values[0], sort):
        raise ValueError(f"it needs exactly one {names.curie(iri)} of its sort")
    return values[0].value


def _time(text: str) -> datetime:
    try:
        when = datetime.fromisoformat(text)
    except ValueError:
        raise ValueError("its time cannot be read") from None
    if when.tzinfo is None:
        raise ValueError("its time has no offset from UTC")
    return when
