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


SWEET = (
    "8 guests, we have Soave, off-dry Riesling and Chianti with Brie and lasagne",
    "Carol only drinks sweet wine",
)


def test_what_is_nearly_sweet_is_offered(conversation: Session) -> None:
    for line in SWEET:
        conversation.ask(line)
    assert "offer a taste first" in conversation.ask("would Carol like the Riesling?").say
    assert conversation.ask("would Carol like the Soave?").say == "Not for Carol: Soave."


@pytest.mark.parametrize(
    "told",
    [
        "carol will have the off-dry Riesling after all, she tried it last time and liked it",
        "Carol would drink the Riesling too",
        "Carol wants to try the Riesling after all",
    ],
)
def test_who_keeps_to_a_sort_may_have_another_wine_after_all(conversation: Session, told: str) -> None:
    for line in (*SWEET, told):
        answer = conversation.ask(line)
    assert "Carol will have off-dry Riesling too" in answer.text
    assert conversation.ask("can Carol have the Riesling").say == "Carol may have: off-dry Riesling."
    assert conversation.ask("can Carol have the Chianti").say == "Not for Carol: Chianti."


@pytest.mark.parametrize(
    "told",
    [
        "get a sweet Moscato for Carol, £8",
        "I'll get a Moscato d'Asti for 8 pounds",
        "I bought another bottle for Carol, a Moscato for £8",
        "buy a Moscato for Carol, 8 euros",
        "let's order a Moscato, £8",
    ],
)
def test_a_bottle_that_is_got_is_on_the_table_with_its_price(conversation: Session, told: str) -> None:
    for line in (*SWEET, told):
        answer = conversation.ask(line)
    assert answer.intent == "set-table"
    assert conversation.tonight.wines[-1] == "wine/moscato-d-asti"
    assert len(conversation.tonight.wines) == 4
    assert dict(conversation.tonight.prices) == {"wine/moscato-d-asti": 8}
    assert conversation.tonight.budget is None
    assert "know" not in answer.text


@pytest.mark.parametrize(
    ("told", "prices"),
    [
        ("eight pounds for the Chianti", {"wine/chianti": 8}),
        ("£9 for the chianti", {"wine/chianti": 9}),
        ("12 euros for the Soave and 14 for the chianti", {"wine/soave": 12, "wine/chianti": 14}),
    ],
)
def test_a_price_told_before_the_wine(conversation: Session, told: str, prices: dict[str, float]) -> None:
    for line in (*SWEET, told):
        conversation.ask(line)
    assert dict(conversation.tonight.prices) == prices


@pytest.mark.parametrize("asked", ["should I get a Moscato for Carol?", "get a Chianti or a Barbera?"])
def test_a_bottle_that_is_only_asked_about_is_not_on_the_table(conversation: Session, asked: str) -> None:
    for line in (*SWEET, asked):
        conversation.ask(line)
    assert len(conversation.tonight.wines) == 3
