"""Who drives and who does no more is taken from each part of a line; no driver is lost."""

from __future__ import annotations

import pytest

from assistant.language.drives import drives_told
from assistant.session import Session


@pytest.mark.parametrize(
    ("typed", "on", "off"),
    [
        ("Kate isn't driving any more, Jo is", ("Jo",), ("Kate",)),
        ("no wait, Kate is driving after all and Jess got a taxi", ("Kate",), ("Jess",)),
        ("Jess wants to drink now, she isn't driving, but Kate is", ("Kate",), ("Jess",)),
        ("Jo drives instead of Kate", ("Jo",), ("Kate",)),
        ("jo drives, not kate", ("jo",), ("kate",)),
        ("Kate and Jo aren't driving but my brother Tom is", ("my brother Tom",), ("Kate", "Jo")),
        ("it's Jo driving, Kate's getting the bus", ("Jo",), ("Kate",)),
        ("Kate is driving, Jo isn't", ("Kate",), ("Jo",)),
    ],
)
def test_each_part_tells_of_its_own_guest(typed: str, on: tuple[str, ...], off: tuple[str, ...]) -> None:
    found = drives_told(typed)
    assert found
    assert (found.on, found.off) == (on, off)


@pytest.mark.parametrize("typed", ["who is driving", "everyone is driving", "the wine is driving me mad"])
def test_nobody_is_told_of(typed: str) -> None:
    assert drives_told(typed) is None


def drivers(session: Session) -> set[str]:
    return {one.guest for one in session.tonight.needs if "driving" in one.need}


@pytest.mark.parametrize(
    ("typed", "left"),
    [
        ("no wait, Kate is driving after all and Jess got a taxi", {"Kate"}),
        ("sorry, Kate is driving after all and Jess got a taxi", {"Kate"}),
        ("Kate isn't driving any more, Jo is", {"Jo", "Jess"}),
        ("Jess wants to drink now, she isn't driving, but Kate is", {"Kate"}),
        ("Jess isn't driving but Kate is, what do they get", {"Kate"}),
        ("Kate isn't driving but Jo is and Priya is coeliac", {"Jo", "Jess"}),
    ],
)
def test_who_drives_stays_noted(conversation: Session, typed: str, left: set[str]) -> None:
    conversation.ask("we are nine tonight: kate and jess are driving")
    answer = conversation.ask(typed)
    assert drivers(conversation) == left
    assert conversation.tonight.non_drinkers == len(left)
    assert answer.intent == "set-table"


def test_who_was_no_driver_before_is_one_after(conversation: Session) -> None:
    conversation.ask("no wait, Kate is driving after all and Jess got a taxi")
    assert drivers(conversation) == {"Kate"}


def test_another_guest_has_the_need_without_the_words_around(conversation: Session) -> None:
    conversation.ask("Kate isn't vegan any more, Jo is")
    assert [one.need for one in conversation.tonight.needs] == ["vegan"]
