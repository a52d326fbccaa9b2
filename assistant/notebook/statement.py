"""A statement: one thing a person told, and how raw words become one that is fit to be kept."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from decimal import Decimal
from types import MappingProxyType
from typing import Any
from uuid import uuid4

from assistant.answers.sanitise import safe
from assistant.knowledge.problems import Problem

SOURCE = "notebook"
WITHDRAWN = "withdrawn"
Value = str | int | Decimal
"""A text or a short name such as `band/good`, a whole number, or an amount."""


@dataclass(frozen=True, slots=True)
class Statement:
    """What was told: kind (`skos:notation` in ontology/notebook.ttl), author, time with its zone, the words.

    `about` holds short names of terms (`food/brie`) or names that the knowledge lacks; `value` the
    properties of the kind by their notation; `withdraws` the id of the statement that is taken back.
    """

    id: str
    kind: str
    author: str
    when: datetime
    said: str
    about: tuple[str, ...] = ()
    value: Mapping[str, Value] = field(default_factory=dict, hash=False)
    evening: str | None = None
    withdraws: str | None = None

    def __post_init__(self) -> None:
        object.__setattr__(self, "value", MappingProxyType(dict(self.value)))

    def as_json(self) -> dict[str, Any]:
        """The statement as JSON-like values; amounts become floats, the time ISO 8601."""
        value = {key: float(v) if isinstance(v, Decimal) else v for key, v in self.value.items()}
        named = {"id": self.id, "kind": self.kind, "author": self.author, "when": self.when.isoformat()}
        told = {"said": self.said, "about": list(self.about), "value": value}
        return {**named, **told, "evening": self.evening, "withdraws": self.withdraws}


@dataclass(frozen=True, slots=True)
class Stated:
    """A statement fit to be kept, or none and why; `remarks` say what was cleaned out of it."""

    statement: Statement | None
    problems: tuple[Problem, ...] = ()
    remarks: tuple[Problem, ...] = ()


def stated(
    kind: str,
    said: str,
    author: str,
    *,
    about: Iterable[str] = (),
    value: Mapping[str, Value | float] | None = None,
    evening: str | None = None,
    withdraws: str | None = None,
    when: datetime | None = None,
) -> Stated:
    """Makes a statement of what was told now, or at `when`: cleaned, named, and held against the shapes."""
    from assistant.notebook.faults import faults

    raw = Statement(
        f"urn:uuid:{uuid4()}", kind, author, when or datetime.now().astimezone(), said, tuple(about),
        {key: exact(v) for key, v in (value or {}).items()}, evening, withdraws,
    )  # fmt: skip
    statement, remarks = cleaned(raw)
    problems = faults(statement)
    return Stated(None if problems else statement, problems, remarks)


def withdrawal(of: Statement, said: str, author: str, when: datetime | None = None) -> Stated:
    """The statement that takes another back; nothing is erased by it."""
    return stated(WITHDRAWN, said, author, withdraws=of.id, evening=of.evening, when=when)


def exact(value: Value | float) -> Value:
    """A number as it is written: 7.5 is the decimal 7.5, not the binary fraction next to it."""
    return Decimal(repr(value)) if isinstance(value, float) else value


def cleaned(
    statement: Statement, source: str = SOURCE, line: int | None = None
) -> tuple[Statement, tuple[Problem, ...]]:
    """The statement without anything that steers a terminal, and a remark where something was taken out."""
    if not any(map(_unclean, _texts(statement))) and len(set(statement.about)) == len(statement.about):
        return statement, ()
    clean = replace(
        statement,
        said=words(statement.said),
        author=name(statement.author),
        about=tuple(dict.fromkeys(map(name, statement.about))),
        value={key: name(v) if isinstance(v, str) else v for key, v in statement.value.items()},
        evening=None if statement.evening is None else name(statement.evening),
    )
    if not any(map(_steers, _texts(statement))):
        return clean, ()
    what = "the words held characters that steer a terminal or the direction of reading."
    return clean, (Problem(source, what, "They were left out; nothing is to be done.", line, statement.id),)


def words(text: str) -> str:
    """Spoken or typed words on one line or several, without what cannot be seen."""
    return safe("\n".join(text.splitlines())).strip()


def name(text: str) -> str:
    """A name on one line, without what cannot be seen."""
    return " ".join(words(text).split())


def _texts(statement: Statement) -> list[str]:
    values = [v for v in statement.value.values() if isinstance(v, str)]
    return [statement.said, statement.author, *statement.about, statement.evening or "", *values]


def _unclean(text: str) -> bool:
    """Whether cleaning could change a text; quick, and true of some that it does not change."""
    return not text.isprintable() or safe(text) != text or text.strip() != text or "  " in text


def _steers(text: str) -> bool:
    lines = "\n".join(text.splitlines())
    return safe(lines) != lines
