"""Everything that has a name, findable by any of its names."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from assistant.knowledge.store import Knowledge
from assistant.language.fold import key

NAMED = ("Wine", "Drink", "Food", "Method", "Kind", "Region", "Aroma", "Grape", "Term")
_SOUGHT = ("prefLabel", "altLabel", "hiddenLabel")
# Where one spelling names two things, the earlier type is what a guest means.
_RANK = {name: i for i, name in enumerate(NAMED)}
_ACCOMPANIMENT = {
    "kind/sauce": "sauce",
    "kind/dressing-kind": "dressing",
    "kind/seasoning-kind": "garnish",
    "kind/garnish-kind": "garnish",
}
_PLAIN = {
    "Wine": "wine", "Drink": "wine", "Food": "food", "Method": "method", "Region": "region",
    "Aroma": "aroma", "Grape": "grape", "Term": "term",
}  # fmt: skip

Key = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Name:
    """A concept as found by one of its names; `kind` is the reading's kind, `type` its class."""

    id: str
    label: str
    kind: str
    type: str


@dataclass(slots=True)
class Lexicon:
    """Names by key; `starts` holds the lengths to try for each first word, longest first."""

    names: dict[Key, tuple[Name, ...]] = field(default_factory=dict)
    starts: dict[str, list[int]] = field(default_factory=dict)
    words: set[str] = field(default_factory=set)
    slips: dict[str, str] = field(default_factory=dict)

    def longest(self, stems: Sequence[str], at: int) -> tuple[int, tuple[Name, ...]] | None:
        """The longest name that starts at this word: (number of words, concepts), or None."""
        for length in self.starts.get(stems[at], ()):
            if at + length <= len(stems):
                found = self.names.get(tuple(stems[at : at + length]))
                if found:
                    return length, found
        return None

    def add(self, label: str, name: Name) -> None:
        """Makes a concept findable by a label, and by its words run together where there are two."""
        self._put(key(label), name)

    def _put(self, words: Key, name: Name) -> None:
        if not words:
            return
        have = self.names.get(words, ())
        if all(other.id != name.id for other in have):
            ranked = sorted((*have, name), key=lambda n: _RANK[n.type])
            self.names[words] = tuple(ranked)
        lengths = self.starts.setdefault(words[0], [])
        if len(words) not in lengths:
            lengths.append(len(words))
            lengths.sort(reverse=True)
        self.words.update(words)


def build_lexicon(knowledge: Knowledge) -> Lexicon:
    """The lexicon of all named concepts. One-word spellings of two-word names come last."""
    lexicon = Lexicon()
    joined: list[tuple[Key, Name]] = []
    for label, name in _labels(knowledge):
        lexicon.add(label, name)
        words = key(label)
        if len(words) == 2:
            joined.append((("".join(words),), name))
    _note_slips(knowledge, lexicon)
    for words, name in joined:
        if words not in lexicon.names:
            lexicon._put(words, name)
    return lexicon


def _note_slips(knowledge: Knowledge, lexicon: Lexicon) -> None:
    """Frequent one-word misspellings, to be mended inside longer names too."""
    for subject in knowledge.of_type(*NAMED):
        entry = knowledge.entry(subject)
        right = key(entry["prefLabel"][0])
        for slip in entry.get("hiddenLabel", ()):
            wrong = key(slip)
            if len(wrong) == len(right) == 1 and wrong != right:
                lexicon.slips[wrong[0]] = right[0]


def _labels(knowledge: Knowledge) -> Iterator[tuple[str, Name]]:
    for subject in knowledge.of_type(*NAMED):
        name = name_of(subject, knowledge)
        entry = knowledge.entry(subject)
        if entry.get("nameless"):
            continue
        for which in _SOUGHT:
            for label in entry.get(which, ()):
                yield label, name


def name_of(subject: str, knowledge: Knowledge) -> Name:
    """How a subject is read: its label, reading kind and class."""
    type_ = next(t for t in knowledge.entry(subject)["type"] if t in _RANK)
    return Name(subject, knowledge.label(subject), _reading_kind(subject, type_, knowledge), type_)


def _reading_kind(subject: str, type_: str, knowledge: Knowledge) -> str:
    if type_ not in ("Food", "Kind"):
        return _PLAIN[type_]
    lineage = (subject, *knowledge.broader(subject))
    if "kind/wine" in lineage or "kind/drink" in lineage:
        return "wine"
    return next((word for kind, word in _ACCOMPANIMENT.items() if kind in lineage), "food")
