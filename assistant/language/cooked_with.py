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
    stews: Mapping[str, str]
    stewed: Sequence[str]
    hot: Mapping[str, str]
    hot_beside: Sequence[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> Doubles:
        """What the file tells. Raises KeyError for a key that is missing."""
        of = tables["cooked-with"]
        words = (frozenset(of["joins"]), frozenset(of["behind"]), of["flavours"], of["cooked"])
        return cls(
            dict(of["words"]),
            Lines(of["taken"]),
            *words,
            dict(of["stews"]),
            of["stewed"],
            dict(of["hot"]),
            of["hot-beside"],
        )


class CookedWith:
    """Tells which dishes named are ingredients where they stand. Raises KnowledgeError for a broken file."""

    def __init__(self, lexicon: Lexicon) -> None:
        self._lexicon = lexicon
        self._words = read_data(corpus_dir() / "language" / "other-senses.toml", Doubles.of)

    def meant(self, readings: Sequence[Reading], stems: Sequence[str]) -> list[Reading]:
        """The readings, with the ingredient where a word that is a dish as well means that."""
        readings = [self._as_dish(r, readings, stems) for r in readings]
        if not any(stems[r.start] in self._words.parts for r in readings):
            return readings
        taken = {i for places in self._words.taken.find(stems) for i in places}
        part = self._words.parts
        return [
            self._as(part[stems[r.start]], r) if self._is_part(r, readings, stems, taken) else r
            for r in readings
        ]

    def _as_dish(self, reading: Reading, readings: Sequence[Reading], stems: Sequence[str]) -> Reading:
        """`black bean chilli`: behind what it is a stew of, the ingredient is the dish."""
        said = " ".join(stems[reading.start : reading.end])
        if said in self._words.hot and self._under(readings, self._words.hot_beside):
            return self._as(self._words.hot[said], reading)  # `saltfish fritters with pepper sauce`
        dish = self._words.stews.get(said)
        if dish is None or any(r.start == reading.end and r.kind in EDIBLE for r in readings):
            return reading
        of = [r for r in readings if r.end == reading.start]
        return self._as(dish, reading) if self._under(of, self._words.stewed) else reading

    def _as(self, food: str, reading: Reading) -> Reading:
        name = self._lexicon.name(food)
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
