"""What is asked of the taste of a wine is answered with yes or no and the figure."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("is rioja oaky", "Yes, Rioja is oaky: oak 2.5 of 5."),
        ("is prosecco dry", "Yes, Prosecco is dry: about 15 g of sugar a litre."),
        ("is off-dry riesling dry", "No, off-dry Riesling is not dry: about 28 g of sugar a litre."),
        ("is sauternes sweet", "Yes, Sauternes is sweet: about 125 g of sugar a litre."),
        ("is amarone strong", "Yes, Amarone is strong: about 15.7 % alcohol."),
        ("is muscadet full bodied", "No, Muscadet is not full-bodied: body 1.9 of 5."),
        ("is gamay light", "No, Gamay is not light: body 2.4 of 5."),
        ("tell me about a light gamay", "Gamay: dry, medium-bodied, acidity fresh."),
        ("what is muscadet like", "Muscadet: dry, light, acidity brisk."),
    ],
)
def test_a_taste_is_answered(session: Session, asked: str, said: str) -> None:
    session.new_conversation()
    answer = session.ask(asked)
    assert (answer.intent, answer.say) == ("describe", said)


@pytest.mark.parametrize(
    ("asked", "name"),
    [("why not red with fish", "Red wine"), ("does white wine go with steak", "White wine")],
)
def test_a_kind_of_wine_keeps_its_name(session: Session, asked: str, name: str) -> None:
    session.new_conversation()
    lines = session.ask(asked).text.splitlines()
    assert any(line.startswith(f"{name} with ") for line in lines)
    assert any(line.startswith(f"Tasted for all {name.lower()}: ") for line in lines)


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("can i keep the opened port till easter", "it keeps 7 to 21 days"),
        ("when should i open the amarone", "of air in a jug or decanter"),
        ("how long can i leave the cheese out", "2 hours is the limit"),
        ("how do i open champagne safely", "away from faces: hold the cork, turn the bottle"),
        ("how do I open the chianti", "screw in straight"),
        ("what temperature should cheese be served", "out of the fridge 60 minutes before"),
        ("how much should i pour", "Pour 60 ml at a tasting"),
        ("are you a robot", "a program on this computer"),
        ("what wines have we got on the table", "Nothing is on the table yet."),
        ("wine for the roast", "Go with "),
    ],
)
def test_what_hosts_ask_in_passing_is_answered(session: Session, asked: str, said: str) -> None:
    session.new_conversation()
    assert said in session.ask(asked).say


@pytest.mark.parametrize(
    "asked",
    [
        "is the albariño oaked",
        "helen says the albariño tastes oaky, is it oaked",
        "is there oak in the albariño",
        "has the albariño been in a barrel",
    ],
)
def test_whether_a_wine_has_oak_is_no_pairing(conversation: Session, asked: str) -> None:
    conversation.ask("the wines are crémant, albariño and rioja")
    conversation.ask("on the board: manchego, brie")
    conversation.ask("Helen hates oak")
    answer = conversation.ask(asked)
    assert (answer.intent, answer.say) == ("describe", "No, Albariño is not oaky: oak 0.0 of 5.")
    assert "a bottle may differ" in answer.text


def test_how_much_oak_goes_by_what_the_label_says(conversation: Session) -> None:
    conversation.ask("is albariño oaked")
    text = conversation.ask("and the rioja, how much oak").text
    assert text.startswith("Yes, Rioja is oaky: oak 2.5 of 5.")
    assert "Rioja Reserva 3.2" in text
    assert conversation.ask("is it oaked").text.startswith("Yes, Rioja is oaky")


def test_an_oaked_wine_for_a_food_is_chosen(conversation: Session) -> None:
    assert conversation.ask("is there an oaked white for lobster").intent == "wines-for-food"
