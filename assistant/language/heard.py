"""What is known of speech, from corpus/language/heard-as.toml."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from hashlib import sha256
from typing import Any

from assistant.language.fold import key
from assistant.language.sounding import Sounds


@dataclass(frozen=True)
class Heard:
    """What is known of speech: whole-phrase slips, how letters sound, what stands before the name of a
    person or before something to eat (and little words passed over behind that), what stands between two
    names and in none that is heard, that and more behind a name, and before
    one of a list, the words for kinds of things behind their names (with the ids of the kinds), names that
    the knowledge lacks, and words by the kind they ask for."""

    slips: Mapping[str, str]
    sounds: Sounds
    people: frozenset[str]
    eaten: frozenset[str]
    passed_over: frozenset[str]
    between: frozenset[str]
    closing: frozenset[str]
    listed: frozenset[str]
    heads: Mapping[str, str]
    others: frozenset[str]
    dues: Mapping[str, frozenset[str]]
    key: str

    def and_slips(self, slips: Mapping[str, str]) -> Heard:
        """The same with more slips; one that stands here already keeps its meaning."""
        every = {**slips, **self.slips}
        return replace(self, slips=every, key=_digest([self.key, *every.items()]))

    def and_others(self, names: Iterable[str]) -> Heard:
        """The same with more names and words that are none of the knowledge's."""
        return replace(self, others=self.others.union(names))

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> Heard:
        """From the tables of heard-as.toml. Raises KeyError, ValueError or TypeError where unsound."""
        rules = tables["sounds"]
        others = frozenset(word for name in tables["others"]["names"].split() for word in key(name))
        people = frozenset(tables["people"]["before"])
        return cls(
            dict(tables["slips"]),
            Sounds(rules),
            people,
            frozenset(tables["eaten"]["before"]),
            frozenset(tables["eaten"]["passed-over"]),
            frozenset(tables["eaten"]["between"]),
            frozenset(tables["eaten"]["between"] + tables["eaten"]["closing"]),
            frozenset(tables["eaten"]["listed"]),
            dict(tables["heads"]),
            others,
            {kind: frozenset(words) for kind, words in tables["due"].items()},
            _digest([rules, sorted(dict(tables["slips"]).items())]),
        )


def _digest(parts: list[Any]) -> str:
    return sha256(repr(parts).encode()).hexdigest()[:12]
