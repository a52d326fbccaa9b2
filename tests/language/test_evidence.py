"""What words speak for: sums by intent, told in words, and the shipped table in order."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.evaluate.corpus import intents
from assistant.evaluate.fit import Seen, right, write, written
from assistant.knowledge.files import corpus_dir
from assistant.language.evidence import Evidence, read_evidence
from assistant.session import Session
from tests.language.conftest import Parse

FOLDER = corpus_dir() / "language"
CLASSES, TABLE = FOLDER / "word-classes.toml", FOLDER / "evidence.tsv"
LINES = [line.split("\t") for line in TABLE.read_text("utf-8").splitlines() if line[0] != "#"]
COUNTS = {"wines": 0, "foods": 1, "terms": 0, "limits": 0}


def test_weights_add_up_and_are_told_strongest_first() -> None:
    evidence = Evidence({}, {"word decant": "service 2.0 trouble 0.5", "asks": "service 0.5 note -1.0"})
    traits = {"word decant": 1.0, "asks": 2.0, "word brie": 1.0}
    assert evidence.sums(traits) == {"service": 3.0, "trouble": 0.5, "note": -2.0}
    assert evidence.because(traits, "service") == ("word decant", "asks")


def test_names_count_as_their_kind_and_strange_words_as_new(parse: Parse) -> None:
    text = parse("does kumbaloo go with merlot?").text
    traits = Evidence({"auxiliary": ["does", "do"]}, {}).traits(text, COUNTS)
    expected = {"word <new>", "word <wine>", "words with <wine>", "class auxiliary", "asks", "foods 1"}
    assert traits.keys() >= expected
    assert not any("merlot" in trait or "kumbaloo" in trait for trait in traits)


def test_every_weight_is_of_an_intent_and_of_a_trait_that_can_be() -> None:
    told = [part for _, weights in LINES for part in weights.split()[::2]]
    assert set(told) <= intents()
    assert {trait for trait, _ in LINES if trait.startswith("class ")} <= {
        f"class {name}" for name in _classes(read_evidence(CLASSES, TABLE))
    }


def _classes(evidence: Evidence) -> set[str]:
    return {name for names in evidence._classes.values() for name in names}


def test_the_table_survives_writing(tmp_path: Path) -> None:
    file = tmp_path / "evidence.tsv"
    table = written({"asks": {"why": 0.5, "note": -1.25}, "always": {"why": 0.1}})
    write(table, file)
    assert read_evidence(CLASSES, file)._weights == table


def test_right_counts_the_intents_named() -> None:
    rows = [Seen({"asks": 1.0}, "why", "one"), Seen({"asks": 1.0}, "note", "one")]
    assert right(rows, {"asks": "why 1.0 note 0.5"}) == 0.5


@pytest.mark.parametrize(
    ("question", "intent"),
    [
        ("how cold should the white be", "service"),
        ("how many bottles for twelve people", "quantity"),
        ("the cork just snapped in the bottle", "trouble"),
        ("is it true that legs mean a wine is better", "myth"),
        ("they were out of comte, what else could I buy", "substitute"),
        ("forget what I said about the gouda", "undo"),
        ("please remember that my crowd prefers syrah with gouda", "teach"),
        ("write down that everyone loved the second wine", "note"),
        ("plan an evening for ten with four wines and a budget of 150", "plan"),
        ("is my board balanced: brie, stilton, salami and figs", "check-board"),
        ("what would happen if I put honey on the goat cheese", "what-if"),
    ],
)
def test_said_in_plain_words(session: Session, question: str, intent: str) -> None:
    frame = session.parser.parse(question)
    assert frame.intent == intent
    assert frame.because
