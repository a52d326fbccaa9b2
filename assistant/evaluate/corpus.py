"""The question corpus as records: questions, conversations and things outside the job."""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from assistant import answers

Names = tuple[str, ...]


@lru_cache(maxsize=1)
def intents() -> frozenset[str]:
    """The intents of the published JSON."""
    schema = json.loads(Path(answers.__file__).with_name("answer.schema.json").read_text("utf-8"))
    return frozenset(schema["properties"]["intent"]["enum"])


@dataclass(frozen=True, slots=True)
class Question:
    """A question and how two readers would both read it. All names are in people's own words.

    `wishes` are asked for though no wine can be limited by them (`vegan`); `unknown` is meant and not in
    the knowledge. Both must be told, never dropped. `author` is the pass in which it was written.
    """

    id: str
    ask: str
    intent: str
    author: str
    foods: Names = ()
    methods: Names = ()
    wines: Names = ()
    limits: Names = ()
    terms: Names = ()
    wishes: Names = ()
    unknown: Names = ()


@dataclass(frozen=True, slots=True)
class Turn:
    """One turn of a conversation, and what must or must not stand after it.

    `also` are other intents that would do as well; `present` and `absent` foods and methods of the dishes;
    `pick` says that the wine meant is this one of the last list, counted from 1; `fresh` that nothing
    named before is named again.
    """

    ask: str
    intent: str
    present: Names = ()
    absent: Names = ()
    wines: Names = ()
    limits: Names = ()
    no_limits: Names = ()
    pick: int | None = None
    fresh: bool = False
    also: Names = ()


@dataclass(frozen=True, slots=True)
class Dialogue:
    """A conversation."""

    id: str
    author: str
    turns: tuple[Turn, ...]


@dataclass(frozen=True, slots=True)
class Refusal:
    """Something outside the job, and what it is."""

    id: str
    ask: str
    about: str


@dataclass(frozen=True, slots=True)
class Corpus:
    """All that was read."""

    questions: tuple[Question, ...] = ()
    dialogues: tuple[Dialogue, ...] = ()
    refusals: tuple[Refusal, ...] = ()

    def __add__(self, other: Corpus) -> Corpus:
        return Corpus(
            self.questions + other.questions,
            self.dialogues + other.dialogues,
            self.refusals + other.refusals,
        )

    def ids(self) -> list[str]:
        """The ids of everything, in order."""
        return [row.id for rows in (self.questions, self.dialogues, self.refusals) for row in rows]
