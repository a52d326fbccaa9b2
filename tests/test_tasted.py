"""Hosts who tasted a pair say so: their tasting counts, beside the verdict by the rules."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture
def table(conversation: Session) -> Session:
    """Three wines and two foods; a poor pair was just judged."""
    conversation.ask("wines: champagne, zinfandel, tawny port")
    conversation.ask("board: brisket, dark chocolate")
    conversation.ask("dark chocolate with the champagne")
    return conversation


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("you're wrong, we tried it, it's lovely", "Then pour it"),
        ("no, everyone loved it", "Then pour it"),
        ("hm no actually it was horrible", "The rules agree"),
        ("it doesn't work at all", "The rules agree"),
    ],
)
def test_what_was_tasted_is_heard_and_the_pair_stands(table: Session, typed: str, said: str) -> None:
    answer = table.ask(typed)
    assert answer.say.startswith(said)
    assert answer.say.endswith("Champagne with dark chocolate 70 % is poor.")
    assert "Zinfandel with dark chocolate 70 %" in table.ask("why not the zinfandel").text


def test_one_mind_after_the_other(table: Session) -> None:
    assert table.ask("we tried it, it's lovely").say.startswith("Then pour it")
    assert table.ask("no, it was awful").say.startswith("The rules agree")


def test_who_only_says_that_it_is_wrong_is_told_why(table: Session) -> None:
    assert table.ask("you're wrong").intent == "why"


@pytest.mark.parametrize("typed", ["thanks, that's lovely", "it smells horrible of eggs"])
def test_thanks_a_question_and_a_fault_are_no_tasting(table: Session, typed: str) -> None:
    said = table.ask(typed).say
    assert not said.startswith(("Then", "The rules agree"))
