"""A dislike taken back: what was asked within it is asked again without it."""

from __future__ import annotations

import pytest

from assistant.session import Session

WINES = "wines: champagne, sauvignon blanc, pinot noir, zinfandel, tawny port"


@pytest.fixture
def table(conversation: Session) -> Session:
    """Five wines and two foods."""
    conversation.ask(WINES)
    conversation.ask("board: brie, smoked brisket")
    return conversation


def _limits(session: Session) -> list[str]:
    return [limit.label for limit in session.talk.frame.preferences] if session.talk else ["none stands"]


@pytest.mark.parametrize(
    ("told", "back"),
    [
        ("my husband hates red, what's he get with the brisket", "he's changed his mind, he likes red now"),
        ("my husband hates red, what's he get with the brisket", "ok he doesn't mind red actually"),
        ("what goes with the brisket, no red", "red is fine after all"),
        ("what goes with the brisket, no red", "she'll drink red after all"),
        ("my wife hates the zin, what else with the brisket", "she's changed her mind, she likes the zin"),
    ],
)
def test_a_dislike_taken_back_limits_nothing(table: Session, told: str, back: str) -> None:
    assert table.ask(told).picks[0].id != "wine/zinfandel"
    answer = table.ask(back)
    assert answer.picks[0].id == "wine/zinfandel"
    assert _limits(table) == []
    assert table.ask("what's he get with the brisket").picks[0].id == "wine/zinfandel"


@pytest.mark.parametrize("typed", ["he likes white now"])
def test_a_dislike_that_stays_limits_on(table: Session, typed: str) -> None:
    table.ask("what goes with the brisket, no red")
    table.ask(typed)
    assert "no red wine" in _limits(table)


def test_a_dislike_of_a_guest_goes_and_an_allergy_stays(table: Session) -> None:
    table.ask("Jo is allergic to nuts")
    table.ask("Jo hates red")
    assert "hates red" in table.ask("Jo likes red now").say
    table.ask("Jo likes nuts now")
    assert [one.need for one in table.tonight.needs] == ["allergic to nuts"]
