"""Reads single fields of an evening file; whatever is wrong with one becomes a problem and the field None."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime, time
from typing import Any

from rapidfuzz import fuzz, process

from assistant.evening.facts import Row, fact, wording
from assistant.evening.lines import Place, find_lines, line_of
from assistant.knowledge.problems import Problem

NEAR = 60.0
LONGEST = 40
LARGEST = 10**15
MOST_TEXT = 200


class Fields:
    """The fields of one file and the problems found while reading them."""

    def __init__(self, source: str, text: str) -> None:
        self._source, self._lines = source, find_lines(text)
        self.problems: list[Problem] = []

    def wrong(self, place: Place, name: str, /, remedy: str | None = None, **told: object) -> None:
        """Notes a problem in the wording of this name."""
        message = wording()("problem", name, **told)
        remedy = remedy or wording()("problem", f"{name}-do", **told)
        line = line_of(place, self._lines)
        self.problems.append(Problem(self._source, message, remedy, line, _term(place)))

    def line(self, place: Place) -> int | None:
        """Where a key stands in the file."""
        return line_of(place, self._lines)

    def top_lines(self) -> dict[str, int]:
        """Where the keys at the top of the file stand."""
        return {place.key: line for place, line in self._lines.items() if place.key and not place.table}

    def only(self, row: Row, known: Iterable[str], table: str = "", index: int = 0) -> None:
        """Notes every key that is not known, with the nearest that is."""
        names = list(known)
        for key in row:
            if key in names:
                continue
            near = process.extractOne(key, names, scorer=fuzz.ratio, score_cutoff=NEAR)
            name = "unknown-near-do" if near else "unknown-do"
            do = wording()("problem", name, near=near[0] if near else "", known=", ".join(names))
            self.wrong(Place(key, table, index), "unknown-key", do, key=shown(key))

    def text(self, row: Row, place: Place, needed: bool = False) -> str | None:
        """A text that is not empty."""
        value = self._given(row, place, needed)
        if value is None:
            return None
        if not isinstance(value, str) or not value.strip():
            self._mistyped(place, value, "text")
            return None
        return " ".join(value.split())[:MOST_TEXT]

    def number(self, row: Row, place: Place, needed: bool = False, whole: bool = False) -> Any:
        """A number within the limits of limits.toml; whole ones as int."""
        value = self._given(row, place, needed)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, int if whole else (int, float)):
            self._mistyped(place, value, "whole" if whole else "number")
            return None
        limits = fact("limits", "number", place.key)
        if limits.low <= value <= limits.high:
            return value if whole else float(value)
        span = {"low": f"{limits.low:g}", "high": f"{limits.high:g}"}
        do = wording()("problem", "range-do", example=example(place.key))
        self.wrong(place, "out-of-range", do, key=place.key, value=shown(value), **span)
        return None

    def flag(self, row: Row, place: Place) -> bool:
        """True or false; false where nothing is said."""
        value = row.get(place.key, False)
        if not isinstance(value, bool):
            self._mistyped(place, value, "yes-no")
        return value is True

    def words(self, row: Row, place: Place) -> tuple[str, ...]:
        """A list of texts; one text alone counts as a list of one."""
        value = self._given(row, place, True)
        listed = [value] if isinstance(value, str) else value
        if isinstance(listed, list) and listed and all(isinstance(v, str) and v.strip() for v in listed):
            return tuple(dict.fromkeys(" ".join(v.split())[:MOST_TEXT] for v in listed))
        if value is not None:
            self._mistyped(place, value, "words")
        return ()

    def moment(self, row: Row, place: Place) -> datetime | None:
        """A date with a time, with or without an offset."""
        value = self._given(row, place, True)
        do = wording()("problem", "range-do", example=example(place.key))
        if isinstance(value, datetime):
            year = fact("limits", "number", "year")
            if year.low <= value.year <= year.high:
                return value
            span = {"low": f"{year.low:g}", "high": f"{year.high:g}"}
            self.wrong(place, "out-of-range", do, key=place.key, value=value, **span)
            return None
        if isinstance(value, date | time):
            self.wrong(place, "start-date" if isinstance(value, date) else "start-time", do)
            return None
        if value is not None:
            self._mistyped(place, value, "moment")
        return None

    def rows(self, tables: Row, name: str) -> list[Row]:
        """The tables of a list, those that are none or too many left out."""
        value = tables.get(name, [])
        found = value if isinstance(value, list) else [value]
        kept: list[Row] = [row for row in found if isinstance(row, dict)]
        if not isinstance(value, list) or len(kept) < len(found):
            self.wrong(Place(name), "not-table", key=name)
        most = int(fact("limits", "list", name).high)
        if len(kept) > most:
            self.wrong(Place(name), "too-many", key=name, count=len(kept), most=most)
        return kept[:most]

    def _given(self, row: Row, place: Place, needed: bool) -> Any:
        value = row.get(place.key)
        if value is None and needed:
            do = wording()("problem", "missing-do", example=example(place.key))
            self.wrong(place, "missing", do, key=place.key)
        return value

    def _mistyped(self, place: Place, value: object, wanted: str) -> None:
        do = wording()("problem", "range-do", example=example(place.key))
        kind = wording()("type", wanted)
        self.wrong(place, "wrong-type", do, key=place.key, value=shown(value), wanted=kind)


def example(key: str) -> str:
    """How a key is rightly written."""
    return wording()("example", key)


def shown(value: object) -> str:
    """A value as it may be told in a sentence."""
    if isinstance(value, int) and abs(value) > LARGEST:
        return "a very large number"
    if isinstance(value, dict | list):
        return "a table" if isinstance(value, dict) else "a list"
    if isinstance(value, bool):
        return str(value).lower()
    text = repr(value) if isinstance(value, str) else str(value)
    return text if len(text) <= LONGEST else f"{text[:LONGEST]}…"


def _term(place: Place) -> str | None:
    """How the place is called: `wines 2, price`."""
    named = [f"{place.table} {place.index + 1}"] if place.table else []
    key = shown(place.key).strip("'") if place.key else ""
    return ", ".join([*named, key] if key else named) or None
