"""The shipped corpus: sound, complete, in words the knowledge has, and read no worse than its floors say."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from assistant.evaluate.corpus import Corpus, intents
from assistant.evaluate.figures import below
from assistant.evaluate.naming import Namer
from assistant.evaluate.read import read_corpus, shipped_files
from assistant.evaluate.run import read_floors, read_known, run
from assistant.evaluate.slips import measure_speller
from assistant.knowledge.files import corpus_dir
from assistant.language.fold import key
from assistant.session import Session

QUESTIONS, DIALOGUES, REFUSALS, OF_EACH = 1200, 80, 40, 40
# The conversations written by fresh ears take too long for every run; `goeswith evaluate` runs them.
SLOW = "fresh-ears.toml"
OF_TALKS = ("turns", "turn_intents")


@pytest.fixture(scope="module")
def corpus() -> Corpus:
    """The shipped corpus."""
    return read_corpus()


@pytest.fixture(scope="module")
def namer(session: Session) -> Namer:
    """Looks up the names of the labels."""
    return Namer(session.parser.lexicon, session.knowledge)


def test_corpus_is_large_enough(corpus: Corpus) -> None:
    assert len(corpus.questions) >= QUESTIONS
    assert len(corpus.dialogues) >= DIALOGUES
    assert len(corpus.refusals) >= REFUSALS


def test_every_intent_has_questions(corpus: Corpus) -> None:
    asked = Counter(question.intent for question in corpus.questions)
    assert {intent: asked[intent] for intent in intents() if asked[intent] < OF_EACH} == {}


def test_every_pass_has_questions_of_every_intent(corpus: Corpus) -> None:
    passes = {question.author for question in corpus.questions}
    asked = {(question.author, question.intent) for question in corpus.questions}
    assert [(p, i) for p in passes for i in intents() if (p, i) not in asked] == []


def test_no_question_stands_twice(corpus: Corpus) -> None:
    asked = Counter(key(row.ask) for row in (*corpus.questions, *corpus.refusals))
    assert [" ".join(words) for words, times in asked.items() if times > 1] == []


def test_each_file_is_named_after_its_intent(corpus: Corpus) -> None:
    for file in (corpus_dir() / "questions").glob("*.toml"):
        assert {question.intent for question in read_corpus([file]).questions} == {file.stem}


def test_labels_are_names_that_the_knowledge_has(corpus: Corpus, namer: Namer) -> None:
    strange = [
        (question.id, name)
        for question in corpus.questions
        for name in (*question.foods, *question.methods, *question.wines, *question.terms)
        if not namer.known(name)
    ]
    assert strange == []


def test_names_of_conversations_are_known(corpus: Corpus, namer: Namer) -> None:
    strange = [
        (dialogue.id, name)
        for dialogue in corpus.dialogues
        for turn in dialogue.turns
        for name in (*turn.present, *turn.absent, *turn.wines)
        if not namer.known(name)
    ]
    assert strange == []


def test_limits_are_worded_as_the_program_words_them(corpus: Corpus, namer: Namer) -> None:
    limits = [(question.id, limit) for question in corpus.questions for limit in question.limits]
    limits += [
        (d.id, limit) for d in corpus.dialogues for t in d.turns for limit in (*t.limits, *t.no_limits)
    ]
    assert [(i, m) for i, m in limits if any(x.startswith("unknown/") for x in namer.limit(m).ids)] == []


def test_what_must_be_told_is_in_the_question(corpus: Corpus) -> None:
    lost = [
        (question.id, name)
        for question in corpus.questions
        for name in (*question.unknown, *question.wishes)
        if not set(key(name)) <= set(key(question.ask))
    ]
    assert lost == []


def test_known_failures_name_what_is_in_the_corpus(corpus: Corpus) -> None:
    turns = {f"{d.id}.{number}" for d in corpus.dialogues for number in range(1, len(d.turns) + 1)}
    assert sorted(set(read_known()) - set(corpus.ids()) - turns) == []


def test_floors_are_kept(session: Session) -> None:
    quick: list[Path] = [file for file in shipped_files() if file.name != SLOW]
    results = run(read_corpus(quick), session)
    floors = {
        way: {name: value for name, value in floor.items() if name not in OF_TALKS}
        for way, floor in read_floors().items()
    }
    assert floors["at-least"]
    figures = results.figures() | measure_speller(session.parser).figures()
    assert below(figures, floors) == []
