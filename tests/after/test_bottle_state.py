"""A bottle that is bad or stood in the warm, cups for glasses, and what guests notice in a glass."""

from __future__ import annotations

import pytest

from assistant.session import Session

TABLE = (
    "tonight we have champagne, sauvignon blanc, dry provence rose, pinot noir, zinfandel and tawny port "
    "with brie, blue cheese, pickles, smoked brisket, spiced nuts and dark chocolate"
)


@pytest.fixture
def laid(conversation: Session) -> Session:
    conversation.ask(TABLE)
    return conversation


@pytest.mark.parametrize(
    "asked",
    ["is this corked", "is the sauvignon corked", "could this bottle be corked?", "do you think it's corked"],
)
def test_nothing_is_corked_before_it_is_smelled(laid: Session, asked: str) -> None:
    answer = laid.ask(asked)
    assert answer.say == "What does it smell of? Only wet cardboard or cellar means corked."
    assert "open another bottle." in laid.ask("this one smells like wet cardboard, is it corked").say


@pytest.mark.parametrize(
    ("told", "say"),
    [
        ("like wet cardboard", "Corked: "),
        ("a bit of wet dog", "Corked: "),
        ("it smells fine", "Not corked then: "),
        ("it smells of fruit", "Not corked then: "),
        ("of cherries", "Not corked then: "),
    ],
)
def test_the_smell_that_was_asked_for_is_heard(laid: Session, told: str, say: str) -> None:
    laid.ask("is this corked")
    assert laid.ask(told).say.startswith(say)


def test_what_is_opened_for_a_bad_bottle_is_like_it(laid: Session) -> None:
    laid.ask("the pinot smells of wet cardboard")
    text = laid.ask("which one do we open instead").text
    assert text.startswith("Another bottle of the same, if there is one")
    assert "of what is here it is most like Pinot Noir." in text


def test_a_bad_bottle_without_a_name_is_asked_for(laid: Session) -> None:
    laid.ask("this one smells like wet cardboard")
    assert "which wine was it?" in laid.ask("what do we pour instead").text


@pytest.mark.parametrize(
    ("asked", "poured"),
    [
        ("the pinot's been on the counter all day", "Pinot Noir is poured at 13 to 15 °C"),
        ("is the sauvignon too warm", "Sauvignon Blanc is poured at 8 to 10 °C"),
        ("the rosé sat on the side for three hours", "Provence rosé is poured at "),
    ],
)
def test_a_bottle_in_the_warm_is_cooled(laid: Session, asked: str, poured: str) -> None:
    answer = laid.ask(asked)
    assert answer.say.startswith(poured)
    assert "min in the fridge, or " in answer.text
    assert answer.intent == "service"


@pytest.mark.parametrize("asked", ["is the champagne flat", "has the fizz gone flat"])
def test_whether_it_is_flat_is_trouble(laid: Session, asked: str) -> None:
    assert laid.ask(asked).say == "Serve it as still wine, or open another."


@pytest.mark.parametrize(
    ("asked", "say"),
    [
        ("we only have paper cups, does it matter", "They will do: "),
        ("plastic cups ok for the sauvignon", "They will do: "),
        ("can I use mugs", "They will do: "),
        ("we've no decanter", "A clean jug does it"),
        ("my teeth went blue", "Red colour sticks to teeth"),
        ("why is my tongue black", "Red colour sticks to teeth"),
        ("does the smoke kill the sauvignon", "It drowns a light white"),
        ("does smoke ruin a white", "It drowns a light white"),
    ],
)
def test_what_guests_notice_is_explained(laid: Session, asked: str, say: str) -> None:
    assert laid.ask(asked).say.startswith(say)


@pytest.mark.parametrize("asked", ["why does the sauv blanc taste metallic", "the rosé tastes metallic"])
def test_metal_in_a_white_is_sought_on_the_board(laid: Session, asked: str) -> None:
    text = laid.ask(asked).text
    assert "What could do it here: blue cheese, pickles" in text
    assert "mixed nuts" in text
    assert "Brie" not in text
    assert "iron on fish" not in text


def test_metal_in_a_red_has_its_own_reason(laid: Session) -> None:
    assert laid.ask("why does the zinfandel taste metallic").say.startswith("Grip and iron in a red")
