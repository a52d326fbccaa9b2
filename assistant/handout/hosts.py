"""The host's own word in the sheets: the verdict that is told first of each pair, and what is said of it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from assistant.handout.words import say

Parts = Mapping[str, Any]
MOST = 4


def told_first(row: Parts) -> dict[str, str]:
    """The verdict of each wine with the food of a row: the host's where the host is to be heard first."""
    own = {told["wine"]: told["verdict"] for told in row.get("host", ()) if told["first"]}
    return {told["wine"]: own.get(told["wine"], told["verdict"]) for told in row["verdicts"]}


def host_lines(plan: Parts) -> tuple[str, ...]:
    """What the host and the book say where both speak, at most so many lines; that there is more."""
    found = [
        say()("guest", "host-first" if told["first"] else "book-first", food=row["food"], **_fields(told))
        for row in plan["pairings"]
        for told in row.get("host", ())
    ]
    return tuple(found if len(found) <= MOST else [*found[: MOST - 1], say()("guest", "host-more")])


def _fields(told: Parts) -> dict[str, Any]:
    return {name: told[name] for name in ("wine", "verdict", "book")}
