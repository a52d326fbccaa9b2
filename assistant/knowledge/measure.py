"""Joins the foods with the published composition and pH tables, and can be run again at any time.

    python -m assistant.knowledge.measure FDC.csv PH.csv [--write] [FILE.ttl ...]

For each food with `gw:fdcRow` the lines of fat, sugar, sodium and protein that are marked measured
take the row's values (g, g, mg and g per 100 g) as typical, low and high being judged from them
(`spreads`); with `gw:phRow`, the line of pH takes its range. Lines
with another basis are the author's word against the table and stay. Without --write nothing is
changed. Every row that is not in a table, every food without a row and every line that differs is
reported. The files are edited line by line, so that a hand-made layout survives.
"""

from __future__ import annotations

import argparse
import csv
import re
import sys
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from assistant.knowledge.files import ontology_dir

COLUMNS = {"fat": "fat_g", "sugar": "sugars_g", "sodium": "sodium_mg", "protein": "protein_g"}
# What 100 g can hold; for sodium, pure salt.
MOST = {"fat": 100.0, "sugar": 100.0, "sodium": 39400.0, "protein": 100.0}
_SPREAD = re.compile(r"^constant:spread-(\w+) .* gw:value (\S+) ;", re.MULTILINE)
_SUBJECT = re.compile(r"^food:(\S+) a gw:Food")
_ROW = re.compile(r'gw:(fdcRow|phRow) "((?:[^"\\]|\\.)*)"')
_AMOUNT = re.compile(r"gw:(\w+) \[ (?P<numbers>.*?)gw:basis gw:measured ; dcterms:source (?P<source>\S+)")

Table = dict[str, dict[str, str]]


@dataclass(frozen=True, slots=True)
class Finding:
    """Something the author should know: the file, the food, and what is the matter."""

    file: str
    food: str
    what: str

    def __str__(self) -> str:
        return f"{self.file}: food:{self.food}: {self.what}"


@lru_cache(maxsize=1)
def spreads() -> dict[str, float]:
    """The judged share by which low and high lie from a measured value, by property, from composition.ttl.

    Read as text, since other files may be half written while numbers are filled in.
    """
    text = (ontology_dir() / "composition.ttl").read_text("utf-8")
    return {name: float(value) for name, value in _SPREAD.findall(text)}


def read_table(file: Path) -> Table:
    """A csv table by its `food` column; of two rows with one name the fuller stands."""
    table: Table = {}
    with file.open(encoding="utf-8", newline="") as handle:
        for row in csv.DictReader(handle):
            have = table.get(row["food"])
            if have is None or sum(map(bool, row.values())) > sum(map(bool, have.values())):
                table[row["food"]] = row
    return table


def join(text: str, file: str, fdc: Table, ph: Table) -> tuple[str, list[Finding]]:
    """The text of a Turtle file with its measured lines renewed, and what was found."""
    blocks = re.split(r"(?m)(?=^food:)", text)
    found: list[Finding] = []
    renewed = [_block(block, file, fdc, ph, found) for block in blocks]
    return "".join(renewed), found


def _block(block: str, file: str, fdc: Table, ph: Table, found: list[Finding]) -> str:
    subject = _SUBJECT.match(block)
    if subject is None:
        return block
    rows = {name: row.replace('\\"', '"') for name, row in _ROW.findall(block)}
    if "fdcRow" not in rows and "gw:part" not in block:
        found.append(Finding(file, subject[1], "no composition row: its numbers are not measured."))
    for name, table in (("fdcRow", fdc), ("phRow", ph)):
        if name in rows and rows[name] not in table:
            found.append(Finding(file, subject[1], f"gw:{name} {rows[name]!r} is not in the table."))
    lines = block.split("\n")
    for at, line in enumerate(lines):
        lines[at] = _line(line, rows, fdc, ph)
        if lines[at] != line:
            found.append(Finding(file, subject[1], f"differs from the table: {line.strip()}"))
    return "\n".join(lines)


def _line(line: str, rows: dict[str, str], fdc: Table, ph: Table) -> str:
    amount = _AMOUNT.search(line)
    if amount is None:
        return line
    name = amount[1]
    numbers = None
    if name in COLUMNS and rows.get("fdcRow") in fdc:
        numbers = _composition(name, fdc[rows["fdcRow"]])
    elif name == "pH" and rows.get("phRow") in ph:
        numbers = _range(ph[rows["phRow"]])
    return line if numbers is None else line.replace(amount["numbers"], numbers)


def _composition(name: str, row: dict[str, str]) -> str | None:
    if not row[COLUMNS[name]]:
        return None
    value, spread = float(row[COLUMNS[name]]), spreads()[name]
    return _numbers(value * (1 - spread), value, min(MOST[name], value * (1 + spread)))


def _range(row: dict[str, str]) -> str:
    low = float(row["ph_low"])
    high = float(row["ph_high"] or row["ph_low"])
    return _numbers(low, (low + high) / 2, high)


def _numbers(low: float, typical: float, high: float) -> str:
    return f"gw:low {_plain(low)} ; gw:typical {_plain(typical)} ; gw:high {_plain(high)} ; "


def _plain(value: float) -> str:
    text = f"{value:.3f}".rstrip("0")
    return f"{text}0" if text.endswith(".") else text


def files_of(names: Sequence[str]) -> Iterator[Path]:
    """The files named, or all files of foods."""
    yield from map(Path, names) if names else sorted((ontology_dir() / "data").glob("*.ttl"))


def report(found: Iterable[Finding], foods: int, with_row: int) -> str:
    """All findings and how many foods have a row."""
    return "\n".join([*map(str, found), f"{foods} foods, {with_row} with a composition row."])


def main(argv: Sequence[str] | None = None) -> int:
    """Reports, and with --write renews; 0 when every row is in its table."""
    parser = argparse.ArgumentParser(description="Join the foods with the composition and pH tables.")
    parser.add_argument("fdc", type=Path)
    parser.add_argument("ph", type=Path)
    parser.add_argument("files", nargs="*")
    parser.add_argument("--write", action="store_true")
    options = parser.parse_intermixed_args(argv)
    fdc, ph = read_table(options.fdc), read_table(options.ph)
    found: list[Finding] = []
    foods = with_row = 0
    for file in files_of(options.files):
        text = file.read_text("utf-8")
        renewed, news = join(text, file.name, fdc, ph)
        found += news
        foods += len(re.findall(r"(?m)^food:", text))
        with_row += text.count("gw:fdcRow ")
        if options.write and renewed != text:
            file.write_text(renewed, "utf-8")
    print(report(found, foods, with_row))
    return int(any("is not in the table" in finding.what for finding in found))


if __name__ == "__main__":
    sys.exit(main())
