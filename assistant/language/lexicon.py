"""Everything that has a name, findable by any of its names."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from pathlib import Path
from sys import intern
from typing import Any

from assistant.knowledge.cache import cached, content_key, text_key
from assistant.knowledge.store import Knowledge
from assistant.language import fold, slipping, twins
from assistant.language.fold import key
from assistant.language.slipping import slip_cost

# Where one spelling names two things, the earlier class is what a guest means.
NAMED = ("Wine", "Drink", "Food", "Method", "Kind", "Region", "Aroma", "Grape", "Term")
ONE_WORD = [1]  # what most words start names of
_SOUGHT = ("prefLabel", "altLabel", "hiddenLabel", "nearLabel")
_RIGHT = ("prefLabel", "altLabel", "nearLabel")
_ACCOMPANIMENT = {
    "kind/dressing-kind": "dressing",
    "kind/sauce": "sauce",
    "kind/seasoning-kind": "garnish",
    "kind/garnish-kind": "garnish",
}
_PLAIN = {
    "Wine": "wine", "Drink": "wine", "Food": "food", "Method": "method", "Region": "region",
    "Aroma": "aroma", "Grape": "grape", "Term": "term",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Name:
    """A concept as found by one of its names; `kind` is the reading's kind, `type` its class."""

    id: str
    label: str
    kind: str
    type: str


class Lexicon:
    """Concepts by the stems of their names, and the words that misspellings stand for."""

    def __init__(self, table: dict[str, Any], knowledge: Knowledge, key: str = "") -> None:
        self._knowledge = knowledge
        # An id stands under many names and a word in many tables: shared, they take half the memory.
        sets = [tuple(map(intern, ids)) for ids in table["sets"]]
        self._ids = {intern(words): sets[number] for words, number in table["ids"].items()}
        self._lengths: dict[str, list[int]] = table["lengths"]
        self.slips: dict[str, str] = table["slips"]
        self._slipped = frozenset(map(intern, table["slipped"]))
        self.words = frozenset(map(intern, table["words"].split()))
        self.spelt_right = frozenset(map(intern, table["spelt_right"].split()))
        joined = map(intern, table["joined"])
        self.joined = {
            intern(words.replace(" ", "")): words for words in joined
        }  # `pinotnoir` -> `pinot noir`
        self.key, self.cache = key, knowledge.cache

    def longest(self, stems: Sequence[str], at: int) -> tuple[int, tuple[Name, ...]] | None:
        """The longest name that starts at this word: (number of words, concepts), or None."""
        for length in self._lengths.get(stems[at], ONE_WORD):
            ids = self._ids.get(" ".join(stems[at : at + length]))
            if ids and at + length <= len(stems):
                return length, tuple(self.name(i) for i in ids)
        return None

    def is_slip(self, stems: Sequence[str]) -> bool:
        """Whether these words are known only as a misspelling of a name."""
        return " ".join(stems) in self._slipped

    @cached_property
    def slip_starts(self) -> frozenset[str]:
        """The first words of names of several that are known to be misspelt."""
        return frozenset(words.split()[0] for words in self._slipped if " " in words)

    def righted(self, stems: Sequence[str]) -> Sequence[str]:
        """The words that these, known as a misspelt name, stand for; none where they are no such."""
        if not self.is_slip(stems):
            return []
        labels = (
            key(label)
            for subject in self._ids.get(" ".join(stems), ())
            for kind in _SOUGHT[:2]
            for label in self._knowledge.entry(subject).get(kind, ())
        )
        joined = "".join(stems)
        same = [words for words in labels if len(words) == len(stems)]
        return min(same, key=lambda words: slip_cost(joined, "".join(words)), default=tuple(stems))

    def name(self, subject: str) -> Name:
        """How a subject is read."""
        return _name(subject, self._knowledge)

    def falls_under(self, subject: str, kind: str) -> bool:
        """Whether a subject is of this kind (`kind/cheese`)."""
        return kind in self._knowledge.broader(subject)

    def find(self, label: str) -> tuple[str, ...]:
        """Ids of the concepts with exactly this name."""
        return tuple(self._ids.get(" ".join(key(label)), ()))

    def subjects(self) -> list[str]:
        """Ids of all named concepts, each once."""
        return list(dict.fromkeys(i for ids in self._ids.values() for i in ids))


def build_lexicon(knowledge: Knowledge) -> Lexicon:
    """The lexicon of the knowledge, from the cache where its content is unchanged."""
    same = twins.spellings()
    if not knowledge.key:
        return Lexicon(_table(knowledge, same), knowledge)
    files = [Path(__file__), Path(fold.__file__), Path(slipping.__file__), Path(twins.__file__)]
    code = content_key(files) + text_key(str(same))
    found = cached("lexicon", knowledge.key + code, lambda: _table(knowledge, same), knowledge.cache)
    return Lexicon(found, knowledge, knowledge.key + code)


def _table(knowledge: Knowledge, same: twins.Spellings) -> dict[str, Any]:
    ids: dict[str, list[str]] = {}
    for label, subject in labels(knowledge):
        have = ids.setdefault(" ".join(key(label)), [])
        if subject not in have:
            have.append(subject)
    ids.pop("", None)
    slipped = _slipped(knowledge)
    for twin, words in twins.twins(ids.keys() - slipped, same).items():  # `vegetable lasagna`
        ids.setdefault(twin, ids[words])
    joined = {
        words.replace(" ", ""): words
        for words in ids
        if 0 < words.count(" ") < 4 and words.replace(" ", "").isalpha() and words not in slipped
    }
    for together, words in joined.items():  # `seabass` for `sea bass`
        ids.setdefault(together, ids[words])
    sets: dict[tuple[str, ...], int] = {}
    ranked = {w: tuple(sorted(found, key=lambda s: _rank(s, knowledge))) for w, found in ids.items()}
    return {
        "ids": {words: sets.setdefault(found, len(sets)) for words, found in ranked.items()},
        "sets": list(sets),
        "lengths": _lengths(ids),
        "slips": _slips(knowledge),
        "slipped": sorted(slipped),
        "joined": list(joined.values()),
        "spelt_right": " ".join(sorted({w for words in ids if words not in slipped for w in words.split()})),
        "words": " ".join(sorted({word for words in ids for word in words.split()})),
    }


def _lengths(ids: dict[str, list[str]]) -> dict[str, list[int]]:
    """How many words the names that start with a word have, longest first, unless all have one."""
    lengths: dict[str, set[int]] = {}
    for words in ids:
        lengths.setdefault(words.split(" ", 1)[0], set()).add(words.count(" ") + 1)
    found = {first: sorted(numbers, reverse=True) for first, numbers in lengths.items()}
    return {first: numbers for first, numbers in found.items() if numbers != ONE_WORD}


def _slips(knowledge: Knowledge) -> dict[str, str]:
    """Frequent one-word misspellings, to be mended inside longer names too."""
    rights: dict[str, list[str]] = {}
    for subject in knowledge.of_type(*NAMED):
        entry = knowledge.entry(subject)
        names = [key(label) for n in _SOUGHT[:2] for label in entry.get(n, ())]
        single = [name[0] for name in names if len(name) == 1]
        for wrong in map(key, entry.get("hiddenLabel", ())):
            if len(wrong) == 1 and single and wrong[0] not in single:
                rights.setdefault(wrong[0], []).extend(single)
    return {slip: _likest(slip, names) for slip, names in rights.items()}


def _likest(slip: str, names: list[str]) -> str:
    """Of the one-word names of what is meant the one that was misspelt: `prawm` is no `shrimp`."""
    return min(names, key=lambda name: slip_cost(slip, name))


def _slipped(knowledge: Knowledge) -> set[str]:
    """Keys that come from hidden labels alone."""
    right, wrong = set(), set()
    for subject in knowledge.of_type(*NAMED):
        entry = knowledge.entry(subject)
        wrong |= {" ".join(key(label)) for label in entry.get("hiddenLabel", ())}
        right |= {" ".join(key(label)) for n in _RIGHT for label in entry.get(n, ())}
    return wrong - right


def labels(knowledge: Knowledge) -> Iterator[tuple[str, str]]:
    """Every name of every concept that can be asked for: (name, subject)."""
    for subject in knowledge.of_type(*NAMED):
        entry = knowledge.entry(subject)
        if entry.get("nameless"):
            continue
        for which in _SOUGHT:
            for label in entry.get(which, ()):
                yield label, subject
                # `brut (label term)` is asked for as `brut`; `lemon (smell)` leaves `lemon` to the food
                if label.endswith(")") and not subject.startswith("aroma/"):
                    yield label.rsplit(" (", 1)[0], subject


def class_of(subject: str, knowledge: Knowledge) -> str:
    """The class under which a subject is read."""
    types = knowledge.entry(subject)["type"]
    return next(t for t in NAMED if t in types)


def _rank(subject: str, knowledge: Knowledge) -> int:
    return NAMED.index(class_of(subject, knowledge))


@lru_cache(maxsize=8192)
def _name(subject: str, knowledge: Knowledge) -> Name:
    type_ = class_of(subject, knowledge)
    return Name(subject, knowledge.label(subject), _reading_kind(subject, type_, knowledge), type_)


def _reading_kind(subject: str, type_: str, knowledge: Knowledge) -> str:
    if type_ not in ("Food", "Kind"):
        return _PLAIN[type_]
    lineage = (subject, *knowledge.broader(subject))
    if "kind/wine" in lineage or "kind/drink" in lineage:
        return "wine"
    return next((word for kind, word in _ACCOMPANIMENT.items() if kind in lineage), "food")
