"""Cues: turns of phrase that hint at what is asked, kept as data in corpus/language/cues.toml.

A cue line is a row of words; `a|b` are alternatives, a trailing `?` makes a word optional and
`*` stands for up to three words. Words are folded like everything else.

Matched by hand rather than by spaCy's Matcher, which takes a quarter of a second to take in some
1,600 such lines and ten times as long to look for them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from spacy.tokens import Doc

from assistant.language.data import read_data
from assistant.language.fold import fold, stem

LONGEST_GAP, HYPHEN = 3, "-"


@dataclass(frozen=True, slots=True)
class Cue:
    """A cue found in the text: its name, the tokens it spans (end exclusive), those it names."""

    name: str
    start: int
    end: int
    fixed: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Step:
    """One word of a line: its alternatives (none for a gap), and whether it may be missing."""

    words: frozenset[str]
    optional: bool

    @property
    def gap(self) -> bool:
        """Whether up to three words of any kind stand here."""
        return not self.words


Line = tuple[Step, ...]


def read_line(line: str) -> Line:
    """A cue line as steps."""
    return tuple(_step(word) for word in line.split())


@cache  # the same words stand in many lines
def _step(word: str) -> Step:
    if word == "*":
        return Step(frozenset(), optional=True)
    optional = word.endswith("?") and len(word) > 1
    return Step(frozenset(stem(fold(w)) for w in word.rstrip("?").split("|")), optional)


def match(line: Line, stems: Sequence[str], at: int) -> tuple[int, ...] | None:
    """Positions of the words of a line that starts here (the furthest reaching way), or None."""
    if not line:
        return ()
    step, rest = line[0], line[1:]
    found: list[tuple[int, ...]] = []
    if step.gap:
        ends = _gap_ends(stems, at)
        found = [tail for end in ends if (tail := match(rest, stems, end)) is not None]
    else:
        if at < len(stems) and stems[at] in step.words:
            tail = match(rest, stems, at + 1)
            found = [(at, *tail)] if tail is not None else []
        if step.optional and (tail := match(rest, stems, at)) is not None:
            found.append(tail)
    return max(found, key=lambda places: places[-1:], default=None)


def _gap_ends(stems: Sequence[str], at: int) -> Iterable[int]:
    """Where up to three words may end; what hyphens join (`Entre-Deux-Mers`) is one."""
    if HYPHEN not in stems[at : at + LONGEST_GAP]:
        return range(at, min(at + LONGEST_GAP, len(stems)) + 1)
    words, ends = 0, [at]
    for end in range(at + 1, len(stems) + 1):
        words += HYPHEN not in stems[end - 2 + (end == at + 1) : end]
        if words > LONGEST_GAP:
            break
        ends.append(end)
    return ends


def may_match(needed: Iterable[frozenset[str]], words: Set[str]) -> bool:
    """Whether each of these steps has a word in the text: quicker than looking for their order."""
    return all(not step.isdisjoint(words) for step in needed)


def needed(line: Line) -> tuple[frozenset[str], ...]:
    """The words of the steps that must be there, the last step first: the first is known to be there."""
    return tuple(step.words for step in reversed(line) if not step.optional)


class Lines:
    """Lines of words, found by the words they can start with."""

    def __init__(self, texts: Iterable[str]) -> None:
        self._starts: dict[str, list[tuple[Line, tuple[frozenset[str], ...]]]] = {}
        lines = [read_line(text) for text in texts]
        self.longest = max(map(len, lines), default=0)
        for line in lines:
            for word in _first_words(line):
                self._starts.setdefault(word, []).append((line, needed(line)))

    def at(self, stems: Sequence[str], at: int, words: Set[str] | None = None) -> Iterator[tuple[int, ...]]:
        """The positions of the words of each line that starts here; `words`: all of the text."""
        lines = self._starts.get(stems[at]) if at < len(stems) else None
        if not lines:
            return
        words = set(stems) if words is None else words
        for line, steps in lines:
            if may_match(steps, words) and (places := match(line, stems, at)):
                yield places

    def find(self, stems: Sequence[str]) -> Iterator[tuple[int, ...]]:
        """The same for every place of a text, in order."""
        words, starts = frozenset(stems), self._starts
        if starts.keys().isdisjoint(words):
            return iter(())
        begun = [at for at, stem in enumerate(stems) if stem in starts]
        return (places for at in begun for places in self.at(stems, at, words))

    def stand_in(self, stems: Sequence[str]) -> bool:
        """Whether any of the lines stands in a text."""
        return any(self.find(stems))


class RareWords:
    """Lines by the step that must be there and whose words the fewest lines share, so that few are tried."""

    def __init__(self, lines: Sequence[Line]) -> None:
        common = Counter(word for line in lines for step in line for word in step.words)
        self._needed = [needed(line) for line in lines]
        self._by_word: dict[str, list[int]] = {}
        for at, line in enumerate(lines):
            steps = self._needed[at] or (_first_words(line),)
            for word in min(steps, key=lambda words: sum(common[word] for word in words)):
                self._by_word.setdefault(word, []).append(at)

    def near(self, words: Set[str]) -> list[int]:
        """Places, in order, of the lines all of whose needed steps have a word in the text."""
        found = {at for word in words for at in self._by_word.get(word, ())}
        return sorted(at for at in found if may_match(self._needed[at], words))


class CueBook:
    """All cues, ready to find in a Doc."""

    def __init__(self, cues: Mapping[str, Sequence[str]]) -> None:
        self.lines = {name: [read_line(line) for line in lines] for name, lines in cues.items()}
        steps = [step for lines in self.lines.values() for line in lines for step in line]
        self.words = frozenset(word for step in steps for word in step.words)
        every = [(name, line) for name, lines in self.lines.items() for line in lines]
        self._every = [(name, line, _first_words(line)) for name, line in every]
        self._rare = RareWords([line for _, line in every])

    def find(self, doc: Doc) -> list[Cue]:
        """All cues in the text, in order, the longest first at the same place."""
        return self.find_in([token.norm_ for token in doc])

    def find_in(self, stems: Sequence[str]) -> list[Cue]:
        """The same for the stems of a text."""
        cues: set[Cue] = set()
        for name, line, firsts in map(self._every.__getitem__, self._rare.near(set(stems))):
            for at, word in enumerate(stems):
                if word in firsts and (places := match(line, stems, at)):
                    cues.add(Cue(name, at, places[-1] + 1, places))
        return sorted(cues, key=lambda cue: (cue.start, -cue.end, cue.name))


def _first_words(line: Line) -> frozenset[str]:
    """The words a line can start with: those of its first steps up to one that must be there."""
    words: set[str] = set()
    for step in line:
        words |= step.words
        if not step.optional:
            break
    return frozenset(words)


def read_cues(file: Path) -> dict[str, list[str]]:
    """The cue lines of a TOML file, by cue name."""
    return read_data(file, lambda tables: {name: list(table["lines"]) for name, table in tables.items()})
