"""What the words of a question speak for: weights by intent, kept as data and fitted to the question corpus
by `python -m assistant.evaluate.fit`.

A trait is something a text has: a word, two words in a row, what a word means, a class of words, a cue, how
many wines and foods. Names count as their kind (`<wine>`), words that are not known as `<new>`. The intent
with the largest sum of weights wins, and the traits that spoke for it can be told.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise
from math import sqrt
from pathlib import Path

import numpy as np

from assistant.language.data import read_data, telling
from assistant.language.fold import fold, stem
from assistant.language.frame import Text
from assistant.language.meanings import Meanings, Row, none, read_meanings

NEW, NUMBER, EDGE, ALWAYS, SENSE = "<new>", "<number>", "|", "always", "sense"
MOST, LONG, FEW = 2, 30, 4
# What the traits of a text count together is this times the root of how many they are: some sixty of a
# question, so that each counts about one. Passes left out of the fit fared better so than with one for each.
EVEN = 8.0
Traits = Mapping[str, float]


class Evidence:
    """Traits of a text, weighed. `classes`: words by class; `weights`: by trait, then by intent.

    The weights of `always` name every intent, in the order of the rows of `meanings`; what a trait does not
    name it says nothing of.
    """

    def __init__(
        self,
        classes: Mapping[str, Iterable[str]],
        weights: Mapping[str, str],
        meanings: Meanings | None = None,
    ) -> None:
        self._classes: dict[str, list[str]] = {}
        for name, words in classes.items():
            for word in words:
                self._classes.setdefault(stem(fold(word)), []).append(name)
        self._weights = weights
        self._at = {intent: i for i, intent in enumerate(weights.get(ALWAYS, "").split()[::2])}
        self._meanings = meanings or none(len(self._at))
        self._told: dict[str, bytes] = {}

    def traits(self, text: Text, counts: Mapping[str, int], standing: bool = False) -> dict[str, float]:
        """The traits of a text and how much each counts, less where there are many.

        `counts`: things found, by name; `standing`: an earlier turn stands.
        """
        words = _row(text)
        found = [f"word {word}" for word in words]
        found += [f"words {a} {b}" for a, b in pairwise([EDGE, *words, EDGE])]
        found += [f"starts {' '.join(words[:n])}" for n in (1, 2)]
        found += [f"class {name}" for name in self._classes_of(text.stems)]
        found += [f"starts-class {name}" for name in self._classes_of(text.stems[:1])]
        found += [f"cue {cue}" for cue in text.cues]
        found += [f"{name} {min(count, MOST)}" for name, count in counts.items()]
        both = " ".join(f"{name} {min(counts[name], MOST + 1)}" for name in ("wines", "foods"))
        found += [both, *(["asks"] if "?" in text.typed else [])]
        found += [f"standing {trait}" for trait in (ALWAYS, both, *_few(words))] if standing else []
        found += [f"plain {a} {b}" for a, b in pairwise([EDGE, *filter(str.isalnum, words), EDGE])]
        much = EVEN / sqrt(len(set(found)))
        length = {"length": min(len(words), LONG) / LONG}
        return {ALWAYS: 1.0} | dict.fromkeys(found, much) | length | _senses(text)

    def sums(self, traits: Traits) -> dict[str, float]:
        """How much speaks for each intent, in log odds up to a constant; empty where nothing speaks."""
        found = {trait: row for trait in traits if (row := self._of(trait)) is not None}
        if not found:
            return {}
        much = np.array([traits[trait] for trait in found])
        table = np.frombuffer(b"".join(found.values())).reshape(len(found), -1)
        return dict(zip(self._at, (much @ table).tolist(), strict=True))

    def because(self, traits: Traits, intent: str) -> tuple[str, ...]:
        """The traits that spoke for an intent, strongest first."""
        found = ((t, row) for t in traits if t != ALWAYS and (row := self._of(t)) is not None)
        spoke = {t: traits[t] * np.frombuffer(row)[self._at[intent]] for t, row in found}
        return tuple(t for t in sorted(spoke, key=lambda t: -spoke[t]) if spoke[t] > 0)

    def _classes_of(self, stems: Iterable[str]) -> list[str]:
        return sorted({name for word in stems for name in self._classes.get(word, ())})

    def _of(self, trait: str) -> bytes | None:
        """The weights of a trait, one for each intent, as bytes: joined, they are a table; None for none."""
        if (told := self._told.get(trait)) is not None:
            return told
        kind, _, word = trait.partition(" ")
        found = self._meanings.of(word) if kind == SENSE else self._taken_apart(trait)
        if found is None:  # and is not kept: there is no end of what says nothing
            return None
        self._told[trait] = found.tobytes()
        return self._told[trait]

    def _taken_apart(self, trait: str) -> Row | None:
        """The weights of a trait out of their line, when it is first met: thousands never are."""
        if trait not in self._weights:
            return None
        parts = self._weights[trait].split()
        row = np.zeros(len(self._at))
        row[[self._at[intent] for intent in parts[::2]]] = [float(w) for w in parts[1::2]]
        return row


def _row(text: Text) -> Sequence[str]:
    """The words in order, each name as its kind."""
    starts = {reading.start: reading for reading in text.readings}
    inside = {i for reading in text.readings for i in range(reading.start, reading.end)}
    new = {word.lower() for word in text.left_out}
    row: list[str] = []
    for i, word in enumerate(text.stems):
        if i in starts:
            row.append(f"<{starts[i].kind}>")
        elif i not in inside:
            row.append(_word(word, text.words[i].lower() in new))
    return row


def _senses(text: Text) -> dict[str, float]:
    """What the words beside names mean, which a word never met before shares with others."""
    inside = {i for reading in text.readings for i in range(reading.start, reading.end)}
    folded = [fold(word) for i, word in enumerate(text.words) if i not in inside]  # `don't` as `dont`
    words = [word for word in folded if word.isalpha()]
    return dict.fromkeys((f"{SENSE} {word}" for word in words), 1 / sqrt(max(1, len(words))))


def _few(words: Sequence[str]) -> list[str]:
    return ["few words"] if len(words) <= FEW else []


def _word(word: str, new: bool) -> str:
    return NEW if new else NUMBER if word.isdigit() else word


def read_evidence(folder: Path) -> Evidence:
    """The evidence of the language files of a folder. Raises KnowledgeError for broken ones."""
    classes, weights = folder / "word-classes.toml", folder / "evidence.tsv"
    words = read_data(classes, lambda table: {name: list(text.split()) for name, text in table.items()})
    with telling(weights):
        rows = dict(line.split("\t") for line in weights.read_text("utf-8").splitlines() if line[:1] != "#")
        intents = len(rows[ALWAYS].split()) // 2
    return Evidence(words, rows, read_meanings(folder / "meanings.npz", intents))
