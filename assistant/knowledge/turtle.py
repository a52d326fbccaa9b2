"""A Turtle file as `goeswith check` reads it: its statements, and where in the text each term stands."""

from __future__ import annotations

import re
from bisect import bisect_right
from codecs import BOM_UTF8
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.knowledge.problems import KnowledgeError, Problem

LARGEST = 20_000_000
"""The largest file that is read, in bytes."""

DEEPEST = 500
"""How often a file may open a statement about a statement: deeply nested ones end the parser."""

_PREFIX = re.compile(r"^[^\S\n]*+@?prefix\s++([\w.-]*+):\s*+<([^<>]*)>", re.IGNORECASE | re.MULTILINE)
_START = re.compile(r"^(?:<(?P<iri>[^<>\s]*)>|(?P<prefix>[\w.-]*):(?P<local>[^\s;,()\[\]\"'<>]+))")


@dataclass(frozen=True, eq=False)
class Turtle:
    """A file that was read: how reports name it, its text and its statements in their order."""

    source: str
    text: str
    quads: tuple[ox.Quad, ...]

    @cached_property
    def lines(self) -> list[str]:
        """The text line by line."""
        return self.text.split("\n")

    @cached_property
    def prefixes(self) -> dict[str, str]:
        """Namespace of each prefix the file declares."""
        return dict(_PREFIX.findall(self.text))

    @cached_property
    def subjects(self) -> frozenset[str]:
        """IRIs of which the file states something."""
        return frozenset(q.subject.value for q in self.quads if isinstance(q.subject, ox.NamedNode))

    @cached_property
    def declared(self) -> frozenset[str]:
        """IRIs whose class the file states."""
        return frozenset(subject for subject, predicate in self.stated if predicate == names.RDF_TYPE)

    @cached_property
    def stated(self) -> frozenset[tuple[str, str]]:
        """Subjects with the properties the file states of them, as pairs of IRIs."""
        return frozenset(
            (q.subject.value, q.predicate.value) for q in self.quads if isinstance(q.subject, ox.NamedNode)
        )

    @cached_property
    def starts(self) -> dict[str, list[int]]:
        """Numbers of the lines that begin with a subject, by its IRI."""
        starts: dict[str, list[int]] = {}
        for number, line in enumerate(self.lines, 1):
            begin = _START.match(line)
            if begin:
                starts.setdefault(self._iri(begin), []).append(number)
        return starts

    @cached_property
    def _borders(self) -> list[int]:
        return sorted(number for numbers in self.starts.values() for number in numbers)

    def _iri(self, begin: re.Match[str]) -> str:
        if begin["iri"] is not None:
            return begin["iri"]
        return self.prefixes.get(begin["prefix"], begin["prefix"] + ":") + begin["local"].rstrip(".")

    def line(self, subject: str, predicate: str | None = None, nth: int = 0) -> int | None:
        """The line of a subject, or of the nth value (from 0) of one of its properties if found."""
        for start in self.starts.get(subject, ()):
            found = self._property_line(start, predicate, nth) if predicate else start
            if found:
                return found
        return next(iter(self.starts.get(subject, ())), None) or self._mention(subject)

    def _mention(self, iri: str) -> int | None:
        """The first line that names an IRI, for subjects that begin no line of their own."""
        found = self._written(iri).search(self.text)
        return self.text.count("\n", 0, found.start()) + 1 if found else None

    def _property_line(self, start: int, predicate: str, nth: int) -> int | None:
        end = bisect_right(self._borders, start)
        last = self._borders[end] - 1 if end < len(self._borders) else len(self.lines)
        block = "\n".join(self.lines[start - 1 : last])
        found = self._written(predicate).search(block)
        if not found:
            return None
        at = found.start()
        for _ in range(nth + 1 if nth else 0):
            at = block.find("[", at + 1) if "[" in block[at + 1 :] else at
        return start + block.count("\n", 0, at)

    def _written(self, iri: str) -> re.Pattern[str]:
        """How the file may write an IRI."""
        short = [f"{p}:{iri[len(n) :]}" for p, n in self.prefixes.items() if n and iri.startswith(n)]
        spellings = "|".join(re.escape(text) for text in (*short, f"<{iri}>"))
        return re.compile(rf"(?<![\w:/-])(?:{spellings})(?![\w:/-])")


def read_turtle(path: Path, source: str) -> Turtle:
    """Reads a file. Raises KnowledgeError: not a file, too large, not Turtle (with its line)."""
    data = _bytes(path, source)
    if data.startswith(BOM_UTF8):
        raise _refused(source, "the file begins with a byte order mark.", "Save it as UTF-8 without one.")
    if data.count(b"<<") > DEEPEST:
        raise _refused(
            source, "it holds statements about statements without end.", "Write them as plain ones."
        )
    try:
        quads = tuple(ox.parse(input=data, format=ox.RdfFormat.TURTLE, rename_blank_nodes=True))
    except SyntaxError as error:
        what = str(error.msg).split(": ", 1)[-1]
        raise _refused(source, f"this is not Turtle ({what}).", "Mend the line.", error.lineno) from None
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:  # in a comment, at which the parser does not look
        line = data.count(b"\n", 0, error.start) + 1
        raise _refused(source, "this is no text in UTF-8.", "Save it as UTF-8.", line) from None
    return Turtle(source, text.replace("\r\n", "\n"), quads)


def _bytes(path: Path, source: str) -> bytes:
    """The bytes of a file of at most LARGEST."""
    try:
        if not path.is_file():
            what = "this is no plain file." if path.exists() else "there is no file of this name."
            raise _refused(source, what, "Check how it is written.")
        with path.open("rb") as file:
            data = file.read(LARGEST + 1)
    except (OSError, ValueError):
        raise _refused(source, "the file cannot be read.", "Check that it may be read.") from None
    if len(data) > LARGEST:
        limit = f"{LARGEST // 1_000_000} MB"
        raise _refused(source, f"the file is larger than {limit}.", f"Split it into files up to {limit}.")
    return data


def _refused(source: str, message: str, remedy: str, line: int | None = None) -> KnowledgeError:
    return KnowledgeError([Problem(source, message, remedy, line)])
