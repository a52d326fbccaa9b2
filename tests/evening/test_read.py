"""An evening file: every mistake is told with its line, all at once, and none is a traceback."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path

import pytest

from assistant.evening.numbers import numbers
from assistant.evening.read import read_evening
from assistant.evening.records import Evening
from assistant.knowledge.files import corpus_dir
from assistant.knowledge.problems import KnowledgeError
from assistant.session import Session

QUAY = corpus_dir() / "evenings" / "quay-house.toml"
NOW = datetime(2027, 1, 4, 12, 0)
GOOD = """title = "Test"
start = 2027-02-12T19:00:00
guests = 12

[[wines]]
label = "Malbec"
price = 12.0

[[foods]]
label = "brie"
"""


def read(text: str, folder: Path, session: Session) -> Evening:
    """The evening of a text."""
    file = folder / "evening.toml"
    file.write_bytes(text.encode("utf-8", "surrogatepass"))
    return read_evening(file, session, NOW)


def test_the_example_is_sound(session: Session) -> None:
    evening = read_evening(QUAY, session, NOW)
    assert evening.problems == ()
    assert numbers(evening, session)["problems"] == []
    assert (evening.guests, evening.drinkers, evening.pour_ml) == (12, 10, 60.0)
    assert (evening.budget, evening.choose) == (180.0, 4)
    assert evening.wines[1].owned == 1
    assert evening.wines[1].must
    assert evening.foods[0].grams == 300.0


def test_what_is_said_is_kept(tmp_path: Path, session: Session) -> None:
    wine = "price = 12.0\nbottles = 2\nalcohol_percent = 13.5\nbottle_ml = 375"
    text = GOOD.replace("guests = 12", 'guests = 12\nroom_celsius = 24.5\ncurrency = "GBP"\nmeal = "supper"')
    evening = read(text.replace("price = 12.0", wine), tmp_path, session)
    assert evening.problems == ()
    assert (evening.room_celsius, evening.currency, evening.meal) == (24.5, "GBP", "supper")
    line = evening.wines[0]
    assert (line.price, line.owned, line.alcohol_percent, line.bottle_ml) == (12.0, 2, 13.5, 375.0)


def test_all_may_be_non_drinkers(tmp_path: Path, session: Session) -> None:
    evening = read(GOOD.replace("guests = 12", "guests = 12\nnon_drinkers = 12"), tmp_path, session)
    assert (evening.problems, evening.non_drinkers, evening.drinkers) == ((), 12, 0)


def test_what_may_be_missing(tmp_path: Path, session: Session) -> None:
    evening = read(GOOD, tmp_path, session)
    assert evening.problems == ()
    assert (evening.meal, evening.pour_ml, evening.non_drinkers, evening.budget) == ("tasting", 60.0, 0, None)


@pytest.mark.parametrize(
    ("change", "to", "line", "told"),
    [
        ("guests = 12", "guests = 0", 3, ("guests is 0", "guests = 12")),
        ("guests = 12", "guests = -4", 3, ("guests is -4",)),
        ("guests = 12", "guests = true", 3, ("guests is true", "whole number")),
        ("guests = 12", 'guests = "twelve"', 3, ("'twelve'", "whole number", "guests = 12")),
        ("guests = 12", "guests = 12.5", 3, ("12.5", "whole number")),
        ("guests = 12", "guests = 0x" + "f" * 5000, 3, ("a very large number",)),
        ("guests = 12", "", None, ("guests is missing", "guests = 12")),
        ("guests = 12", "guests = 12\nnon_drinkers = 13", 4, ("non_drinkers is 13", "12 guests")),
        ("guests = 12", "guests = 12\ngests = 12", 4, ("'gests'", "'guests'")),
        ("guests = 12", "guests = 12\nxyzzy = 12", 4, ("'xyzzy'", "Use one of title")),
        ("guests = 12", "guests = 12\npour_ml = nan", 4, ("pour_ml is nan",)),
        ("guests = 12", "guests = 12\npour_ml = 6000", 4, ("pour_ml is 6000", "250")),
        ("guests = 12", "guests = 12\nbudget = inf", 4, ("budget is inf",)),
        ("guests = 12", "guests = 12\nbudget = -1", 4, ("budget is -1",)),
        ("guests = 12", 'guests = 12\nmeal = "brunch"', 4, ("meal is 'brunch'", "supper")),
        ("guests = 12", "guests = 12\nmeal = [1]", 4, ("meal is a list",)),
        ("guests = 12", "guests = 12\nchoose = 5", 4, ("choose is 5", "only 1")),
        ("start = 2027-02-12T19:00:00", "start = 2026-02-12T19:00:00", 2, ("2026-02-12 19:00", "past")),
        ("start = 2027-02-12T19:00:00", "start = 2027-02-12", 2, ("date without a time",)),
        ("start = 2027-02-12T19:00:00", "start = 19:00:00", 2, ("time without a date",)),
        ("start = 2027-02-12T19:00:00", 'start = "7pm"', 2, ("'7pm'", "without quotes")),
        ("start = 2027-02-12T19:00:00", "start = 0001-01-01T00:00:00", 2, ("0001",)),
        ("start = 2027-02-12T19:00:00", "start = 9999-12-31T23:00:00", 2, ("9999",)),
        ("start = 2027-02-12T19:00:00", "", None, ("start is missing",)),
        ('label = "Malbec"', 'label = "brie"', 6, ("wines 1, label", "food", "[[foods]]")),
        ('label = "Malbec"', 'label = "qwertyuiop"', 6, ("does not read as a wine", "name")),
        ('label = "Malbec"', 'label = ""', 6, ("label is ''",)),
        ('label = "Malbec"', "", 5, ("label is missing",)),
        ('label = "brie"', 'label = "Malbec"', 10, ("foods 1, label", "drink", "[[wines]]")),
        ('label = "brie"', 'label = "qwertyuiop"', 10, ("does not read as a food",)),
        ("price = 12.0", 'price = "12"', 7, ("wines 1, price", "'12'", "number")),
        (
            "price = 12.0",
            "price = 12.0\nalcohol_percent = 99",
            8,
            ("wines 1, alcohol_percent: alcohol_percent is 99",),
        ),
        ("price = 12.0", "price = 12.0\nbottle_ml = -1", 8, ("wines 1, bottle_ml: bottle_ml is -1",)),
        ('label = "brie"', 'label = "brie"\nprice = "4"', 11, ("foods 1, price", "'4'")),
        ('label = "brie"', 'label = "brie"\ngrams = -5', 11, ("foods 1, grams: grams is -5",)),
        ("price = 12.0", "prise = 12.0", 7, ("'prise'", "'price'")),
        ("price = 12.0", "bottles = 1.5", 7, ("bottles is 1.5", "whole number")),
        ("price = 12.0", 'must = "yes"', 7, ("must is 'yes'", "true or false")),
        ("price = 12.0", '[[wines]]\nlabel = "malbec"', 5, ("'malbec'", "more than once")),
    ],
)
def test_one_mistake(
    tmp_path: Path, session: Session, change: str, to: str, line: int | None, told: tuple[str, ...]
) -> None:
    evening = read(GOOD.replace(change, to), tmp_path, session)
    assert len(evening.problems) == 1
    problem = evening.problems[0]
    assert problem.line == line
    assert problem.source == "evening.toml"
    for words in told:
        assert words in str(problem)
    assert problem.remedy
    assert numbers(evening, session)["problems"] == [str(problem)]


def test_all_mistakes_at_once(tmp_path: Path, session: Session) -> None:
    wrong = (
        GOOD.replace("12.0", '"x"').replace("guests = 12", "guests = 0\ngests = 1").replace("brie", "qqqq")
    )
    evening = read(wrong, tmp_path, session)
    assert [p.term for p in evening.problems] == ["gests", "guests", "wines 1, price", "foods 1, label"]


def test_tables_that_are_none(tmp_path: Path, session: Session) -> None:
    told = [str(p) for p in read("wines = 3\nfoods = ['a']\nneeds = {}\n", tmp_path, session).problems]
    for name in ("wines", "foods", "needs"):
        assert any(f"{name} is no list of tables" in problem for problem in told)


def test_too_many_wines(tmp_path: Path, session: Session) -> None:
    """Every wine beyond the fortieth is left out, which is told once."""
    labels = sorted({wine.label for wine in session.knowledge.wines.values() if wine.type == "Wine"})[:60]
    tables = "\n".join(f'[[wines]]\nlabel = "{label}"' for label in labels)
    evening = read(f"{GOOD}\n{tables}", tmp_path, session)
    assert "61 wines are listed" in str(evening.problems[0])
    assert 0 < len(evening.wines) <= 40


@pytest.mark.parametrize(
    ("needs", "told"),
    [
        ('guest = "R."\nneeds = []', "needs is a list, which is no list of texts"),
        ('guest = "R."\nneeds = [1]', "needs is a list, which is no list of texts"),
        ('guest = "R."', "needs is missing"),
        ('needs = ["vegan"]', "guest is missing"),
        ('guest = "R."\nneeds = ["flibbertigibbet"]', "not known here"),
        ('guest = "R."\nneeds = ["pregnant"]', "non_drinkers is 0"),
    ],
)
def test_needs_that_cannot_be_used(tmp_path: Path, session: Session, needs: str, told: str) -> None:
    evening = read(f"{GOOD}\n[[needs]]\n{needs}\n", tmp_path, session)
    assert any(told in problem for problem in numbers(evening, session)["problems"])


@pytest.mark.parametrize(
    ("measured", "told", "at"),
    [
        ('in = "cellar"\nfrom_celsius = 21\nto_celsius = 10\nminutes = 25', "'cellar'", 1),
        ('in = "ice"\nfrom_celsius = 10\nto_celsius = 21\nminutes = 25', "from 10 to 21", 3),
        ('in = "fridge"\nfrom_celsius = 21\nto_celsius = 2\nminutes = 25', "from 21 to 2", 3),
        ('in = "ice"\nfrom_celsius = 21\nto_celsius = 10', "minutes is missing", 0),
        ("from_celsius = 21\nto_celsius = 10\nminutes = 25", "in is missing", 0),
    ],
)
def test_measurements_that_cannot_be(
    tmp_path: Path, session: Session, measured: str, told: str, at: int
) -> None:
    evening = read(f"{GOOD}\n[[measured]]\n{measured}\n", tmp_path, session)
    assert evening.measured == ()
    assert told in str(evening.problems[0])
    assert evening.problems[0].line == f"{GOOD}\n[[measured]]\n".count("\n") + at


def test_the_second_of_two_measurements_is_the_one_told(tmp_path: Path, session: Session) -> None:
    good = 'in = "ice"\nfrom_celsius = 21\nto_celsius = 10\nminutes = 25\n'
    text = f"{GOOD}\n[[measured]]\n{good}[[measured]]\n{good.replace('ice', 'attic')}"
    (problem,) = read(text, tmp_path, session).problems
    assert "measured 2" in str(problem)
    assert text.splitlines()[(problem.line or 0) - 1] == 'in = "attic"'


def test_a_measurement_is_used(tmp_path: Path, session: Session) -> None:
    said = '[[measured]]\nin = "fridge"\nfrom_celsius = 21\nto_celsius = 17\nminutes = 90\n'
    evening = read(f"{GOOD}\n{said}", tmp_path, session)
    assert evening.problems == ()
    assert numbers(evening, session)["temperatures"][0]["minutes_fridge"] == 90


def test_an_offset_keeps_the_local_time(tmp_path: Path, session: Session) -> None:
    evening = read(GOOD.replace("19:00:00", "19:00:00-05:00"), tmp_path, session)
    assert evening.problems == ()
    assert evening.start == datetime(2027, 2, 12, 19, 0)
    assert evening.zone == timezone(timedelta(hours=-5))


def test_an_offset_decides_what_is_past(tmp_path: Path, session: Session) -> None:
    file = tmp_path / "evening.toml"
    file.write_text(GOOD.replace("19:00:00", "19:00:00-05:00"), "utf-8")
    start = datetime(2027, 2, 13, 0, 0, tzinfo=UTC)
    assert read_evening(file, session, start - timedelta(minutes=1)).problems == ()
    assert "past" in str(read_evening(file, session, start + timedelta(minutes=1)).problems[0])


@pytest.mark.parametrize(
    ("content", "line", "told"),
    [
        (b"guests = \n", 1, "no evening file"),
        (b"guests = 1\nguests = 2\n", 2, "no evening file"),
        (b'title = "open\n', 1, "no evening file"),
        (b"start = 2027-02-30T19:00:00\n", 1, "no evening file"),
        (b"wines = [\n\n", 3, "no evening file"),
        (b"\xff\xfe\x00", None, "UTF-8"),
        (b"x = " + b"[" * 5000, None, "deeply"),
        (b"x = " + b"9" * 5000, None, "no evening file"),
        (b"#" * 1_000_001, None, "larger"),
    ],
)
def test_a_file_that_is_none(
    tmp_path: Path, session: Session, content: bytes, line: int | None, told: str
) -> None:
    file = tmp_path / "evening.toml"
    file.write_bytes(content)
    with pytest.raises(KnowledgeError) as caught:
        read_evening(file, session, NOW)
    assert [p.line for p in caught.value.problems] == [line]
    assert told in str(caught.value)


@pytest.mark.parametrize("name", ["nowhere.toml", ".", "a\0b"])
def test_a_file_that_cannot_be_read(tmp_path: Path, session: Session, name: str) -> None:
    with pytest.raises(KnowledgeError, match="cannot be read"):
        read_evening(tmp_path / name, session, NOW)


def test_byte_order_mark_and_line_ends(tmp_path: Path, session: Session) -> None:
    evening = read("\ufeff" + GOOD.replace("\n", "\r\n").replace("= 12\r", "= 0\r"), tmp_path, session)
    assert [p.line for p in evening.problems] == [3]
