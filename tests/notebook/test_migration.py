"""A file of an older format is read as the newest, and its bytes are kept when it is written anew."""

from __future__ import annotations

from pathlib import Path

import pyoxigraph as ox
import pytest

from assistant.notebook import add, load
from assistant.notebook.facts import Facts
from assistant.notebook.sealing import whole
from assistant.notebook.versions import STEPS, newest
from assistant.notebook.vocabulary import EVENING
from tests.notebook.made import filled, made

OLD = "https://example.org/goeswith/note#occasion"
BLOCK = (
    '<urn:x:y> a note:Note ; prov:wasAttributedTo [ schema:name "Ann" ] ; schema:text "hm" ; '
    'prov:generatedAtTime "2026-05-01T19:30:00Z"^^xsd:dateTime ; note:occasion "Friday" .'
)


def occasion_is_evening(said: Facts) -> Facts:
    """A step as it may be needed one day: a property with another name."""
    return {EVENING if iri == OLD else iri: values for iri, values in said.items()}


@pytest.fixture
def second_format(monkeypatch: pytest.MonkeyPatch) -> None:
    """A program that is one format further."""
    monkeypatch.setitem(STEPS, 1, occasion_is_evening)


@pytest.fixture
def old(tmp_path: Path) -> Path:
    """A file of format 1 in the words that the step replaces."""
    file = tmp_path / "notebook.ttl"
    file.write_bytes(whole(1, [BLOCK.encode()]))
    return file


def test_every_older_format_has_its_step() -> None:
    assert set(STEPS) == set(range(1, newest()))


def test_old_words_are_no_statement_without_the_step(old: Path) -> None:
    assert "note:occasion" in load(old).problems[0].message


@pytest.mark.usefixtures("second_format")
def test_older_file_is_migrated_on_reading_and_not_written(old: Path) -> None:
    before = old.read_bytes()
    found = load(old)
    assert (found.problems, found.version) == ((), 1)
    assert [one.evening for one in found.statements] == ["Friday"]
    assert old.read_bytes() == before


@pytest.mark.usefixtures("second_format")
def test_save_writes_the_new_format_and_keeps_the_old_file(old: Path) -> None:
    before = old.read_bytes()
    told = made()
    saved = add(load(old), told)
    assert saved.problems == ()
    assert load(old) == saved.notebook
    assert (saved.notebook.version, len(saved.notebook.statements)) == (2, 2)
    (kept,) = old.parent.glob("notebook.format-1-*.ttl")
    assert kept.read_bytes() == before
    assert add(saved.notebook, made()).problems == ()
    assert len(list(old.parent.glob("notebook.format-1-*.ttl"))) == 1


def test_program_of_the_older_format_leaves_the_newer_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "notebook.ttl"
    with monkeypatch.context() as further:
        further.setitem(STEPS, 1, occasion_is_evening)
        filled(file)
    assert "format 2" in load(file).problems[0].message
    assert add(load(file), made()).problems


def test_facts_of_a_step_are_nodes_of_the_graph() -> None:
    assert occasion_is_evening({OLD: [ox.Literal("Friday")]}) == {EVENING: [ox.Literal("Friday")]}
