"""Who was never told of gets no other guest's answer: that nobody told is said, and asked for."""

from __future__ import annotations

import pytest

from assistant.session import Session

TOLD = ("Tom is coeliac", "can he have the brie")


def asked(session: Session, *typed: str) -> str:
    """What is said to the last line of a new conversation that begins with what is told of Tom."""
    session.new_conversation()
    return [session.ask(line) for line in (*TOLD, *typed)][-1].text


@pytest.mark.parametrize(
    ("typed", "who"),
    [
        ("and Ann?", "Ann"),
        ("what about Ann", "Ann"),
        ("what about ann?", "Ann"),
        ("and for Mo?", "Mo"),
        ("can Ann have it", "Ann"),
        ("what can Ann have", "Ann"),
        ("what may Ann eat", "Ann"),
        ("and my sister?", "your sister"),
        ("what about Kevin's wife?", "Kevin's wife"),
        ("and me?", "you"),
        ("and everyone else?", "everyone else"),
    ],
)
def test_nobody_told_what_another_must_not_have(session: Session, typed: str, who: str) -> None:
    text = asked(session, typed)
    assert text.startswith(f"Nobody has told me what {who} must not have")
    assert "Tom" not in text


@pytest.mark.parametrize("typed", ["and Ann and Tom?", "and Tom and Ann?"])
def test_one_told_of_is_answered_and_the_other_asked_for(session: Session, typed: str) -> None:
    text = asked(session, typed)
    assert text.startswith("Ask or read the label first for Tom: Brie.")
    assert "Nobody has told me what Ann must not have" in text


@pytest.mark.parametrize("typed", ["and Xanthippe?", "and xylo?"])
def test_a_word_that_is_neither_guest_nor_food_is_told(session: Session, typed: str) -> None:
    text = asked(session, typed)
    assert text.startswith("I know no guest, food or wine called")
    assert "Tom" not in text


def test_a_diet_that_no_guest_has_is_answered_as_that(session: Session) -> None:
    assert asked(session, "and the vegan?").startswith("Not for a vegan guest: Brie.")


@pytest.mark.parametrize("typed", ["and the salami?", "and Gouda?", "and a bit?", "and is he ok with it"])
def test_what_is_asked_on_of_a_guest_told_of_is_answered_for_that_one(session: Session, typed: str) -> None:
    assert " for Tom: " in asked(session, typed)


def test_once_told_another_is_answered_for(session: Session) -> None:
    assert asked(session, "and Ann?", "Ann is vegan", "can she have the brie").startswith(
        "Not for Ann: Brie."
    )
