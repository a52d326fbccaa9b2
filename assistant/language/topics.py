"""Safety topics: recognised before anything else, from corpus/language/safety.toml."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Set
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from spacy.tokens import Doc

from assistant.language.cues import Cue, CueBook
from assistant.language.data import read_data
from assistant.language.fold import fold, stem
from assistant.language.turning import FOODS

DRUNK = frozenset({"wine", "preference"})


@dataclass(frozen=True, slots=True)
class Topic:
    """A safety topic: the fixed sentences it always says, and those for what is named.

    `care` and `kinds` map a food's care or kind to its caution; `lighter`: kinds whose own caution is told
    in place of that of a care; `allergens`: what the foods hold is told; `tells`: so is this one care mark;
    `no_alcohol`: whoever asks about it is offered nothing with alcohol; `otherwise`: for
    what no topic is recognised in; `urgent`: nothing else is heard; `general`: it gives way to the
    known needs of a guest who is asked about; `another`: whom it speaks of (`a kid came in`) is none of the
    guests told of; `eaten`: it is none
    of a wine that is named alone, but for these words for what may be something to eat (none: any is).
    """

    id: str
    base: tuple[str, ...]
    care: Mapping[str, str]
    kinds: Mapping[str, str]
    lighter: Mapping[str, frozenset[str]]
    drink: str | None
    unknown: str | None
    allergens: bool
    no_alcohol: bool
    otherwise: bool
    urgent: bool
    general: bool
    another: bool
    eaten: frozenset[str]
    tells: str


class Topics:
    """All topics, ready to find in a text, in the order of the file."""

    def __init__(self, file: Path) -> None:
        rows = read_data(file, lambda tables: [(_topic(row), list(row["lines"])) for row in tables["topic"]])
        self.by_id = {topic.id: topic for topic, _ in rows}
        self.urgent = frozenset(one for topic, _ in rows if topic.urgent for one in topic.base)
        self.otherwise = tuple(topic.id for topic, _ in rows if topic.otherwise)
        self._book = CueBook({topic.id: lines for topic, lines in rows})
        self.words = self._book.words

    def find(self, doc: Doc) -> list[Cue]:
        """The cues of topics in the text; their names are the topics' ids."""
        return self._book.find(doc)

    def ids(self, cues: Iterable[Cue], kinds: Set[str], stems: Iterable[str]) -> tuple[str, ...]:
        """The topics these cues show, in the order of the file.

        `kinds`: those of what is named; `stems`: the words of the text.
        """
        found, said = {cue.name for cue in cues}, set(stems)
        drunk = not kinds.isdisjoint(DRUNK) and kinds.isdisjoint(FOODS)
        shown = (topic for name, topic in self.by_id.items() if name in found)
        return tuple(t.id for t in shown if not (drunk and t.eaten and t.eaten.isdisjoint(said)))


def _topic(row: Mapping[str, Any]) -> Topic:
    return Topic(
        row["id"],
        tuple(row.get("base", ())),
        row.get("care", {}),
        row.get("kind", {}),
        {care: frozenset(f"kind/{kind}" for kind in kinds) for care, kinds in row.get("lighter", {}).items()},
        row.get("drink"),
        row.get("unknown"),
        row.get("allergens", False),
        row.get("no-alcohol", False),
        row.get("otherwise", False),
        row.get("urgent", False),
        row.get("general", False),
        row.get("another", False),
        frozenset(stem(fold(word)) for word in row.get("eaten", ())),
        row.get("tells", ""),
    )
