"""The CSV list of a host -> `Stock`, with everything that is wrong with it told by line."""

from __future__ import annotations

import gc
import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from assistant.answers.sanitise import safe
from assistant.evening.facts import fact
from assistant.knowledge.problems import KnowledgeError, Problem
from assistant.knowledge.store import Knowledge
from assistant.language.parse import Parser
from assistant.stock import cells
from assistant.stock.decoding import text_of
from assistant.stock.records import Bottle, Stock, grouped
from assistant.stock.rows import Columns, Row, rows_of
from assistant.stock.styles import Found, Styles
from assistant.stock.words import problem, shown, stock_words

STYLE = ("sweetness", "colour", "style", "grape", "region")
MOST_LABEL = 200


def read_stock(file: Path, knowledge: Knowledge, parser: Parser) -> Stock:
    """The list in a file. Raises KnowledgeError, with one problem, where no list can be made of it."""
    text = text_of(file)
    columns, rows = rows_of(text, file.name)
    reading = _Reading(file.name, columns, Styles(knowledge, parser), knowledge)
    on = gc.isenabled()
    gc.disable()  # a hundred thousand rows without a cycle among them
    try:
        bottles = list(reading.bottles(rows))
    finally:
        if on:
            gc.enable()
    if not reading.rows:
        raise KnowledgeError([problem(file.name, "no-rows")])
    return reading.stock(bottles)


class _Reading:
    """One reading of one file: what was told, what was seen."""

    def __init__(self, source: str, columns: Columns, styles: Styles, knowledge: Knowledge) -> None:
        self._source, self._columns, self._styles, self._knowledge = source, columns, styles, knowledge
        self._told: list[Problem] = []
        self._more: Counter[str] = Counter()
        self._signs: Counter[str] = Counter()
        self._seen: dict[int, int] = {}
        self.rows = self._left_out = 0

    def stock(self, bottles: list[Bottle]) -> Stock:
        """The bottles as a list."""
        sign = self._signs.most_common(1)[0][0] if self._signs else ""
        return Stock(
            self._source,
            grouped(bottles),
            sign or self._sign_of_header(),
            tuple(self._told),
            dict(self._more),
            self._left_out,
            self._columns.unused,
        )

    def _sign_of_header(self) -> str:
        """The currency that the header of the prices names: `Price (EUR)`."""
        at = self._columns.places.get("price")
        words = re.split(r"[\s()\[\].,:/]+", self._columns.header[at].casefold()) if at is not None else []
        return next((stock_words().currency[w] for w in words if w in stock_words().currency), "")

    def bottles(self, rows: Iterator[Row]) -> Iterator[Bottle]:
        """The bottles of the rows. Raises KnowledgeError for a file that is broken further down."""
        for line, row in rows:
            self.rows += 1
            if self.rows > stock_words().limits["rows"]:
                raise KnowledgeError(
                    [problem(self._source, "many-rows", line, most=stock_words().limits["rows"])]
                )
            bottle = self._bottle(line, row)
            self._left_out += bottle is None
            if bottle:
                yield bottle

    def _bottle(self, line: int, row: list[str]) -> Bottle | None:
        if any(map(str.strip, row[self._columns.count :])):
            self._wrong("more-cells", line, count=len(row), columns=self._columns.count)
        said = {field: safe(_flat(row[at])) for field, at in self._columns.places.items() if at < len(row)}
        label = said.get("label", "")
        style = " ".join(
            word for field in STYLE if (word := said.get(field, "")) and not cells.is_empty(word)
        )
        if not (label or style):
            self._wrong("nothing", line)
            return None
        found = self._styles.of(style, label)
        if not found.wine:
            self._wrong(
                found.why,
                line,
                text=shown(f"{label}, {style}" if label and style else label or style),
                count=found.count,
            )
            return None
        return self._made(line, said, _labelled(said, label or style), style, found)

    def _made(self, line: int, said: dict[str, str], label: str, style: str, found: Found) -> Bottle:
        wine = found.wine or ""
        if found.mended:
            self._wrong("mended", line, text=shown(style), style=self._knowledge.label(wine))
        price, sign = self._read("price", line, said) or (None, "")
        if sign:
            self._signs[sign] += 1
        vintage = self._read("vintage", line, said)
        self._once(line, label, vintage)
        return Bottle(
            label,
            wine,
            price,
            self._read("stock", line, said),
            vintage,
            self._read("alcohol", line, said),
            line,
        )

    def _read(self, field: str, line: int, said: dict[str, str]) -> Any:
        """What a cell says, None where it says nothing or cannot be read."""
        text = said.get(field, "")
        if not text:
            return None
        try:
            return _READERS[field](text)
        except ValueError:
            limits = fact("limits", "number", "alcohol_percent")
            self._wrong(field, line, text=shown(text), low=f"{limits.low:g}", high=f"{limits.high:g}")
            return None

    def _once(self, line: int, label: str, vintage: int | None) -> None:
        same = hash((label.casefold(), vintage))
        if same in self._seen:
            self._wrong("again", line, text=shown(label), first=self._seen[same])
        self._seen.setdefault(same, line)

    def _wrong(self, kind: str, line: int, **told: object) -> None:
        """Tells a problem, or counts it where many are told."""
        if len(self._told) < stock_words().limits["told"]:
            self._told.append(problem(self._source, kind, line, **told))
        else:
            self._more[kind] += 1


_READERS = {
    "price": cells.price_of,
    "alcohol": cells.alcohol_of,
    "stock": cells.left_of,
    "vintage": cells.vintage_of,
}


def _flat(cell: str) -> str:
    """A cell on one line; a quoted one may have had several."""
    return " ".join(cell.split())


def _labelled(said: dict[str, str], label: str) -> str:
    """The name to be shown, with who made it where that stands in a column of its own."""
    producer = said.get("producer", "")
    named = not producer or producer.casefold() in label.casefold()
    return (label if named else f"{producer} {label}")[:MOST_LABEL]
