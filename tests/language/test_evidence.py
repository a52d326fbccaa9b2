"""What words speak for: sums by intent, told in words, and the shipped table in order."""

from __future__ import annotations

import shutil
from pathlib import Path

import numpy as np
import pytest

from assistant.evaluate.corpus import intents
from assistant.evaluate.fit import Fitted, Seen, right, write, written
from assistant.knowledge.files import corpus_dir
from assistant.knowledge.problems import KnowledgeError
from assistant.language.evidence import Evidence, read_evidence
from assistant.language.meanings import none, read_meanings, stepped, write_meanings
from assistant.session import Session
from tests.language.conftest import Parse

FOLDER = corpus_dir() / "language"
TABLE = FOLDER / "evidence.tsv"
LINES = [line.split("\t") for line in TABLE.read_text("utf-8").splitlines() if line[0] != "#"]
COUNTS = {"wines": 0, "foods": 1, "terms": 0, "limits": 0}


def test_weights_add_up_and_are_told_strongest_first() -> None:
    always = "note 0.0 service 0.0 trouble -0.25 why 0.0"
    weights = {"always": always, "word decant": "service 2.0 trouble 0.5", "asks": "service 0.5 note -1.0"}
    evidence = Evidence({}, weights)
    traits = {"always": 1.0, "word decant": 1.0, "asks": 2.0, "word brie": 1.0}
    assert evidence.sums(traits) == {"note": -2.0, "service": 3.0, "trouble": 0.25, "why": 0.0}
    assert evidence.because(traits, "service") == ("word decant", "asks")


def test_what_a_word_means_speaks_where_the_word_itself_was_never_met() -> None:
    words, weights = ["decant", "fetch"], np.array([[0.0, 2.0], [-1.0, 0.5]])
    evidence = Evidence({}, {"always": "note 0.5 service 0.0"}, stepped(words, weights))
    assert evidence.sums({"sense fetch": 0.5}) == pytest.approx({"note": -0.5, "service": 0.25}, abs=0.01)
    assert evidence.because({"sense decant": 1.0, "sense zither": 1.0}, "service") == ("sense decant",)


def test_names_count_as_their_kind_and_strange_words_as_new(parse: Parse) -> None:
    text = parse("does kumbaloo go with merlot?").text
    traits = Evidence({"auxiliary": ["does", "do"]}, {}).traits(text, COUNTS)
    expected = {"word <new>", "word <wine>", "words with <wine>", "class auxiliary", "asks", "foods 1"}
    assert traits.keys() >= expected | {"plain go with"}
    assert not any("merlot" in trait for trait in traits)
    assert {trait for trait in traits if "kumbaloo" in trait} == {"sense kumbaloo"}


def test_many_traits_count_less_each(parse: Parse) -> None:
    few, many = (
        Evidence({}, {}).traits(parse(asked).text, COUNTS)
        for asked in ("brie?", "what would you pour for a crowd that likes soft cheese and hates red wine?")
    )
    assert few["asks"] > many["asks"] > 0


def test_every_weight_is_of_an_intent_and_of_a_trait_that_can_be() -> None:
    told = [part for _, weights in LINES for part in weights.split()[::2]]
    assert set(told) <= intents()
    assert dict(LINES)["always"].split()[::2] == sorted(intents())
    assert {trait for trait, _ in LINES if trait.startswith("class ")} <= {
        f"class {name}" for name in _classes(read_evidence(FOLDER))
    }


def _classes(evidence: Evidence) -> set[str]:
    return {name for names in evidence._classes.values() for name in names}


def test_the_tables_survive_writing(tmp_path: Path) -> None:
    shutil.copy(FOLDER / "word-classes.toml", tmp_path)
    table = written({"asks": {"why": 0.5, "note": -1.25}, "always": {"why": 0.1, "note": 0.0}})
    write(table, tmp_path / "evidence.tsv")
    write_meanings(stepped(["fetch"], np.array([[0.0, 1.0]])), tmp_path / "meanings.npz")
    read = read_evidence(tmp_path)
    assert read._weights == table == {"always": "note 0.00 why 0.10", "asks": "why 0.50 note -1.25"}
    assert read.sums({"sense fetch": 1.0}) == {"note": 0.0, "why": pytest.approx(1.0)}


@pytest.mark.parametrize("broken", [b"PK no more", b"PK\x03\x04 cut off", b""])
def test_a_broken_table_is_told(tmp_path: Path, broken: bytes) -> None:
    (tmp_path / "meanings.npz").write_bytes(broken)
    with pytest.raises(KnowledgeError, match=r"meanings\.npz: cannot be"):
        read_meanings(tmp_path / "meanings.npz", 2)


def test_a_table_of_other_intents_is_told(tmp_path: Path) -> None:
    write_meanings(stepped(["fetch"], np.array([[0.0, 1.0]])), tmp_path / "meanings.npz")
    with pytest.raises(KnowledgeError, match=r"not 1 rows of 3"):
        read_meanings(tmp_path / "meanings.npz", 3)


def test_right_counts_the_intents_named() -> None:
    rows = [Seen({"asks": 1.0}, "why", "one"), Seen({"asks": 1.0}, "note", "one")]
    assert right(rows, Fitted({"always": "note 0.0 why 0.0", "asks": "why 1.0 note 0.5"}, none(2))) == 0.5


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
