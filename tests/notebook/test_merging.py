"""What comes in from another host's notebook, and what does not."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from assistant.notebook import Notebook, Statement, export, load, merge, standing
from assistant.notebook.block import block
from assistant.notebook.sealing import whole
from tests.notebook.made import filled, made, one_of_each, untouched


@pytest.fixture
def own(tmp_path: Path) -> Notebook:
    """Ann's notebook with one note."""
    return filled(tmp_path / "own.ttl", made(said="mine"))


def theirs(folder: Path, *told: Statement) -> Notebook:
    """Bo's notebook with these statements, written as it stands and read again."""
    file = folder / "theirs.ttl"
    file.write_bytes(whole(1, [block(one) for one in told]))
    return load(file)


def back(of: Statement, author: str) -> Statement:
    """A withdrawal by an author."""
    return made("withdrawn", "forget that", author, withdraws=of.id)


def test_export_is_a_notebook_that_merges_back_to_the_same(own: Notebook, tmp_path: Path) -> None:
    copy = tmp_path / "copy.ttl"
    assert export(own, copy) == ()
    assert load(copy).statements == own.statements
    before = own.path.read_bytes()
    assert merge(own, load(copy), "Ann").added == ()
    assert own.path.read_bytes() == before


def test_all_kinds_come_in_with_their_authors_once(own: Notebook, tmp_path: Path) -> None:
    told = [replace(one, author="Bo") for one in one_of_each()]
    for added in (tuple(told), ()):
        result = merge(load(own.path), theirs(tmp_path, *told), "Ann")
        assert (result.problems, result.left_out, result.added) == ((), (), added)
    assert [one.author for one in load(own.path).statements] == ["Ann"] + ["Bo"] * 10
    assert load(own.path).problems == ()


def test_two_hosts_who_merge_each_other_have_the_same(own: Notebook, tmp_path: Path) -> None:
    other = filled(tmp_path / "other.ttl", made(said="yours", author="Bo"))
    merge(own, other, "Ann")
    merge(other, load(own.path), "Bo")
    assert {one.id for one in load(own.path).statements} == {one.id for one in load(other.path).statements}


@pytest.mark.parametrize(("author", "comes"), [("Bo", True), ("Ann", True), ("Cy", False)])
def test_withdrawal_comes_in_from_its_author_or_the_host(
    own: Notebook, tmp_path: Path, author: str, comes: bool
) -> None:
    said = made(said="his", author="Bo")
    result = merge(own, theirs(tmp_path, said, back(said, author)), "Ann")
    assert (said in standing(result.notebook.statements)) != comes
    assert len(result.added) == 1 + comes
    assert [p.message for p in result.left_out] == ([] if comes else ["Cy takes back what Bo said."])


def test_nobody_else_takes_back_what_the_host_said(own: Notebook, tmp_path: Path) -> None:
    mine = own.statements[0]
    result = merge(own, theirs(tmp_path, mine, back(mine, "Bo")), "Ann")
    assert (result.added, result.taken_back) == ((), ())
    assert len(result.left_out) == 1


def test_what_a_merge_takes_back_is_told(own: Notebook, tmp_path: Path) -> None:
    mine = own.statements[0]
    result = merge(own, theirs(tmp_path, mine, back(mine, "Ann")), "Ann")
    assert result.taken_back == (mine,)


def test_withdrawal_of_what_nobody_has_is_left_out(own: Notebook, tmp_path: Path) -> None:
    result = merge(own, theirs(tmp_path, back(made(), "Bo")), "Ann")
    assert "in neither" in result.left_out[0].message
    assert result.added == ()


def test_other_words_under_the_same_name_are_left_out(own: Notebook, tmp_path: Path) -> None:
    forged = replace(own.statements[0], said="not mine at all")
    result = merge(own, theirs(tmp_path, forged, made(author="Bo")), "Ann")
    assert "other words" in result.left_out[0].message
    assert len(result.added) == 1
    assert load(own.path).statements[0].said == "mine"


def test_what_comes_in_is_cleaned_and_remarked(own: Notebook, tmp_path: Path) -> None:
    hostile = replace(made(author="Bo"), said="hm\x1b]52;c;x\x07\u202e", author="B\x9bo", about=("x\u2066y",))
    result = merge(own, theirs(tmp_path, hostile), "Ann")
    (came,) = result.added
    assert (came.said, came.author, came.about) == ("hm]52;c;x", "Bo", ("xy",))
    assert len(result.remarks) == 1
    assert load(own.path).remarks == ()


def test_one_unfit_statement_keeps_all_out(own: Notebook, tmp_path: Path) -> None:
    before = own.path.read_bytes()
    bad = replace(made(author="Bo"), said="x" * 2001)
    result = merge(own, theirs(tmp_path, made(author="Bo"), bad), "Ann")
    assert result.added == ()
    assert result.problems
    assert own.path.read_bytes() == before


def test_damaged_or_missing_notebook_keeps_all_out(own: Notebook, tmp_path: Path) -> None:
    before = own.path.read_bytes()
    damaged = theirs(tmp_path, *one_of_each()).path
    damaged.write_bytes(damaged.read_bytes()[:-400])
    assert merge(own, load(damaged), "Ann").problems
    assert "no notebook" in merge(own, load(tmp_path / "none.ttl"), "Ann").problems[0].message
    assert own.path.read_bytes() == before


def test_nothing_comes_into_a_damaged_notebook(own: Notebook, tmp_path: Path) -> None:
    own.path.write_bytes(own.path.read_bytes()[:-9])
    before = own.path.read_bytes()
    result = merge(load(own.path), theirs(tmp_path, made(author="Bo")), "Ann")
    assert "nothing was saved" in result.problems[0].message
    (tmp_path / "theirs.ttl").unlink()
    assert untouched(own.path, before)
