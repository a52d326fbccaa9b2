"""Who comes late without a name is counted, and what is told of that guest is noted and answered."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture
def laid(conversation: Session) -> Session:
    for line in ("14 guests", "on the table: turkey, lentil loaf, brie, cava, rioja"):
        conversation.ask(line)
    return conversation


def needs(session: Session) -> list[tuple[str, str]]:
    return [(one.guest, one.need) for one in session.tonight.needs]


def test_how_many_guests_there_are_now_is_told(laid: Session) -> None:
    answer = laid.ask("another guest just rolled in late with her boyfriend so we're sixteen now")
    assert answer.say == "Noted: 16 guests."
    assert laid.tonight.guests == 16


@pytest.mark.parametrize("line", ["she's vegan what can she have", "one's vegan, what can they eat"])
def test_a_diet_without_a_name_is_noted_and_asked_of(laid: Session, line: str) -> None:
    text = laid.ask(line).text
    assert needs(laid) == [("", "vegan")]
    assert "turkey and Brie" in text.split("You also asked")[1]
    assert "listeria" not in text


def test_he_does_not_drink_either_and_gets_his_name(laid: Session) -> None:
    laid.ask("actually he doesnt drink either")
    assert needs(laid) == [("", "doesnt drink")]
    assert laid.tonight.non_drinkers == 1
    laid.ask("he doesn't drink, the boyfriend, his name is Theo")
    assert needs(laid) == [("Theo", "doesn't drink")]
    assert laid.tonight.non_drinkers == 1
