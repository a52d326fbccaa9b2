"""What may be said in a notebook, and what the shapes have against the rest."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pyoxigraph as ox
import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.answers.sanitise import safe
from assistant.knowledge.store import shipped
from assistant.notebook import Statement, stated, withdrawal
from assistant.notebook.block import block, block_facts
from assistant.notebook.facts import statement
from assistant.notebook.faults import faults
from assistant.notebook.merging import shape_faults
from assistant.notebook.statement import Value, cleaned
from assistant.notebook.vocabulary import SCHEMA_ORG, vocabulary
from tests.notebook.made import EACH_KIND, WHEN, made, one_of_each

HOSTILE = (
    "\x1b[2J\x1b]52;c;aGVsbG8=\x07", "\x9b31m\x85\x90", "\u202egnp.exe\u2066\u200b",
    'say """ and \\" and \'\'\'', "back\\slash \\u0041 \\n",
    "two\nlines\r\nand\rmore\ttabs", "<http://a b/c> . <x> <y> <z> .", "# guard 0123",
    "<<( a b c )>> << {| |}", "\U000e0041\ufeff\ufffe\ud800",
    "\n\n# goeswith notebook, format 1: 0 statements",
)  # fmt: skip


def again(one: Statement) -> Statement:
    """The statement written as Turtle and read again."""
    return statement(*block_facts(block(one)))


@pytest.mark.parametrize("one", one_of_each(), ids=lambda one: one.kind)
def test_every_kind_is_written_and_read_again(one: Statement) -> None:
    assert again(one) == one


def test_every_kind_is_tried() -> None:
    assert {one.kind for one in one_of_each()} == set(vocabulary().kinds)
    assert {key for _, _, value in EACH_KIND for key in value} == set(vocabulary().keys)


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_words_are_kept_harmless(text: str) -> None:
    told = stated(
        "alias", f"so: {text}", f"Ann {text}", about=(f"a {text}",), value={"alias": f"b {text}"}
    ).statement
    assert told is not None
    assert again(told) == told
    written = block(told).decode()
    assert safe(written) == written
    assert "\n\n" not in written
    assert "\n# " not in written


def test_what_is_cleaned_out_is_remarked() -> None:
    told = stated("note", "be\x1b[31mware", "Ann")
    assert told.statement is not None
    assert told.statement.said == "be[31mware"
    assert "steer a terminal" in told.remarks[0].message
    assert stated("note", "two\r\nlines", "Ann").remarks == ()


@given(st.text(min_size=1, max_size=200), st.text(max_size=60), st.text(max_size=60))
def test_any_words_round_trip_or_are_refused_with_a_reason(said: str, author: str, about: str) -> None:
    told = stated("note", said, author, about=(about,) if about else (), when=WHEN)
    assert (told.statement is None) == bool(told.problems)
    if told.statement is not None:
        assert again(told.statement) == told.statement
        assert cleaned(told.statement) == (told.statement, ())


GRAM = made("quantity", value={"amount": 1, "unit": "g"})
BAD: tuple[tuple[str, Statement], ...] = (
    ("a kind without a word", made()),
    ("no words", replace(made(), said="")),
    ("too many words", replace(made(), said="x" * 2001)),
    ("an author without a name", replace(made(), author="")),
    ("a pair of one", replace(made(about=("food/brie",)), kind="pairing", value={"verdict": "band/good"})),
    ("an unknown verdict", made("vote", about=("food/brie",), value={"verdict": "band/good"})),
    ("a value of another kind", replace(made(), value={"alias": "x"})),
    ("a key without a word", replace(made(), value={"colour": "red"})),
    ("no unit", replace(GRAM, value={"amount": Decimal(1)})),
    ("no number", replace(GRAM, value={"amount": Decimal("NaN"), "unit": "g"})),
    ("too large", replace(GRAM, value={"amount": Decimal("1e9"), "unit": "g"})),
    ("endless", replace(GRAM, value={"amount": Decimal("1e99999"), "unit": "g"})),
    ("a withdrawal of nothing", replace(made(), kind="withdrawn")),
    ("a withdrawal of no name", replace(made(), kind="withdrawn", withdraws="that one")),
    ("a note that withdraws", replace(made(), withdraws="urn:x:y")),
    ("about too much", made(about=tuple(f"thing {n}" for n in range(20)))),
)  # fmt: skip
WRONG: dict[str, dict[str, object]] = {
    "a kind without a word": {"kind": "gossip"},
    "an unknown verdict": {"value": {"verdict": "band/lovely"}},
    "about too much": {"about": tuple(f"thing {n}" for n in range(21))},
}


@pytest.mark.parametrize(("what", "one"), BAD, ids=[what for what, _ in BAD])
def test_bad_statement_is_refused_in_one_sentence_and_a_remedy(what: str, one: Statement) -> None:
    bad = replace(one, **WRONG.get(what, {}))  # type: ignore[arg-type]
    found = faults(bad)
    assert found
    assert all(p.message.endswith(".") and p.remedy.endswith(".") for p in found)
    if what in WRONG:
        assert faults(one) == ()


def test_time_without_a_zone_is_refused() -> None:
    assert "offset" in stated("note", "late", "Ann", when=datetime(2026, 5, 1)).problems[0].message


@pytest.mark.parametrize("value", [True, 1.5, "six"])
def test_votes_are_a_whole_number(value: Value) -> None:
    assert stated(
        "vote", "six", "Ann", about=("food/brie",), value={"verdict": "band/good", "votes": value}
    ).problems


def test_quick_check_and_shacl_agree_on_one_of_each() -> None:
    told = one_of_each()
    assert shape_faults(told, told, "here") == ()


def test_shacl_refuses_what_the_quick_check_refuses() -> None:
    bad = [
        replace(made(), said="x" * 2001),
        replace(made(), value={"alias": "x"}),
        replace(made(), withdraws="urn:x:y"),
    ]
    for one in bad:
        assert faults(one)
        assert shape_faults([one], [one], "here")


def test_verdicts_are_the_bands_of_the_scores() -> None:
    (verdict,) = [limit for limit in vocabulary().limits if limit.path.endswith("#verdict")]
    assert {iri.rsplit("goeswith/", 1)[-1] for iri in verdict.among} == set(shipped().of_type("Band"))


def test_shapes_take_a_key_of_the_kinds_that_the_vocabulary_gives_it() -> None:
    from assistant.knowledge.files import ontology_dir

    given_: dict[str, set[str]] = {}
    for quad in ox.parse(path=str(ontology_dir() / "notebook.ttl"), format=ox.RdfFormat.TURTLE):
        if quad.predicate.value == f"{SCHEMA_ORG}domainIncludes":
            given_.setdefault(quad.subject.value, set()).add(quad.object.value)
    taken = {
        key: set(limit.among)
        for limit in vocabulary().limits
        if limit.path.endswith("#type")
        for key in limit.having
    }
    assert taken == given_


def test_withdrawal_names_what_it_takes_back(tmp_path: Path) -> None:
    one = made()
    back = withdrawal(one, "forget that", "Bo").statement
    assert back is not None
    assert (back.withdraws, back.kind, back.author) == (one.id, "withdrawn", "Bo")


def test_statement_as_json_is_plain() -> None:
    import json

    one = made("quantity", value={"amount": 7.5, "unit": "bottles", "people": 3})
    assert json.loads(json.dumps(one.as_json()))["value"] == {"amount": 7.5, "unit": "bottles", "people": 3}
