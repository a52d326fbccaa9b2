"""The digest as JSON that is read quickly and takes little memory: equal lists of values are one list.

Packed shape: `{"plain": [list, ...], "nested": [list, ...], "entries": {subject: {property: number}}}`. A
number from 0 is that of a plain list, of strings and numbers; -1, -2 ... are the nested ones, in which
dictionaries hold such numbers again and an amount is `{"amount": number}`.
"""

from __future__ import annotations

import json
from dataclasses import astuple
from sys import intern
from typing import Any

from assistant.knowledge.concepts import Amount
from assistant.knowledge.digest import Digest

AMOUNT = "amount"
_Lists = list[list[Any]]


class _Numbers:
    """Numbers of lists, which are told apart by how they are written."""

    def __init__(self) -> None:
        self.plain: dict[str, int] = {}
        self.nested: dict[str, int] = {}

    def of_entry(self, entry: dict[str, list[Any]]) -> dict[str, int]:
        """The number of each list of an entry."""
        return {name: self.of(values) for name, values in entry.items()}

    def of(self, values: list[Any]) -> int:
        """The number of a list; lists inside it come before it."""
        flat = not any(isinstance(value, (Amount, dict, list)) for value in values)
        if flat:
            return self.plain.setdefault(json.dumps(values), len(self.plain))
        text = json.dumps([self._written(value) for value in values])
        return self.nested.setdefault(text, -1 - len(self.nested))

    def _written(self, value: Any) -> Any:
        if isinstance(value, Amount):
            return {AMOUNT: self.of(list(astuple(value)))}
        if isinstance(value, list):
            return [self._written(inner) for inner in value]
        return self.of_entry(value) if isinstance(value, dict) else value


def packed(digest: Digest) -> dict[str, Any]:
    """The digest fit for JSON."""
    numbers = _Numbers()
    entries = {subject: numbers.of_entry(entry) for subject, entry in digest.items()}
    plain, nested = (list(map(json.loads, lists)) for lists in (numbers.plain, numbers.nested))
    return {"plain": plain, "nested": nested, "entries": entries}


def unpacked(found: dict[str, Any]) -> Digest:
    """The digest again, made of what is given. Its lists are shared: nobody may change one."""
    plain: _Lists = found["plain"]
    nested: _Lists = []
    for values in found["nested"]:
        nested.append([_whole(value, plain, nested) for value in values])
    lists = plain + nested[::-1]  # so that Python finds those with numbers below 0 from its end
    entries: dict[str, dict[str, Any]] = found["entries"]
    for entry in entries.values():
        for name, number in entry.items():
            entry[name] = lists[number]
    return entries


def _whole(value: Any, plain: _Lists, nested: _Lists) -> Any:
    if isinstance(value, list):
        return [_whole(inner, plain, nested) for inner in value]
    if not isinstance(value, dict):
        return value
    if AMOUNT in value:
        low, typical, high, basis, source, row = plain[value[AMOUNT]]
        return Amount(low, typical, high, intern(basis), intern(source), row)
    return {name: plain[n] if n >= 0 else nested[-1 - n] for name, n in value.items()}
