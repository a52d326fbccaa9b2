"""All the files of one check together, and the way back from a node to a file, a line and a term."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.knowledge.problems import Problem
from assistant.knowledge.turtle import Turtle

Owner = tuple[ox.NamedNode | ox.BlankNode, ox.NamedNode, int]
_SLOT = re.compile(r"\{\$?(\w+)\}")


class Ground:
    """Files to be checked as one graph; where a term stands in several, the latest file counts."""

    def __init__(self, files: Sequence[Turtle]) -> None:
        self.files = tuple(files)

    @property
    def quads(self) -> Iterator[ox.Quad]:
        """Every statement, file by file."""
        for file in self.files:
            yield from file.quads

    @cached_property
    def store(self) -> ox.Store:
        """Every statement in a store of its own."""
        store = ox.Store()
        store.bulk_extend(self.quads)
        return store

    @cached_property
    def _owners(self) -> dict[str, Owner]:
        """Of each blank node: the subject and property it is a value of, and its place among them."""
        owners: dict[str, Owner] = {}
        seen: dict[tuple[str, str], int] = {}
        for quad in self.quads:
            if isinstance(quad.object, ox.BlankNode) and not isinstance(quad.subject, ox.Triple):
                key = (quad.subject.value, quad.predicate.value)
                seen[key] = seen.get(key, -1) + 1
                owners.setdefault(quad.object.value, (quad.subject, quad.predicate, seen[key]))
        return owners

    def named(self, node: str) -> tuple[str, str | None, int]:
        """The term that a node belongs to, the property by which, and its place among the values."""
        predicate, nth, climbed = None, 0, set[str]()
        while node in self._owners and node not in climbed:
            climbed.add(node)
            owner, link, nth = self._owners[node]
            node, predicate = owner.value, link.value
        return node, predicate, nth

    def file_of(self, subject: str, predicate: str | None = None) -> Turtle:
        """The latest file that states this property of the subject, or else anything of it."""
        latest = [f for f in reversed(self.files) if subject in f.subjects] or [self.files[-1]]
        return next((f for f in latest if predicate and (subject, predicate) in f.stated), latest[0])

    def problem(
        self,
        node: str,
        message: str,
        remedy: str,
        values: Mapping[str, str] | None = None,
        predicate: str | None = None,
    ) -> Problem:
        """A problem with an IRI or blank node; `{this}` and other slots of the texts are filled."""
        subject, link, nth = self.named(node)
        term = names.curie(subject) if ":" in subject else "[ ... ]"
        slots = {**(values or {}), "this": names.curie(link) if link else term}
        file = self.file_of(subject, link or predicate)
        line = file.line(subject, link or predicate, nth if link else 0)
        told = fill(message, slots).removeprefix(f"{term} ")
        return Problem(file.source, told, fill(remedy, slots), line, term)


def fill(template: str, values: Mapping[str, str]) -> str:
    """The template with every `{name}` or `{$name}` that has a value replaced by it."""
    return _SLOT.sub(lambda slot: values.get(slot[1], slot[0]), template)


def shown(node: object) -> str:
    """A node as a reader wants to see it: short IRI, plain text, number without idle zeros."""
    if isinstance(node, ox.NamedNode):
        return names.curie(node.value)
    if isinstance(node, ox.BlankNode):
        return "[ ... ]"
    text = str(getattr(node, "value", node))
    return text.rstrip("0").rstrip(".") if re.fullmatch(r"-?\d+\.\d+", text) else text
