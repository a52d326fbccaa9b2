"""What hosts say against one another and against the book, found in the statements and told by a check."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from assistant.evening.facts import fact
from assistant.notebook import Statement, add, load, stated
from assistant.pairing.engine import key_of
from assistant.rehearse.conflicts import BOOK, NAME, PAIR, PROFILE, among_hosts, with_book
from assistant.session import Session
from tests.conftest import Run
from tests.notebook.made import made

LONG = 300.0
GOUDA, SYRAH, OYSTER = "food/gouda", "wine/syrah", "food/oyster"


def pair(verdict: str, about: tuple[str, ...] = (SYRAH, GOUDA), author: str = "host") -> Statement:
    """A verdict on a pair."""
    return made("pairing", f"{verdict} it is", author, about, {"verdict": f"band/{verdict}"})


def salt(amount: float) -> Statement:
    """An amount of salt in the host's brie."""
    return made("profile", "salty", "host", ("food/brie",), {"dimension": "schema#sodium", "amount": amount})


def alias(name: str, about: str) -> Statement:
    """Another name."""
    return made("alias", f"{name} it is", "host", (about,), {"alias": name})


@pytest.mark.parametrize(
    ("kind", "older", "newer"),
    [
        (PAIR, pair("good"), pair("clash")),
        (PAIR, pair("poor", author="Ann"), pair("fair", (GOUDA, SYRAH), "Bo")),
        (PROFILE, salt(0.2), salt(0.5)),
        (NAME, alias("the house red", SYRAH), alias("The House Reds", "wine/malbec")),
    ],
)
def test_two_that_cannot_both_hold_are_found_once(kind: str, older: Statement, newer: Statement) -> None:
    (found,) = among_hosts([older, made(), newer])
    assert (found.kind, found.older, found.newer) == (kind, older, newer)


@pytest.mark.parametrize(
    "told",
    [
        [pair("good"), pair("strong")],
        [pair("good"), pair("neutral")],
        [pair("good"), pair("clash", (SYRAH, "food/brie"))],
        [salt(0.2), salt(0.2)],
        [alias("the house red", SYRAH), alias("the house red", SYRAH)],
        [alias("the house red", SYRAH), alias("the house white", "wine/malbec")],
    ],
)
def test_what_can_both_hold_is_no_conflict(told: list[Statement]) -> None:
    assert among_hosts(told) == ()


def test_the_newest_of_both_sides_are_told() -> None:
    told = [pair("good"), pair("clash"), pair("strong"), pair("poor")]
    (found,) = among_hosts(told)
    assert (found.older, found.newer) == (told[2], told[3])


def test_two_steps_from_the_book_are_a_conflict_and_one_is_none(session: Session) -> None:
    book = session.engine.score_plates(SYRAH, {key_of(GOUDA): session.engine.plate_of_food(GOUDA)})
    assert book[key_of(GOUDA)].verdict == "fair"
    found = {verdict: with_book([pair(verdict)], session.engine) for verdict in ("strong", "good", "poor")}
    assert {verdict: [one.apart for one in told] for verdict, told in found.items()} == {
        "strong": [2],
        "good": [],
        "poor": [-2],
    }
    assert found["strong"][0].score == round(book[key_of(GOUDA)].total, 1)


def test_of_a_pair_told_twice_the_newest_is_held_against_the_book(session: Session) -> None:
    assert with_book([pair("clash"), pair("fair")], session.engine) == ()


def test_the_book_says_the_same_of_a_pair_alone_and_among_others(session: Session) -> None:
    foods = [GOUDA, OYSTER, "food/brie"]
    told = [pair("strong", ("wine/malbec", food)) for food in foods]
    alone = [one for statement in told for one in with_book([statement], session.engine)]
    assert sorted(with_book(told, session.engine), key=lambda one: one.older.id) == sorted(
        alone, key=lambda one: one.older.id
    )
    assert {one.kind for one in alone} == {BOOK}


def test_of_too_many_wines_those_spoken_of_last_are_asked_for(session: Session) -> None:
    most = int(fact("rehearse", "conflict", "wines").high)
    wines = list(session.engine.glasses)[: most + 2]
    told = [pair("clash" if at else "strong", (wine, "food/brie")) for at, wine in enumerate(wines)]
    asked = {one.older.about[0] for one in with_book(told, session.engine)}
    assert asked
    assert asked.isdisjoint(wines[:2])


@pytest.fixture
def contrary(tmp_path: Path) -> Path:
    """A notebook in which oysters and Malbec are praised, and gouda is both."""
    file = tmp_path / "contrary.ttl"
    told = [pair("strong", ("wine/malbec", OYSTER)), pair("good"), pair("clash")]
    assert not add(load(file), *told).problems
    return file


def test_a_check_tells_conflicts_and_stays_sound(goeswith: Run, contrary: Path) -> None:
    done = goeswith("check", "--notebook", str(contrary), timeout=LONG)
    assert done.returncode == 0
    assert "Gouda and Syrah: Ann said" not in done.stdout
    assert "you said good (1 May), you clash (1 May); the later is told." in done.stdout
    assert "the book says clash" in done.stdout
    assert done.stdout.splitlines()[-1].endswith("0 problems, 3 conflicts")


def test_without_a_notebook_nobody_looks(goeswith: Run, contrary: Path) -> None:
    done = goeswith("check", "--json", "--no-notebook", timeout=LONG, XDG_DATA_HOME=str(contrary.parent))
    assert json.loads(done.stdout)["conflicts"] == []


def test_a_notebook_named_as_a_file_is_looked_at_too(goeswith: Run, contrary: Path) -> None:
    assert len(json.loads(goeswith("check", "--json", str(contrary), timeout=LONG).stdout)["conflicts"]) == 3


def test_a_check_tells_what_points_at_nothing(goeswith: Run, tmp_path: Path) -> None:
    file = tmp_path / "loose.ttl"
    one = stated("pairing", "hm", "host", about=("wine/nowhere", GOUDA), value={"verdict": "band/good"})
    gone = stated("withdrawn", "hm", "host", withdraws="urn:uuid:00000000-0000-4000-8000-000000000000")
    assert one.statement
    assert gone.statement
    assert not add(load(file), one.statement, gone.statement).problems
    done = goeswith("check", "--notebook", str(file), timeout=LONG)
    assert done.returncode == 1
    assert (
        "points at https://example.org/goeswith/wine/nowhere" in done.stdout or "wine:nowhere" in done.stdout
    )
    assert "takes back a statement that does not stand above it" in done.stdout
