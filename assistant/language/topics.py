"""Safety topics: recognised before anything else, from corpus/language/safety.toml."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from spacy.tokens import Doc

from assistant.language.cues import Cue, CueBook


@dataclass(frozen=True, slots=True)
class Topic:
    """A safety topic: the fixed sentences it always says, and those for a food's care or a drink."""

    id: str
    base: tuple[str, ...]
    care: Mapping[str, str]
    drink: str | None
    unknown: str | None


class Topics:
    """All topics, ready to find in a text, in the order of the file."""

    def __init__(self, file: Path) -> None:
        with file.open("rb") as handle:
            rows = tomllib.load(handle)["topic"]
        self.by_id = {row["id"]: _topic(row) for row in rows}
        self._book = CueBook({row["id"]: list(row["lines"]) for row in rows})
        self.words = self._book.words

    def find(self, doc: Doc) -> list[Cue]:
        """The cues of topics in the text; their names are the topics' ids."""
        return self._book.find(doc)

    def ids(self, cues: Iterable[Cue]) -> tuple[str, ...]:
        """The topics these cues show, in the order of the file."""
        found = {cue.name for cue in cues}
        return tuple(name for name in self.by_id if name in found)


def _topic(row: dict[str, object]) -> Topic:
    base = row.get("base", [])
    care = row.get("care", {})
    return Topic(
        str(row["id"]),
        tuple(base) if isinstance(base, list) else (str(base),),
        dict(care) if isinstance(care, dict) else {},
        str(row["drink"]) if row.get("drink") else None,
        str(row["unknown"]) if row.get("unknown") else None,
    )
