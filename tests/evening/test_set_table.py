"""An evening file as tonight's table: what is laid, and which mistakes keep it from being laid."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.evening.table import set_table
from assistant.knowledge.problems import KnowledgeError
from assistant.session import Session

TABLE = """title = "Cellar night"
guests = 9
non_drinkers = 2

[[wines]]
label = "Malbec"

[[wines]]
label = "malbec from Mendoza"

[[foods]]
label = "brie"

[[needs]]
guest = "Mo"
needs = ["vegan"]
"""


def laid(text: str, folder: Path) -> Session:
    """A session with the table of a text."""
    file = folder / "night.toml"
    file.write_text(text, encoding="utf-8")
    session = Session()
    set_table(session, file)
    return session


def test_all_that_is_told_is_laid_without_a_start(tmp_path: Path) -> None:
    tonight = laid(TABLE, tmp_path).tonight
    assert (tonight.title, tonight.guests, tonight.non_drinkers, tonight.start) == (
        "Cellar night",
        9.0,
        2.0,
        None,
    )
    assert tonight.wines[0] == "wine/malbec"
    assert len(tonight.wines) == len(set(tonight.wines))
    assert [dish.main.food for dish in tonight.dishes] == ["food/brie"]
    assert [(asked.guest, asked.need) for asked in tonight.needs] == [("Mo", "vegan")]


def test_the_table_is_laid_again_for_every_conversation(tmp_path: Path) -> None:
    session = laid(TABLE, tmp_path)
    before = session.tonight
    session.new_conversation()
    assert session.tonight == before


@pytest.mark.parametrize(
    ("change", "to", "told"),
    [
        ('"brie"', '"qwertyuiop"', "foods 1, label"),
        ('"Malbec"', '"brie"', "wines 1, label"),
        ("guests = 9", "guests = -9", "guests"),
        ("non_drinkers = 2", "non_drinkers = 12", "non_drinkers"),
    ],
)
def test_what_cannot_be_laid_is_told(tmp_path: Path, change: str, to: str, told: str) -> None:
    with pytest.raises(KnowledgeError) as raised:
        laid(TABLE.replace(change, to), tmp_path)
    assert told in [problem.term for problem in raised.value.problems]


def test_what_only_a_plan_needs_is_no_hindrance(tmp_path: Path) -> None:
    assert laid(
        TABLE.replace("guests = 9", 'guests = 9\nmeal = "brunch"\nbudget = -1'), tmp_path
    ).tonight.wines
