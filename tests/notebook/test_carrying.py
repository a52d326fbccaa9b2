"""A notebook carried between hosts: who is called what, what is opposed, and that it can be undone."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from assistant.notebook import Notebook, Statement, load, standing
from assistant.notebook.carrying import HOST, bring, brought_by, send, take_out
from tests.notebook.made import filled, made, one_of_each

PAIR = ("wine/syrah", "food/gouda")


def pair(verdict: str, author: str = HOST) -> Statement:
    """A verdict on one pair."""
    return made("pairing", f"{verdict}, that", author, PAIR, {"verdict": f"band/{verdict}"})


def back(of: Statement, author: str = HOST) -> Statement:
    """A withdrawal."""
    return made("withdrawn", "forget that", author, withdraws=of.id)


@pytest.fixture
def own(tmp_path: Path) -> Notebook:
    """A notebook with one verdict."""
    return filled(tmp_path / "own.ttl", pair("good"))


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """Where a notebook is carried."""
    return tmp_path / "carried.ttl"


def carried(file: Path, *told: Statement) -> Path:
    """Another host's notebook with these statements, exported."""
    other = filled(file.with_name("other.ttl"), *told)
    assert not send(other, file).problems
    return file


def test_a_host_gets_a_name_where_it_comes_in(own: Notebook, file: Path) -> None:
    told = [replace(made(), author="Cy"), made(author=HOST)]
    brought = bring(own, carried(file, *told), "Bea")
    assert [one.author for one in brought.merged.added] == ["Cy", "Bea"]
    assert load(own.path).problems == ()


def test_it_may_be_named_on_the_way_out(own: Notebook, file: Path) -> None:
    send(own, file, "Ann")
    assert [one.author for one in load(file).statements] == ["Ann"]
    assert (bring(own, file, "Bea").there, load(own.path).statements) == (1, own.statements)


def test_coming_again_under_another_name_is_there_already(own: Notebook, file: Path) -> None:
    carried(file, *one_of_each())
    added = len(bring(own, file, "Bea").merged.added)
    assert added == 8  # one of each kind, but what withdraws and what it takes back
    again = bring(load(own.path), file, "Beatrice")
    assert (again.merged.added, again.merged.left_out, again.there) == ((), (), added)


def test_opposed_verdicts_are_named_and_only_those(own: Notebook, file: Path) -> None:
    theirs = pair("clash")
    brought = bring(own, carried(file, theirs, pair("fair"), pair("neutral")), "Bea")
    assert brought.against == ((replace(theirs, author="Bea"), own.statements[0]),)


@pytest.mark.parametrize(
    ("kind", "about", "mine", "theirs", "opposed"),
    [
        ("alias", "wine/cava", {"alias": "House fizz"}, {"alias": "house  Fizz"}, False),
        ("profile", "food/brie", {"dimension": "schema#fat", "amount": 2.0}, None, False),
        (
            "profile",
            "food/brie",
            {"dimension": "schema#fat", "amount": 2.0},
            {"dimension": "schema#fat", "amount": -2.0},
            True,
        ),
        ("new-food", "my cheese", {"like": "food/brie"}, {"like": "food/gouda"}, True),
    ],
)
def test_what_is_opposed(
    tmp_path: Path, file: Path, kind: str, about: str, mine: dict, theirs: dict | None, opposed: bool
) -> None:
    own = filled(tmp_path / "own.ttl", made(kind, author=HOST, about=(about,), value=mine))
    carried(file, made(kind, author=HOST, about=(about,), value=theirs or mine))
    assert bool(bring(own, file, "Bea").against) == opposed


def test_one_name_for_two_things_is_opposed(tmp_path: Path, file: Path) -> None:
    value = {"alias": "house fizz"}
    own = filled(tmp_path / "own.ttl", made("alias", author=HOST, about=("wine/cava",), value=value))
    carried(file, made("alias", author=HOST, about=("wine/champagne",), value=value))
    assert len(bring(own, file, "Bea").against) == 1


def test_what_was_taken_back_does_not_go_out(tmp_path: Path, file: Path) -> None:
    said = made(said="in anger", author=HOST)
    own = filled(tmp_path / "own.ttl", said, back(said), made(author=HOST))
    assert (send(own, file).count, b"in anger" in file.read_bytes()) == (1, False)
    assert send(own, file, all_of_it=True, over=True).count == 2
    assert b"in anger" in file.read_bytes()


def test_a_withdrawal_reaches_whoever_has_what_it_takes_back(own: Notebook, file: Path) -> None:
    said = made(author=HOST)
    bring(own, carried(file, said), "Bea")
    file.unlink()
    file.with_name("other.ttl").unlink()
    now = load(own.path)
    assert said.id in {one.id for one in standing(now.statements)}
    bring(now, carried(file, said, back(said)), "Bea")
    assert said.id not in {one.id for one in standing(load(own.path).statements)}


def test_a_withdrawal_of_what_was_never_there_is_only_counted(own: Notebook, file: Path) -> None:
    said = made(author=HOST)
    brought = bring(own, carried(file, said, back(said)), "Bea")
    assert (brought.idle, brought.merged.left_out, brought.merged.added) == (1, (), ())


def test_nobody_takes_back_what_the_host_said(own: Notebook, file: Path) -> None:
    mine = own.statements[0]
    other = filled(file.with_name("other.ttl"), replace(mine, author="Ann"), back(mine))
    send(other, file, all_of_it=True)
    brought = bring(own, file, "Bea")
    assert [p.message for p in brought.merged.left_out] == ["Bea takes back what host said."]
    assert standing(load(own.path).statements) == own.statements


def test_all_that_a_file_brought_is_taken_back_at_once(own: Notebook, file: Path) -> None:
    bring(own, carried(file, made(author=HOST), made(author=HOST)), "Bea")
    theirs, found = brought_by(load(own.path), file)
    assert (theirs.problems, len(found)) == ((), 2)
    assert take_out(load(own.path), found, "back").problems == ()
    now = load(own.path)
    assert [one for one in standing(now.statements) if not one.withdraws] == list(own.statements)
    assert (bring(now, file, "Bea").stay_back, brought_by(now, file)[1]) == (2, ())


def test_nothing_is_overwritten_unasked_or_by_mistake(own: Notebook, file: Path, tmp_path: Path) -> None:
    send(own, file)
    before = file.read_bytes()
    assert "there is a file" in send(own, file).problems[0].message
    (tmp_path / "diary.txt").write_text("dear diary")
    assert "no notebook" in send(own, tmp_path / "diary.txt", over=True).problems[0].message
    assert "itself" in send(own, own.path, over=True).problems[0].message
    assert send(load(own.path), file, over=True).count == 1
    assert (file.read_bytes(), (tmp_path / "diary.txt").read_text()) == (before, "dear diary")


def test_an_export_that_cannot_be_written_leaves_nothing(own: Notebook, tmp_path: Path) -> None:
    assert "does not exist" in send(own, tmp_path / "no" / "where.ttl").problems[0].message
    assert not (tmp_path / "no").exists()


def test_only_the_sound_part_of_a_damaged_notebook_goes_out(tmp_path: Path, file: Path) -> None:
    own = filled(tmp_path / "own.ttl", *[made(author=HOST) for _ in range(3)])
    own.path.write_bytes(own.path.read_bytes()[:-200])
    sent = send(load(own.path), file)
    assert (sent.damaged, load(file).problems, len(load(file).statements)) == (True, (), sent.count)


@pytest.mark.parametrize("name", ["https://example.org/bea.ttl", "ftp://example.org/x"])
def test_nothing_is_fetched(own: Notebook, name: str) -> None:
    assert "address" in bring(own, Path(name), "Bea").merged.problems[0].message
    assert "address" in send(own, Path(name)).problems[0].message


def test_an_unsound_file_brings_nothing(own: Notebook, file: Path) -> None:
    carried(file, *one_of_each())
    file.write_bytes(file.read_bytes()[:-300])
    before = own.path.read_bytes()
    assert bring(own, file, "Bea").merged.problems
    assert own.path.read_bytes() == before
