"""A guest who drinks one sort of wine is kept from the others, and nobody else is."""

from __future__ import annotations

import pytest

from assistant.evening.needs import understood
from assistant.language.guests import Asked, all_asked
from assistant.session import Session

LAID = ("got a Gavi, a Barbera d'Asti and a Moscato d'Asti", "prosciutto and roast lamb")


@pytest.mark.parametrize(
    ("typed", "need"),
    [
        ("greg only drinks red", "only drinks red"),
        ("Greg drinks only red wine", "only drinks red"),
        ("Greg wants only red", "only drinks red"),
        ("greg's the one who only drinks red", "only drinks red"),
        ("ok greg sticks to red", "only drinks red"),
        ("Greg drinks nothing but riesling", "only drinks riesling"),
    ],
)
def test_the_sort_is_taken_down_for_the_guest(typed: str, need: str) -> None:
    assert all_asked(typed) == (Asked("Greg", need),)


def test_the_other_wines_are_not_for_that_guest(conversation: Session) -> None:
    for line in (*LAID, "ben's coeliac and greg only drinks red", "what can greg have"):
        answer = conversation.ask(line)
    assert answer.say == "Not for Greg: Gavi and Moscato d'Asti."
    assert "Barbera d'Asti" in answer.text
    assert "label" not in conversation.ask("can greg have the gavi").text


def test_what_that_guest_drinks_limits_nobody_else(conversation: Session) -> None:
    for line in ("Greg wants only red", "wine for scallops"):
        answer = conversation.ask(line)
    assert "Limit" not in answer.text
    assert "Limit: red wine." in conversation.ask("whats greg drinking with the scallops").text


@pytest.mark.parametrize(
    ("said", "only", "left_out"),
    [
        ("only drinks red", {"kind/red-wine"}, set()),
        ("doesn't drink red", set(), {"kind/red-wine"}),
        ("drinks no alcohol", set(), {"kind/wine"}),
        ("only drinks water", set(), {"kind/wine"}),
    ],
)
def test_one_sort_is_no_wine_at_all(session: Session, said: str, only: set[str], left_out: set[str]) -> None:
    (need,) = understood(said, session)
    assert (need.only, need.kinds) == (only, left_out)


def test_what_alone_is_eaten_is_not_left_out(session: Session) -> None:
    assert not understood("only eats fish", session)
