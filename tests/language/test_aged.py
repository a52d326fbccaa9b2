"""How old a young guest is, said in passing, is a need; what else is counted is none."""

from __future__ import annotations

import pytest

from assistant.language.aged import tells_age, with_age
from assistant.session import Session


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("theo is 14", "theo is 14 years old"),
        ("my nephew Theo is 14", "my nephew Theo is 14 years old"),
        ("theos only 14, can he have a taste", "theo is 14 years old, can he have a taste"),
        ("Theo's fourteen yo", "Theo is fourteen years old"),
        ("my son just turned nine", "my son is nine years old"),
    ],
)
def test_an_age_is_told_in_full(typed: str, told: str) -> None:
    assert with_age(typed) == told


@pytest.mark.parametrize(
    "typed", ["dinner is 8", "the riesling is 14", "we are fourteen", "theo is 30", "theo is one of us"]
)
def test_what_else_is_counted_is_no_age(typed: str) -> None:
    assert with_age(typed) == typed


def test_only_a_young_age_is_a_need() -> None:
    assert tells_age("14 years old")
    assert not tells_age("80 years old")


@pytest.mark.parametrize("told", ["my nephew Theo is 14", "Theo's fourteen", "theos only 14"])
def test_a_young_guest_is_noted_and_has_no_sip(conversation: Session, told: str) -> None:
    conversation.ask("foods: lamb, brie. wines: Cava, off-dry Riesling")
    conversation.ask("yusuf is halal")
    assert "Keep away: Cava and off-dry Riesling." in conversation.ask(told).text
    answer = conversation.ask("can he have a sip")
    assert "Theo: Cava and off-dry Riesling." in answer.say
    assert answer.cautions[0]["id"] == "caution/minors"


def test_a_young_guest_told_of_and_asked_about_in_one_line(conversation: Session) -> None:
    conversation.ask("wines: Cava, off-dry Riesling")
    conversation.ask("yusuf is halal")
    answer = conversation.ask("Theo's fourteen, can he have a sip")
    assert "Noted for Theo" in answer.text
    assert "Not for Theo: Cava and off-dry Riesling." in answer.text


def test_who_drinks_none_is_never_offered_a_wine_by_name(conversation: Session) -> None:
    conversation.ask("foods: lamb, brie. wines: Cava, Pinot Noir")
    conversation.ask("theo is 14")
    answer = conversation.ask("theo wants a fizzy drink with the lamb")
    assert not {pick.id for pick in answer.picks} & {"wine/cava", "wine/new-world-pinot-noir"}
    assert answer.intent == "safety"


def test_an_old_guest_is_not_under_age(conversation: Session) -> None:
    assert all(one["id"] != "caution/minors" for one in conversation.ask("gran is 80 years old").cautions)
