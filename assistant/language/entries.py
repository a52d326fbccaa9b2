"""Popular claims, troubles and what is explained: which one is meant.

Cue lines that stand beside the knowledge tell. Whether a question is about a claim or about trouble at all
is decided by what its words speak for; the longest line found then tells which.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from spacy.lang.en.stop_words import STOP_WORDS
from spacy.tokens import Doc

from assistant.knowledge.store import Knowledge
from assistant.language.called import as_called
from assistant.language.cues import Cue, CueBook, Line, Lines, RareWords, read_line
from assistant.language.data import read_data
from assistant.language.frame import Frame, Text

# Sorts of entries by intent; a doubted claim may also be about a fault.
OWN = {"myth": ("myth",), "trouble": ("trouble", "fault")}
SORTS = {"myth": ("myth", "fault"), "trouble": ("trouble", "fault")}
TROUBLE, SAFETY, WHY, MYTH = "trouble", "safety", "why", "myth"
# What a claim is taken for that somebody is told to make.
CLAIMED = (
    "wines-for-food",
    "unclear",
    "describe",
    "service",
    "note",
    "smalltalk",
    "define",
    "compare",
    "foods-for-wine",
)
EXPLAINED, KIND = "explained", "kind/"
WHYS = ("why", "why-not")
# What is told or taken down explains nothing, whatever words it holds.
UNEXPLAINED = ("safety", "teach", "note", "undo", "set-table")
NEAREST, TELLING = 3, 6


@dataclass(frozen=True, slots=True)
class Row:
    """An entry of a language file: its id, its cue lines, and the safety topics that it settles itself.

    The words of `anywhere` lines may stand in any order and at any distance; a `surely` line is trouble
    whatever else the words speak for; `tongue`: what somebody tastes, of a wine with a food; `kinds`: only
    of a wine of one of these.
    """

    id: str
    lines: tuple[str, ...]
    anywhere: tuple[str, ...]
    settles: frozenset[str]
    surely: tuple[str, ...] = ()
    intent: str = WHY
    tongue: bool = False
    kinds: frozenset[str] = frozenset()


class Entries:
    """All claims, troubles and faults of a folder, ready to find. Raises KnowledgeError for broken files."""

    def __init__(self, folder: Path, knowledge: Knowledge) -> None:
        self._knowledge = knowledge
        self._called = read_data(folder / "troubles.toml", lambda tables: dict(tables["called"]))
        files = (("myths.toml", _myths), ("troubles.toml", _troubles), ("explanations.toml", _explanations))
        rows = [row for file, read in files for row in read_data(folder / file, read)]
        self.by_id: Mapping[str, Row] = {row.id: row for row in rows}
        self._book = CueBook({row.id: row.lines for row in rows})
        self._loose = [(row.id, read_line(line)) for row in rows for line in row.anywhere]
        self._surely = Lines(line for row in rows for line in row.surely)
        self._says = Lines(read_data(folder / "myths.toml", lambda tables: list(tables["said"]["lines"])))
        self._rare = RareWords([line for _, line in self._loose])
        self._words = {name: self._words_of(name) for name in self.by_id}
        self._common = Counter(word for words in self._words.values() for word in words)
        self.words = frozenset(self._common)

    def find(self, doc: Doc) -> tuple[Cue, ...]:
        """The cues of entries in the text, each under its entry's id, the surest first."""
        return self._find([token.norm_ for token in doc])

    def _find(self, stems: Sequence[str]) -> tuple[Cue, ...]:
        near = map(self._loose.__getitem__, self._rare.near(set(stems)))
        loose = (_anywhere(name, line, stems) for name, line in near)
        found = [
            *self._book.find_in(stems),
            *(cue for cue in loose if cue),
        ]  # in order first where equally long
        return tuple(sorted(found, key=lambda cue: -len(cue.fixed)))

    def _words_of(self, name: str) -> frozenset[str]:
        lines = [*self._book.lines[name], *(line for of, line in self._loose if of == name)]
        return frozenset(word for line in lines for step in line for word in step.words)

    def told(self, frame: Frame) -> Frame:
        """A frame about a claim or trouble with the entries meant, or the nearest; any other frame as it is.

        Entries that answer a safety topic of the question come first. What is explained is so whatever the
        words speak for, unless they name a claim or trouble, or a pair that has reasons of its own.
        """
        if (explained := self._explained(frame)) is not None:
            return explained
        if frame.intent not in (*SORTS, SAFETY) and self._is_surely(frame.text):
            frame = replace(frame, intent=TROUBLE)
        if frame.intent in CLAIMED and not frame.text.topics and self._claimed(frame):
            frame = replace(frame, intent=MYTH, preferences=())
        if frame.intent not in SORTS:
            return frame
        if frame.intent == TROUBLE and not _meant(frame):
            entries = (*frame.text.entries, *self._of_called(frame.text))
            frame = replace(frame, text=replace(frame.text, entries=entries))
        cues = _meant(frame)
        if not cues:
            return replace(frame, nearest=self.nearest(frame.text.stems, OWN[frame.intent]))
        ids = sorted((cue.name for cue in cues), key=lambda name: not self._settled([name], frame))
        settled = self._settled(ids, frame)
        topics = tuple(topic for topic in frame.text.topics if topic not in settled)
        return replace(frame, entries=tuple(ids), topics=topics, text=_used(frame.text, ids))

    def _explained(self, frame: Frame) -> Frame | None:
        """The frame about what is explained, where that is what is asked."""
        if frame.text.topics or frame.intent in UNEXPLAINED:
            return None
        found = (cue.name for cue in frame.text.entries if cue.name.startswith(EXPLAINED))
        fitting = [name for name in found if self._is_of(frame, self.by_id[name])]
        name = next(iter(sorted(fitting, key=lambda one: not self.by_id[one].kinds)), None)
        if name is None or (_meant(frame) and not (self.by_id[name].kinds or WHY in frame.text.cues)):
            return None
        text = _used(frame.text, [name])
        row = self.by_id[name]
        intent = frame.intent if row.tongue and frame.intent in WHYS else row.intent
        return replace(frame, intent=intent, entries=(name,), text=text)

    def _is_of(self, frame: Frame, row: Row) -> bool:
        """Whether what is explained is asked: a pair has its own reasons, but a tongue is not argued with."""
        pair = bool(frame.wines and frame.dishes)
        if row.kinds:
            named = [wine for wine in frame.wines if not wine.startswith(KIND)]  # a kind is only itself
            poured = [style for wine in named for style in self._knowledge.styles_of(wine)]
            called = [r.id for r in frame.text.readings if r.type == "Kind"]  # `the rosé`
            sorts = {kind for one in called for kind in (one, *self._knowledge.broader(one))}
            sorts.update(kind for style in poured for kind in self._knowledge.wines[style].kinds)
            return not row.kinds.isdisjoint(sorts)
        return (pair or WHY in frame.text.cues) if row.tongue else not pair

    def _claimed(self, frame: Frame) -> bool:
        """Whether somebody is told to say what is a popular claim (`Rolf says never chill red`)."""
        known = any(cue.name.startswith(MYTH) for cue in frame.text.entries)
        return known and not frame.dishes and self._says.stand_in(frame.text.stems)

    def _is_surely(self, text: Text) -> bool:
        """Whether trouble is told whatever the words speak for, a wine being named or called by its kind."""
        called = (stems for stems, _ in as_called(text, self._called, self._knowledge))
        return any(self._surely.stand_in(stems) for stems in (text.stems, *called))

    def _of_called(self, text: Text) -> tuple[Cue, ...]:
        """The cues found where wines that are named are called wine, red or the like; the surest first."""
        found = [
            Cue(cue.name, places[cue.start], places[cue.end - 1] + 1, tuple(places[i] for i in cue.fixed))
            for stems, places in as_called(text, self._called, self._knowledge)
            for cue in self._find(stems)
        ]
        return tuple(sorted(found, key=lambda cue: -len(cue.fixed)))

    def _settled(self, ids: Iterable[str], frame: Frame) -> set[str]:
        return {topic for name in ids for topic in self.by_id[name].settles if topic in frame.text.topics}

    def nearest(self, stems: Iterable[str], sorts: Iterable[str]) -> tuple[str, ...]:
        """Ids of up to three entries that share most words with these, rare words counting more."""
        wanted, asked = tuple(sorts), set(stems) - STOP_WORDS
        scores = {
            name: sum(1 / self._common[word] for word in words & asked)
            for name, words in self._words.items()
            if name.startswith(wanted) and any(self._common[word] <= TELLING for word in words & asked)
        }
        return tuple(sorted(scores, key=lambda name: (-scores[name], name))[:NEAREST])


def _anywhere(name: str, line: Line, stems: Sequence[str]) -> Cue | None:
    """The line as a cue where each of its words stands somewhere, no word serving twice."""
    places: list[int] = []
    for step in line:
        at = next((i for i, stem in enumerate(stems) if stem in step.words and i not in places), None)
        if at is None:
            return None
        places.append(at)
    return Cue(name, min(places), max(places) + 1, tuple(sorted(places)))


def _meant(frame: Frame) -> list[Cue]:
    """The entries of the frame's intent, the surest first: claims, else causes, else symptoms."""
    sorts = SORTS.get(frame.intent, ())
    by_sort = {sort: [cue for cue in frame.text.entries if cue.name.startswith(sort)] for sort in sorts}
    if "trouble" in by_sort:  # a cause says more than its symptom, unless the symptom says all of it and more
        wide = [set(cue.fixed) for cue in by_sort["trouble"]]
        by_sort["fault"] = [c for c in by_sort["fault"] if not any(set(c.fixed) < words for words in wide)]
    order = ("myth", "fault", "trouble")
    return next((_apart(by_sort[sort]) for sort in order if by_sort.get(sort)), [])


def _apart(cues: Iterable[Cue]) -> list[Cue]:
    """The cues that are found in words of their own, each entry once."""
    found: dict[str, Cue] = {}
    taken: set[int] = set()
    for cue in cues:
        if taken.isdisjoint(cue.fixed):
            found.setdefault(cue.name, cue)
            taken.update(cue.fixed)
    return list(found.values())


def _used(text: Text, ids: Iterable[str]) -> Text:
    """The text without the words that name these entries among those left out."""
    used = {text.words[i] for cue in text.entries if cue.name in ids for i in cue.fixed}
    return replace(text, left_out=tuple(word for word in text.left_out if word not in used))


def _myths(tables: Mapping[str, Any]) -> list[Row]:
    return [_row(f"myth/{name}", table) for name, table in tables["myth"].items()]


def _explanations(tables: Mapping[str, Any]) -> list[Row]:
    return [_row(f"{EXPLAINED}/{name}", table) for name, table in tables[EXPLAINED].items()]


def _troubles(tables: Mapping[str, Any]) -> list[Row]:
    sorts = (("trouble", tables["trouble"]), ("fault", tables["fault"]))
    return [_row(f"{sort}/{name}", table) for sort, entries in sorts for name, table in entries.items()]


def _row(id_: str, table: Mapping[str, Any]) -> Row:
    surely, anywhere = tuple(table.get("surely", ())), tuple(table.get("anywhere", ()))
    lines = (*table.get("lines", ()), *surely)
    settles = frozenset(table.get("settles", ()))
    intent, tongue = str(table.get("intent", WHY)), bool(table.get("tongue"))
    kinds = frozenset(table.get("kinds", ()))
    return Row(id_, lines, anywhere, settles, surely, intent, tongue, kinds)


def is_explained(frame: Frame) -> bool:
    """Whether a frame asks what is behind a thing, by an entry of that sort."""
    return any(name.startswith(EXPLAINED) for name in frame.entries)
