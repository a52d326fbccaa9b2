"""What is asked after a safety question."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture(scope="module")
def session() -> Session:
    return Session()


def _last(session: Session, *asked: str):  # type: ignore[no-untyped-def]
    session.new_conversation()
    return [session.ask(question) for question in asked][-1]


@pytest.mark.parametrize(
    "asked",
    [
        ("is the brie ok, she's pregnant", "what can she drink then"),
        ("I'm on antibiotics, can I drink", "what can I have with the steak then"),
        ("can my teenager taste the wine", "what could he have instead"),
        ("what goes with salmon", "my sister is pregnant", "give her something"),
    ],
)
def test_whoever_should_take_no_alcohol_is_offered_none(session: Session, asked: tuple[str, ...]) -> None:
    picks = _last(session, *asked).picks
    assert picks
    assert all(item.kind == "drink" for item in picks)


def test_the_next_food_gets_the_same_caution(session: Session) -> None:
    answer = _last(session, "is the brie ok, she's pregnant", "and the cheddar?")
    assert answer.intent == "safety"
    assert not answer.picks
    assert any("Cheddar" in caution["text"] for caution in answer.cautions)


def test_a_wine_asked_for_them_is_answered_with_the_caution(session: Session) -> None:
    answer = _last(session, "she's pregnant, is the brie ok", "can she have the riesling")
    assert answer.intent == "safety"


def test_other_guests_are_poured_wine(session: Session) -> None:
    answer = _last(session, "is the brie ok, she's pregnant", "what wine goes with brie for the others")
    assert {item.kind for item in answer.picks} == {"wine"}


def test_safety_without_a_topic_still_cautions(session: Session) -> None:
    answer = _last(session, "The mussels that didn't open: serve them or chuck them?")
    assert answer.intent == "safety"
    assert answer.cautions


def test_the_order_is_asked_of_the_wines_though_somebody_drives(session: Session) -> None:
    told = ("18 guests, two drivers", "the wines are cremant, albarino and rioja reserva")
    answer = _last(session, *told, "what order do i pour them")
    assert answer.intent == "pour-order"
    assert "Rioja Reserva" in answer.say


@pytest.mark.parametrize("asked", ["who is driving", "who's driving tonight?"])
@pytest.mark.parametrize("order", ["what order do I pour them", "which do I pour first"])
def test_who_drives_limits_nobody_elses_wine(session: Session, asked: str, order: str) -> None:
    answer = _last(session, "wines: Cava, Albariño, Malbec", asked, order)
    assert answer.intent == "pour-order"
    assert "Pour Cava first, Malbec last" in answer.say


def test_an_order_of_pouring_is_of_wines_whoever_is_cautioned(session: Session) -> None:
    asked = ("wines: Cava, Albariño, Malbec", "Lisa is pregnant", "what order do I pour them in")
    assert "Pour Cava first, Malbec last" in _last(session, *asked).say
