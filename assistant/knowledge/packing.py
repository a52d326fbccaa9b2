"""The digest as JSON that is read quickly and takes little memory: equal lists of values are one list.

Packed shape: `{"lists": [list, ...], "nested": [number, ...], "amounts": [[low, typical, high, basis,
source, row], ...], "entries": {subject: {property: number}}}`. A number from 0 is that of a list, -1, -2 ...
are the amounts, each a list of its own. `nested` are the lists in which dictionaries hold such numbers again.
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
        self.lists: dict[str, int] = {}
        self.nested: list[int] = []
        self.amounts: dict[Amount, int] = {}

    def of_entry(self, entry: dict[str, list[Any]]) -> dict[str, int]:
        """The number of each list of an entry."""
        return {name: self.of(values) for name, values in entry.items()}

    def of(self, values: list[Any]) -> int:
        """The number of a list; lists inside it come before it."""
        if len(values) == 1 and isinstance(values[0], Amount):
            return self.amounts.setdefault(values[0], -1 - len(self.amounts))
        text = json.dumps([self._written(value) for value in values])
        number = self.lists.setdefault(text, len(self.lists))
        if any(isinstance(value, (Amount, dict, list)) for value in values):
            self.nested.append(number)
        return number

    def _written(self, value: Any) -> Any:
        if isinstance(value, Amount):
            return {AMOUNT: self.of([value])}
        if isinstance(value, list):
            return [self._written(inner) for inner in value]
        return self.of_entry(value) if isinstance(value, dict) else value


def packed(digest: Digest) -> dict[str, Any]:
    """The digest fit for JSON."""
    numbers = _Numbers()
    entries = {subject: numbers.of_entry(entry) for subject, entry in digest.items()}
    return {
        "lists": list(map(json.loads, numbers.lists)),
        "nested": sorted(set(numbers.nested)),
        "amounts": list(map(astuple, numbers.amounts)),
        "entries": entries,
    }


def unpacked(found: dict[str, Any]) -> Digest:
    """The digest again, made of what is given. Its lists are shared: nobody may change one."""
    amounts = [
        [Amount(low, typical, high, intern(basis), intern(source), row)]
        for low, typical, high, basis, source, row in found["amounts"]
    ]
    lists: _Lists = found["lists"] + amounts[::-1]  # Python finds numbers below 0 from its end
    for number in found["nested"]:
        lists[number] = [_whole(value, lists) for value in lists[number]]
    entries: dict[str, dict[str, Any]] = found["entries"]
    for entry in entries.values():
        for name, number in entry.items():
            entry[name] = lists[number]
    return entries


def _whole(value: Any, lists: _Lists) -> Any:
    if isinstance(value, list):
        return [_whole(inner, lists) for inner in value]
    if not isinstance(value, dict):
        return value
    return lists[value[AMOUNT]][0] if AMOUNT in value else {name: lists[n] for name, n in value.items()}
