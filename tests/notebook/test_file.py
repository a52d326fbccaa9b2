"""The file: it only grows, is Turtle for everyone; every cut and change is seen and never written over."""

from __future__ import annotations

from dataclasses import replace
from hashlib import sha256
from pathlib import Path

import pytest
import rdflib
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.knowledge import check
from assistant.notebook import add, export, load, standing, withdrawal
from assistant.notebook.reading import MOST_TOLD, parsed
from assistant.notebook.sealing import whole
from tests.notebook.made import filled, made, one_of_each, untouched


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """Where a notebook is to be."""
    return tmp_path / "notebook.ttl"


def sealed(*blocks: str) -> bytes:
    """A file with right guards and a right seal over any blocks, as someone could make who means harm."""
    return whole(1, [text.encode() for text in blocks])


def test_missing_notebook_is_empty_and_is_not_made(file: Path) -> None:
    notebook = load(file)
    assert (notebook.statements, notebook.problems, notebook.version) == ((), (), 0)
    assert not list(file.parent.iterdir())


def test_what_was_saved_is_read_again_in_its_order(file: Path) -> None:
    told = one_of_each()
    notebook = filled(file, *told)
    assert load(file) == notebook
    assert list(notebook.statements) == told


def test_every_save_keeps_the_old_bytes(file: Path) -> None:
    for text in ("one", "two", "three"):
        old = file.read_bytes() if file.exists() else b""
        filled(file, made(said=text))
        kept = old[: old.rindex(b"\n\n") + 2] if old else b""
        assert file.read_bytes().startswith(kept)
        assert len(file.read_bytes()) > len(old)


def test_last_line_counts_and_seals_all_bytes_before_it(file: Path) -> None:
    filled(file)
    data = file.read_bytes()
    above, last = data[: data[:-1].rindex(b"\n") + 1], data.splitlines()[-1].decode()
    assert last == f"# goeswith notebook, format 1: 10 statements, sha256 {sha256(above).hexdigest()}"


def test_other_programs_read_it_as_turtle(file: Path) -> None:
    filled(file)
    graph = rdflib.Graph().parse(file, format="turtle")
    words = graph.query("SELECT ?t WHERE { ?s <https://schema.org/text> ?t }")
    assert {str(row[0]) for row in words} == {one.said for one in load(file).statements}  # type: ignore[index]


def test_forgetting_erases_nothing_and_can_be_taken_back(file: Path) -> None:
    one, two = made(said="one"), made(said="two")
    notebook = filled(file, one, two)
    back = withdrawal(one, "forget that", "Ann").statement
    assert back is not None
    notebook = add(notebook, back).notebook
    assert standing(notebook.statements) == (two, back)
    again = withdrawal(back, "no, it was right", "Ann").statement
    assert again is not None
    notebook = add(notebook, again).notebook
    assert standing(notebook.statements) == (one, two, again)
    assert len(load(file).statements) == 4


def test_nothing_takes_back_what_comes_after_it() -> None:
    one, two = made(said="one"), made(said="two")
    first = made("withdrawn", withdraws=two.id)
    assert standing([one, first, two]) == (one, first, two)
    circle = made("withdrawn", withdraws=first.id)
    assert standing([circle, made("withdrawn", withdraws=circle.id)])[0].withdraws == circle.id


def test_cut_at_every_byte_is_seen_and_never_written_over(file: Path) -> None:
    told = one_of_each()[:2]
    filled(file, *told)
    whole_file, shown = file.read_bytes(), set()
    for length in range(len(whole_file)):
        cut = whole_file[:length]
        found = parsed(file, cut)
        assert found.problems, length
        assert list(found.statements) == told[: len(found.statements)]
        assert found.problems[-1].line is not None
        assert found.problems[-1].line <= cut.count(b"\n") + 1
        shown.add(len(found.statements))
    assert shown == {0, 1, 2}


@pytest.mark.parametrize("share", [0.0, 0.2, 0.5, 0.8, 0.99])
def test_save_into_a_cut_file_is_refused_and_leaves_it(file: Path, share: float) -> None:
    filled(file)
    cut = file.read_bytes()[: int(share * file.stat().st_size)]
    file.write_bytes(cut)
    for notebook in (load(file), load(file.with_name("other.ttl"))):
        refused = add(replace(notebook, path=file, problems=()), made())
        assert "nothing was saved" in refused.problems[0].message
        assert "export" in refused.problems[0].remedy
    assert untouched(file, cut)


def test_problem_names_the_line_from_which_the_file_is_cut(file: Path) -> None:
    told = one_of_each()[:3]
    filled(file, *told)
    lines = file.read_bytes().splitlines(keepends=True)
    third = next(n for n, line in enumerate(lines) if told[2].id.encode() in line)
    file.write_bytes(b"".join(lines[: third + 2]))
    found = load(file)
    assert list(found.statements) == told[:2]
    assert [problem.line for problem in found.problems] == [third + 1]


def test_changed_block_is_left_out_and_the_others_are_read(file: Path) -> None:
    told = one_of_each()
    filled(file, *told)
    file.write_bytes(file.read_bytes().replace(b"a profile", b"a prefect"))
    found = load(file)
    assert list(found.statements) == [one for one in told if one.kind != "profile"]
    line = (
        file.read_text().splitlines().index(next(t for t in file.read_text().splitlines() if told[2].id in t))
        + 1
    )
    assert [problem.line for problem in found.problems] == [line]


def test_block_taken_out_is_seen_by_the_seal(file: Path) -> None:
    filled(file)
    chunks = file.read_bytes().split(b"\n\n")
    file.write_bytes(b"\n\n".join(chunks[:3] + chunks[4:]))
    assert "taken out" in load(file).problems[0].message


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_any_changed_byte_is_seen(file: Path, data: st.DataObject) -> None:
    if not file.exists():
        filled(file)
    sound = file.read_bytes()
    at = data.draw(st.integers(0, len(sound) - 1))
    byte = data.draw(st.integers(0, 255).filter(lambda byte: byte != sound[at]))
    assert parsed(file, sound[:at] + bytes([byte]) + sound[at + 1 :]).problems


@settings(max_examples=200)
@given(st.binary(max_size=2000) | st.text(alphabet='<>"#@.;[](){}|^_:a1 \n\\', max_size=600).map(str.encode))
def test_any_bytes_are_read_without_a_fault(data: bytes) -> None:
    assert parsed(Path("n.ttl"), data).problems
    assert parsed(Path("n.ttl"), whole(1, [data.strip() or b"x"])).problems
    assert parsed(Path("n.ttl"), whole(1, [])[:-90] + data).problems


SOUND = '<urn:x:y> a note:Note ; prov:wasAttributedTo [ schema:name "Ann" ] ; schema:text "hm" ; ' + (
    'prov:generatedAtTime "2026-05-01T19:30:00Z"^^xsd:dateTime '
)
AMOUNT = SOUND.replace("Note", "Quantity") + '; note:unit "g" ; note:amount '
HARMFUL = {
    "nested triple terms": SOUND + "; note:like " + "<<( <a:a> <a:b> " * 3000 + "1" + " )>>" * 3000 + " .",
    "nested brackets": SOUND + "; note:like " + "[ <a:b> " * 5000 + "1" + " ]" * 5000 + " .",
    "nested lists": SOUND + "; note:like " + "(" * 30000 + ")" * 30000 + " .",
    "long block": SOUND + "; note:evening " + '"' + "x" * 70000 + '" .',
    "remote base": "@base <http://example.com/> . <a> <b> <c> .",
    "two statements": SOUND + ".\n" + SOUND.replace("urn:x:y", "urn:x:z") + ".",
    "strange property": SOUND + '; <http://www.w3.org/2002/07/owl#imports> <http://example.com/> .',
    "huge number": AMOUNT + ' "1E+999999999"^^xsd:decimal .',
    "number of digits": AMOUNT + "9" * 9000 + ".0 .",
    "two authors": SOUND + '; prov:wasAttributedTo [ schema:name "Bo" ] .',
    "words in a language": SOUND.replace('"hm"', '"hm"@en, "hm"') + ".",
    "no zone": SOUND.replace("00Z", "00") + ".",
    "stray kind": SOUND + "; a note:Vote .",
    "prefix taken over": "@prefix note: <http://example.com/> . " + SOUND + ".",
    "foreign term": SOUND.replace("Note", "NewFood") + '; schema:about "x" ; note:like <http://e.org/food> .',
    "foreign thing": SOUND + "; schema:about <http://example.com/x> .",
}  # fmt: skip


@pytest.mark.parametrize("name", HARMFUL)
def test_harmful_block_with_right_guards_is_refused(file: Path, name: str) -> None:
    file.write_bytes(sealed(SOUND + ".", HARMFUL[name]))
    found = load(file)
    assert [one.id for one in found.statements] == ["urn:x:y"]
    assert found.problems
    assert add(found, made()).problems
    assert file.read_bytes() == sealed(SOUND + ".", HARMFUL[name])


def test_steering_words_in_a_sealed_file_are_cleaned_and_remarked(file: Path) -> None:
    file.write_bytes(sealed(SOUND.replace("hm", "hm\x1b]52;c;x\x07\u202e") + "."))
    found = load(file)
    assert found.problems == ()
    assert found.statements[0].said == "hm]52;c;x"
    assert "steer" in found.remarks[0].message
    assert found.remarks[0].line is not None


def test_a_thousand_bad_blocks_are_told_in_few_lines(file: Path) -> None:
    file.write_bytes(sealed(*["nonsense"] * 1000))
    found = load(file)
    assert len(found.problems) == MOST_TOLD + 1
    assert "980 more" in found.problems[-1].message


def test_newer_format_is_left_alone(file: Path) -> None:
    newer = whole(2, [])
    file.write_bytes(newer)
    assert "newer" in load(file).problems[0].message
    assert add(load(file), made()).problems
    assert untouched(file, newer)


def test_sound_part_of_a_damaged_file_can_be_exported(file: Path) -> None:
    told = one_of_each()
    filled(file, *told)
    file.write_bytes(file.read_bytes()[:-300])
    fresh = file.with_name("fresh.ttl")
    assert export(load(file), fresh) == ()
    assert load(fresh).problems == ()
    assert list(load(fresh).statements) == told[: len(load(fresh).statements)]
    assert export(load(file), fresh)[0].message == "nothing was written: there is a file of this name."


def test_check_command_finds_a_sound_notebook_sound_and_a_changed_one_not(file: Path) -> None:
    changed = file.with_name("changed.ttl")
    filled(file)
    filled(changed)
    changed.write_bytes(changed.read_bytes().replace(b"a profile", b"a prefect"))
    (found,) = check.check([file, changed])
    assert found.source == str(changed)
    assert "not as it was saved" in found.message
