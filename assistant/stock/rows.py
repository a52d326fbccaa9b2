"""The text of a list -> its header and rows, each with the line it begins on; csv does the quoting."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator
from dataclasses import dataclass

from assistant.knowledge.problems import KnowledgeError
from assistant.stock.words import plain, problem, stock_words

DELIMITERS = (",", ";", "\t", "|")
_SAID = re.compile(r"sep=(.)\r?\n", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Columns:
    """The places of the columns that are read, by field; how many columns there are; those not read."""

    places: dict[str, int]
    count: int
    unused: tuple[str, ...]
    header: tuple[str, ...]


Row = tuple[int, list[str]]
NO_ROW: Row = (1, [])


def rows_of(text: str, source: str) -> tuple[Columns, Iterator[Row]]:
    """The columns, and the rows below with their lines, empty ones left out.

    Raises KnowledgeError, also while iterating, where no list can be made of it.
    """
    if not text.strip():
        raise KnowledgeError([problem(source, "empty")])
    said = _SAID.match(text)
    rows = _rows(text, said[1] if said else _delimiter(text, source), source, bool(said))
    line, header = next(rows, NO_ROW)
    if not header:  # nothing but separators
        raise KnowledgeError([problem(source, "empty")])
    return _columns(header, line, source), rows


def _delimiter(text: str, source: str) -> str:
    """Of the usual separators the one by which the first line names most columns that are known."""
    names = stock_words().columns

    def fits(delimiter: str) -> tuple[int, int]:
        header = next(_rows(text, delimiter, source, False), NO_ROW)[1]
        return sum(plain(cell) in names for cell in header), len(header)

    return max(DELIMITERS, key=fits)


def _rows(text: str, delimiter: str, source: str, said: bool) -> Iterator[Row]:
    longest = stock_words().limits["row"]
    csv.field_size_limit(longest)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)
    line = 1
    try:
        for at, row in enumerate(reader):
            if any(map(str.strip, row)) and not (said and at == 0):
                if sum(map(len, row)) > longest:
                    raise csv.Error
                yield line, row
            line = reader.line_num + 1
    except csv.Error:
        raise KnowledgeError([problem(source, "long-row", line, most=longest)]) from None


def _columns(header: list[str], line: int, source: str) -> Columns:
    most, known = stock_words().limits["columns"], stock_words().columns
    if len(header) > most:
        raise KnowledgeError([problem(source, "many-columns", line, most=most)])
    names = [plain(cell) for cell in header]
    twice = next((n for n in names if n in known and names.count(n) > 1), None)
    if twice:
        raise KnowledgeError([problem(source, "twice", line, name=twice)])
    places: dict[str, int] = {}
    for at, name in sorted(enumerate(names), key=lambda pair: known.get(pair[1], ("", 0))[1]):
        if name in known:
            places.setdefault(known[name][0], at)
    if not places:
        raise KnowledgeError([problem(source, "no-header", line)])
    if not places.keys() & {"label", "style", "grape"}:
        raise KnowledgeError([problem(source, "no-names", line)])
    read = set(places.values())
    unused = tuple(cell.strip() for at, cell in enumerate(header) if at not in read and cell.strip())
    return Columns(places, len(header), unused, tuple(header))
