"""Where in a TOML file a key stands: good enough for telling the host, since tomllib does not say."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass

_HEAD = re.compile(r"\A\s*+\[\[?\s*\"?([\w-]+)\"?\s*\]?\]")
_KEY = re.compile(r"\A\s*+[\"']?([\w-]+)[\"']?\s*(?:=|\.)")


@dataclass(frozen=True, slots=True)
class Place:
    """A key of the file: of the `index`th table of this name, or of the top where `table` is empty."""

    key: str
    table: str = ""
    index: int = 0


def find_lines(text: str) -> dict[Place, int]:
    """The line of every key and table head; a table head stands under its own name as key."""
    found: dict[Place, int] = {}
    seen: Counter[str] = Counter()
    table, index = "", 0
    for number, line in enumerate(text.splitlines(), 1):
        if head := _HEAD.match(line):
            table = head[1]
            index = seen[table]
            seen[table] += 1
            found.setdefault(Place(table), number)
            found.setdefault(Place("", table, index), number)
        elif key := _KEY.match(line):
            found.setdefault(Place(key[1], table, index), number)
    return found


def line_of(place: Place, lines: dict[Place, int]) -> int | None:
    """The line of a key, or of the table it belongs to, or None."""
    tries = (place, Place("", place.table, place.index), Place(place.table))
    return next((lines[p] for p in tries if p in lines), None)
