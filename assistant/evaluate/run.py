"""Runs the corpus: every question against all intents, every conversation in order."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from assistant.evaluate.corpus import Corpus
from assistant.evaluate.figures import Results, below
from assistant.evaluate.naming import Namer
from assistant.evaluate.outcome import outcome
from assistant.evaluate.read import read_corpus
from assistant.evaluate.slips import SpellerFigures, measure_speller
from assistant.evaluate.talks import converse, refuse
from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.session import Session

Floors = Mapping[str, Mapping[str, float]]
DIRECTIONS = ("at-least", "at-most")


@dataclass(frozen=True, slots=True)
class Evaluation:
    """What was run, and what is wrong with it as a whole.

    `newly_wrong` and `newly_right` are ids against corpus/known-failures.toml, for the shipped corpus.
    """

    results: Results
    problems: tuple[str, ...]
    newly_wrong: tuple[str, ...] = ()
    newly_right: tuple[str, ...] = ()
    speller: SpellerFigures | None = None

    def figures(self) -> dict[str, float]:
        """All figures by name; the speller's only with the shipped corpus."""
        return self.results.figures() | (self.speller.figures() if self.speller else {})


def evaluate(files: Sequence[Path] = (), session: Session | None = None) -> Evaluation:
    """Runs the corpus in these files; the shipped one by default, which is held against its floors.

    Raises KnowledgeError where a file cannot be used.
    """
    corpus = read_corpus(files)
    session = session or Session()
    results = run(corpus, session)
    if files:
        return Evaluation(results, ())
    failed, known = results.failed(), read_known()
    newly_wrong = tuple(i for i in failed if i not in known)
    newly_right = tuple(i for i in known if i not in failed)
    done = Evaluation(results, (), newly_wrong, newly_right, measure_speller(session.parser))
    return replace(done, problems=tuple(below(done.figures(), read_floors())))


def run(corpus: Corpus, session: Session) -> Results:
    """Puts everything in the corpus to the session."""
    namer = Namer(session.parser.lexicon, session.knowledge)
    return Results(
        tuple(outcome(question, session, namer) for question in corpus.questions),
        tuple(turn for dialogue in corpus.dialogues for turn in converse(dialogue, session, namer)),
        tuple(refuse(refusal, session) for refusal in corpus.refusals),
    )


def read_floors() -> Floors:
    """The figures that the shipped corpus must keep to."""
    return read_data(corpus_dir() / "floors.toml", _floors)


def _floors(tables: dict[str, Any]) -> Floors:
    return {way: {name: float(value) for name, value in tables[way].items()} for way in DIRECTIONS}


def read_known() -> dict[str, str]:
    """What is known to go wrong: ids, and what was read instead."""
    return read_data(corpus_dir() / "known-failures.toml", lambda tables: dict(tables["failures"]))
