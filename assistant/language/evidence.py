"""What the words of a question speak for: weights by intent, kept as data and fitted to the question corpus
by `python -m assistant.evaluate.fit`.

A trait is something a text has: a word, two words in a row, a class of words, a cue, how many wines
and foods. Names count as their kind (`<wine>`), words that are not known as `<new>`. The intent with
the largest sum of weights wins, and the traits that spoke for it can be told.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise
from pathlib import Path

from assistant.language.data import read_data, telling
from assistant.language.fold import fold, stem
from assistant.language.frame import Text

NEW, NUMBER, EDGE, ALWAYS = "<new>", "<number>", "|", "always"
MOST, LONG, FEW = 2, 30, 4
Traits = Mapping[str, float]


class Evidence:
    """Traits of a text, weighed. `classes`: words by class; `weights`: by trait, then by intent."""

    def __init__(self, classes: Mapping[str, Iterable[str]], weights: Mapping[str, str]) -> None:
        self._classes: dict[str, list[str]] = {}
        for name, words in classes.items():
            for word in words:
                self._classes.setdefault(stem(fold(word)), []).append(name)
        self._weights = weights
        self._told: dict[str, dict[str, float]] = {}

    def traits(self, text: Text, counts: Mapping[str, int], standing: bool = False) -> dict[str, float]:
        """The traits of a text and how much each counts (1 for most). `counts`: things found, by name.

        `standing`: an earlier turn stands.
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
        return dict.fromkeys([ALWAYS, *found], 1.0) | {"length": min(len(words), LONG) / LONG}

    def sums(self, traits: Traits) -> dict[str, float]:
        """How much speaks for each intent, in log odds up to a constant; empty where nothing speaks."""
        sums: defaultdict[str, float] = defaultdict(float)
        for trait, much in traits.items():
            if trait in self._weights:
                for intent, weight in self._of(trait).items():
                    sums[intent] += much * weight
        return sums

    def because(self, traits: Traits, intent: str) -> tuple[str, ...]:
        """The traits that spoke for an intent, strongest first."""
        spoke = {trait: much * self._of(trait).get(intent, 0.0) for trait, much in traits.items()}
        return tuple(t for t in sorted(spoke, key=lambda t: -spoke[t]) if spoke[t] > 0 and t != ALWAYS)

    def _classes_of(self, stems: Iterable[str]) -> list[str]:
        return sorted({name for word in stems for name in self._classes.get(word, ())})

    def _of(self, trait: str) -> dict[str, float]:
        if trait not in self._weights:
            return {}
        if trait not in self._told:  # taken apart when first met: thousands are never met
            parts = self._weights[trait].split()
            self._told[trait] = {i: float(w) for i, w in zip(parts[::2], parts[1::2], strict=True)}
        return self._told[trait]


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


def _few(words: Sequence[str]) -> list[str]:
    return ["few words"] if len(words) <= FEW else []


def _word(word: str, new: bool) -> str:
    return NEW if new else NUMBER if word.isdigit() else word


def read_evidence(classes: Path, weights: Path) -> Evidence:
    """The evidence of a file of word classes and one of weights. Raises KnowledgeError for broken ones."""
    words = read_data(classes, lambda table: {name: list(text.split()) for name, text in table.items()})
    with telling(weights):
        rows = (line.split("\t") for line in weights.read_text("utf-8").splitlines() if line[:1] != "#")
        return Evidence(words, dict(rows))
