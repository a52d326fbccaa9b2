"""A need told in one breath with a question, and a guest without a name whom `she` means."""

from __future__ import annotations

import pytest

from assistant.session import Session

TABLE = (
    "tonight: Champagne, Zinfandel and tawny port; Brie, aged cheddar, pickles, smoked brisket, mixed nuts"
)


@pytest.fixture
def table(conversation: Session) -> Session:
    """A table with something for nobody, for some and for all."""
    conversation.ask(TABLE)
    return conversation


@pytest.mark.parametrize(
    ("said", "guest"),
    [
        ("mum's diabetic which wine is lowest sugar", "Mum"),
        ("my mother in law is diabetic, which one has the least sugar", "my mother in law"),
        ("dad is diabetic so which of these is driest", "Dad"),
        ("Priya's diabetic, what's the least sweet", "Priya"),
        ("which wine is the least sweet, mum's diabetic", "Mum"),
    ],
)
def test_a_diabetic_guest_is_noted_and_cared_for_before_any_sweetness(
    table: Session, said: str, guest: str
) -> None:
    text = table.ask(said).text
    assert text.startswith(f"Noted for {guest}: diabetic.")
    assert 0 < text.index("With diabetes, alcohol can drop blood sugar") < text.index("The least sweetness")
    assert f"{guest}: diabetic".lower() in table.ask("who needs what").text.lower()


@pytest.mark.parametrize(
    ("said", "caution"),
    [
        ("Jo is pregnant, which wine has the least alcohol", "caution/pregnancy-alcohol"),
        ("which has the least alcohol, I'm driving", "caution/driving"),
        ("I take blood thinners, which is the lightest in alcohol", "caution/medicines-blood-thinner"),
    ],
)
def test_no_wine_is_named_to_who_drinks_none(table: Session, said: str, caution: str) -> None:
    answer = table.ask(said)
    assert caution in [record["id"] for record in answer.cautions]
    assert "The least alcohol" not in answer.text


@pytest.mark.parametrize(
    ("lines", "guest"),
    [
        (["someone's vegetarian, forgot her name, what can she eat off this board"], "a guest"),
        (["we've got a vegetarian, can't remember her name, what can she have"], "a guest"),
        (["one of the guests is vegetarian", "what can she eat off this board"], "one of the guests"),
        (["a friend of mine is vegetarian", "what can they have"], "a friend of mine"),
        (["someone's vegetarian", "what can she eat"], "a guest"),
    ],
)
def test_a_guest_without_a_name_is_told_what_there_is(table: Session, lines: list[str], guest: str) -> None:
    text = [table.ask(line) for line in lines][-1].text
    assert f"for {guest}" in text
    assert "ay have: pickles and mixed nuts" in text
    assert "listeria" not in text


def test_one_of_the_guests_is_not_all_of_them(table: Session) -> None:
    table.ask("one of the guests is vegetarian")
    assert table.tonight.guests is None


@pytest.mark.parametrize(
    "said",
    [
        "there's glass in my glass I think",
        "a shard in my flute",
        "there is something sharp in my glass",
        "I think there's glass at the bottom of her drink",
    ],
)
def test_glass_in_a_drink_is_thrown_away(table: Session, said: str) -> None:
    answer = table.ask(said)
    assert "throw all of it away" in answer.say
    assert answer.cautions[0]["id"] == "caution/broken-glass"


@pytest.mark.parametrize(
    "said", ["she says I'm wrong about the nuts", "Lena thinks we're wrong on the pickles"]
)
def test_a_doubt_about_a_food_is_no_matter_of_health(table: Session, said: str) -> None:
    answer = table.ask(said)
    assert not answer.cautions
    assert answer.picks


def test_a_doubt_about_what_was_just_said_is_answered_with_its_reasons(table: Session) -> None:
    table.ask("what goes with the brie")
    assert table.ask("he says you're wrong about the brie").intent == "why"


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("is the brisket ok with the zin, and what do we pour for Megan?", "Zinfandel with barbecue brisket"),
        ("which wine with the pickles, and what can Megan drink?", "“which wine with the pickles”"),
    ],
)  # fmt: skip
def test_a_pair_and_a_drink_for_a_guest_are_both_answered(table: Session, said: str, told: str) -> None:
    table.ask("Megan is pregnant")
    answer = table.ask(said)
    assert told in answer.text
    assert "juice" in answer.text.split("You also asked")[0]
    assert "caution/pregnancy-alcohol" in [record["id"] for record in answer.cautions]
