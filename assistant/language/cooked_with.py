"""Words that name a dish and what others are cooked with: `bowl of chili`, `prawns with garlic and chili`.

Which words, and beside what they are cooked with, stands in corpus/language/other-senses.toml.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Lines
from assistant.language.data import read_data
from assistant.language.frame import Reading
from assistant.language.lexicon import Lexicon

EDIBLE = ("food", "sauce", "garnish", "dressing")


@dataclass(frozen=True, slots=True)
class Doubles:
    """The ingredients by word, the turns that take or leave one, and the kinds of food they stand beside."""

    parts: Mapping[str, str]
    taken: Lines
    joins: frozenset[str]
    behind: frozenset[str]
    flavours: Sequence[str]
    cooked: Sequence[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> Doubles:
        """What the file tells. Raises KeyError for a key that is missing."""
        of = tables["cooked-with"]
        words = (frozenset(of["joins"]), frozenset(of["behind"]), of["flavours"], of["cooked"])
        return cls(dict(of["words"]), Lines(of["taken"]), *words)


class CookedWith:
    """Tells which dishes named are ingredients where they stand. Raises KnowledgeError for a broken file."""

    def __init__(self, lexicon: Lexicon) -> None:
        self._lexicon = lexicon
        self._words = read_data(corpus_dir() / "language" / "other-senses.toml", Doubles.of)

    def meant(self, readings: Sequence[Reading], stems: Sequence[str]) -> list[Reading]:
        """The readings, with the ingredient where a word that is a dish as well means that."""
        parts = self._words.parts
        if not any(stems[r.start] in parts for r in readings):
            return list(readings)
        taken = {i for places in self._words.taken.find(stems) for i in places}
        return [self._as_part(r, stems) if self._is_part(r, readings, stems, taken) else r for r in readings]

    def _as_part(self, reading: Reading, stems: Sequence[str]) -> Reading:
        name = self._lexicon.name(self._words.parts[stems[reading.start]])
        return replace(reading, id=name.id, kind=name.kind, label=name.label, type=name.type, others=())

    def _is_part(
        self, reading: Reading, readings: Sequence[Reading], stems: Sequence[str], taken: Iterable[int]
    ) -> bool:
        at, end = reading.start, reading.end
        if end > at + 1 or stems[at] not in self._words.parts:
            return False
        foods = [r for r in readings if r.kind in EDIBLE and r is not reading]
        before, behind = " ".join(stems[at - 1 : at]), " ".join(stems[end : end + 1])
        of = [r for r in foods if r.end == at - 1], [r for r in foods if r.start == end + 1]
        beside = (of[0] if before in self._words.joins else []) + (
            of[1] if behind in self._words.joins else []
        )
        cooked = (of[0] if before in self._words.behind else []) + [r for r in foods if r.start == end]
        flavoured = self._under(beside, self._words.flavours)
        return at in taken or flavoured or self._under(cooked, self._words.cooked)

    def _under(self, readings: Iterable[Reading], kinds: Iterable[str]) -> bool:
        return any(r.id == kind or self._lexicon.falls_under(r.id, kind) for r in readings for kind in kinds)
