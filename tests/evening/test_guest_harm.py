"""What may hurt a guest is told before anything else: alcohol in a dish, what touched it, a little of it."""

from __future__ import annotations

import pytest

from assistant.session import Session

LAID = "foods: turkey, gravy, macaroni cheese, pecan pie. wines: Cava, off-dry Riesling"


@pytest.fixture
def laid(conversation: Session) -> Session:
    conversation.ask(LAID)
    return conversation


@pytest.mark.parametrize(
    ("told", "dish"),
    [
        ("Dana wants gravy, there's wine in it", "turkey with brown gravy and cooked-in alcohol."),
        ("there's bourbon in the pecan pie", "pecan pie with cooked-in alcohol."),
        ("the macaroni cheese has some sherry in it", "macaroni cheese with cooked-in alcohol."),
    ],
)
def test_alcohol_told_to_be_in_a_dish_is_kept_from_who_drinks_none(
    laid: Session, told: str, dish: str
) -> None:
    laid.ask("Dana is in recovery")
    answer = laid.ask(told)
    assert answer.say.startswith(f"Not for Dana: {dish}")
    assert "Dana may have" not in answer.text
    assert "bourbon" not in answer.text


def test_beer_told_to_be_in_a_dish_is_asked_about_for_a_coeliac(conversation: Session) -> None:
    conversation.ask("foods: roast beef, fruit salad. wines: Cava")
    assert "lees" not in conversation.ask("Lee is coeliac").text
    answer = conversation.ask("there's beer in the roast beef")
    assert answer.say.startswith("Ask or read the label first for Lee: roast beef with cooked-in alcohol.")


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("is there wine in the gravy", "With or without alcohol, by the recipe: brown gravy"),
        ("does the stew have wine in it", "With or without alcohol, by the recipe: beef stew"),
        ("is there any booze in the trifle", "With alcohol as usually made: trifle"),
        ("is there brandy in the macaroni cheese sauce", "Without alcohol by the recipes I know: "),
    ],
)
def test_whether_a_dish_holds_alcohol_is_told_first(conversation: Session, asked: str, said: str) -> None:
    answer = conversation.ask(asked)
    assert answer.intent == "safety"
    assert answer.say.startswith(said)


def test_wine_in_the_fridge_is_none_in_a_dish(laid: Session) -> None:
    assert laid.ask("is there wine in the fridge").intent != "safety"


def test_what_is_told_to_stand_beside_it_is_kept_from_that_guest(laid: Session) -> None:
    laid.ask("Becca is allergic to shellfish")
    assert laid.ask("Josh brought oysters").say.startswith("Not for Becca: oyster")
    assert laid.ask("they're next to the turkey").say.startswith("Not for Becca: turkey")
    assert laid.ask("can Becca have the turkey").say.startswith("Not for Becca: turkey")
    assert "Becca may have: macaroni cheese" in laid.ask("what can Becca have").text


def test_what_is_only_asked_of_touching_is_not_remembered(laid: Session) -> None:
    laid.ask("Becca is allergic to shellfish")
    laid.ask("Josh brought oysters")
    assert "Not for Becca" in laid.ask("can Becca have the pecan pie if it touched the oysters").say
    assert laid.ask("can Becca have the pecan pie").say.startswith("Becca may have: pecan pie")


@pytest.mark.parametrize("asked", ["what if she just has a little bit", "could she try a tiny bite"])
def test_not_even_a_little_of_it(laid: Session, asked: str) -> None:
    laid.ask("Becca is allergic to shellfish")
    laid.ask("Josh brought oysters")
    laid.ask("can Becca eat the oysters")
    answer = laid.ask(asked)
    assert answer.say.startswith("Not even a little")
    assert "Not for Becca: oyster" in answer.say


def test_what_a_diabetic_guest_asks_for_is_no_pair(laid: Session) -> None:
    laid.ask("Bob is diabetic")
    answer = laid.ask("can Bob have the pecan pie and a glass of Riesling")
    assert answer.say == "Ask or read the label first for Bob: pecan pie and off-dry Riesling."
    assert "With diabetes" in answer.text


@pytest.mark.parametrize(
    "asked",
    [
        "the turkey came out pink near the bone is it done",
        "is the pork cooked through",
        "the burgers are pink inside, ok?",
    ],
)
def test_a_thermometer_tells_whether_meat_is_done(conversation: Session, asked: str) -> None:
    answer = conversation.ask(asked)
    assert answer.say == "Colour does not tell whether meat is done; a thermometer in the thickest part does."
    assert "165 F (74 C)" in answer.text


@pytest.mark.parametrize("asked", ["a pink wine with turkey", "roast lamb served pink, which red"])
def test_pink_may_be_a_wine_or_how_meat_is_served(conversation: Session, asked: str) -> None:
    assert conversation.ask(asked).intent == "wines-for-food"


@pytest.mark.parametrize(
    ("told", "who"),
    [
        ("sams had a bit of brie by mistake", "asks the midwife, doctor or local medical line today"),
        ("Sam's eaten a bit of the Brie", "asks the midwife, doctor or local medical line today"),
        ("Sam had a glass of Riesling", "midwife"),
    ],
)
def test_what_somebody_pregnant_already_had_is_asked_about(laid: Session, told: str, who: str) -> None:
    laid.ask("Sam is pregnant")
    answer = laid.ask(told)
    assert answer.say.startswith("Not for Sam: ")
    assert who in answer.text


@pytest.mark.parametrize(
    ("asked", "first"),
    [
        ("toms asking about the pecan pie", "Not for Tom: pecan pie."),
        ("is toms macaroni cheese ok if the nuts were in the same box", "Not for Tom: macaroni cheese"),
        ("anyone who shouldnt get the pecan pie", "Not for Tom: pecan pie."),
        ("Tom's asking about the macaroni cheese", "Tom may have: macaroni cheese."),
    ],
)
def test_a_guest_typed_without_an_apostrophe_is_that_guest(laid: Session, asked: str, first: str) -> None:
    laid.ask("Tom is allergic to nuts")
    assert laid.ask(asked).say.startswith(first)


def test_olives_are_olives_though_olive_is_a_guest(conversation: Session) -> None:
    conversation.ask("foods: olives, Brie")
    conversation.ask("Olive is vegan")
    assert "mixed olives" in conversation.ask("what goes with olives").text


@pytest.mark.parametrize(
    "told", ["theres glass in the box", "her parcel arrived smashed, is the Stilton ok to eat"]
)
def test_what_came_with_broken_glass_is_thrown_away(conversation: Session, told: str) -> None:
    assert "throw all of it away" in conversation.ask(told).say


def test_a_diet_given_up_for_tonight_is_taken_off(laid: Session) -> None:
    laid.ask("Priya is vegan")
    assert "Taken off for Priya: vegan." in laid.ask("priya says shes off the vegan thing tonight").text
    laid.ask("Priya is vegan")
    assert "Taken off for Priya: vegan." in laid.ask("Priya isn't doing vegan tonight").text
    assert "off the booze" in laid.ask("Tom's off the booze").say
