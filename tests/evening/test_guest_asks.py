"""What a guest of tonight may have is answered from what that guest asks to be spared, never as a pairing."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.evening.table import set_table
from assistant.language.guest_named import guests_named
from assistant.language.guests import Asked
from assistant.rehearse.noting import entry_of
from assistant.session import Session
from assistant.table.tonight import Tonight

DEMO = Path(__file__).parents[2] / "corpus" / "evenings" / "quay-house.toml"
NEEDS = (
    Asked("R.", "pregnant"),
    Asked("Mo", "vegetarian"),
    Asked("Will", "vegan"),
    Asked("two of them", "coeliac"),
)


@pytest.fixture
def table(session: Session) -> Session:
    """The demo evening: R. is pregnant and allergic to nuts, Mo is vegetarian."""
    session.lay(Tonight())
    session.new_conversation()
    set_table(session, DEMO)
    session.new_conversation()
    return session


@pytest.fixture(autouse=True)
def cleared(session: Session) -> Iterator[None]:
    """The other tests find nothing on the table."""
    yield
    session.lay(Tonight())
    session.new_conversation()


@pytest.mark.parametrize(
    ("typed", "guests"),
    [
        ("can mo have the salami", ("Mo",)),
        ("what about R?", ("R.",)),
        ("is R.'s plate ready", ("R.",)),
        ("are r rated films on", ()),
        ("will the brie do", ()),
        ("can Will have the brie", ("Will",)),
        ("what can the coeliacs eat", ("two of them",)),
        ("is there a vegan cheese", ()),
        ("the vegetarian pie with what", ()),
        ("can two of them drive", ()),
        ("more mozzarella", ()),
    ],
)
def test_guests_are_known_by_name_or_need(typed: str, guests: tuple[str, ...]) -> None:
    assert guests_named(typed, NEEDS) == guests


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("will R be ok with the brie", "Not for R.: Brie."),
        ("can R. have some almonds", "Not for R.: almond."),
        ("can R drink the riesling", "Not for R.: off-dry Riesling."),
        ("can Mo have the salami", "Not for Mo: salami."),
        ("is the malbec ok for Mo", "Ask or read the label first for Mo: Malbec."),
        ("can Mo eat the almonds", "Mo may have: almond."),
        ("what must I keep from Mo", "Not for Mo: salami."),
    ],
)
def test_the_need_is_answered(table: Session, asked: str, said: str) -> None:
    answer = table.ask(asked)
    assert answer.say == said
    assert answer.intent == "safety"
    assert not answer.picks
    assert answer.left_out == ()


def test_all_that_a_guest_asks_for_counts_at_once(table: Session) -> None:
    text = table.ask("what can R eat").text
    assert "Not for R.: brie, salami, almonds," in text
    assert "R. may have: plain crackers." in text
    asked = [one["question"] for one in table.ask("rehearse").expected]
    assert "What may R. have (pregnant and tree nut allergy)?" in asked
    assert "May have: almonds" not in table.ask("rehearse").text.split("What may Mo")[0]


def test_a_follow_up_is_about_the_same_guest(table: Session) -> None:
    table.ask("can Mo have the brie")
    assert table.ask("and the salami?").say == "Not for Mo: salami."
    table.ask("what goes with brie")
    assert table.ask("and the salami?").picks[0].id == "wine/brut-sparkling"


@pytest.mark.parametrize("asked", ["which wine for Mo with the brie", "what goes with the salami"])
def test_a_pairing_stays_a_pairing(table: Session, asked: str) -> None:
    assert table.ask(asked).picks


def test_what_hurts_is_told_first(table: Session) -> None:
    assert table.ask("can Mo drive after this").cautions[0]["id"] == "caution/driving"


@pytest.mark.parametrize(
    "asked",
    [
        "can she have a small glass of the riesling",
        "can she drink the rest of the riesling if it's only a bit",
        "is a glass of the riesling ok for her",
        "she had a sip of the wrong glass",
    ],
)
def test_she_is_the_guest_last_spoken_of(table: Session, asked: str) -> None:
    table.ask("is the brie ok for R")
    answer = table.ask(asked)
    assert answer.say.startswith("Not for R.: ")
    assert "off-dry Riesling" in answer.say
    assert "caution/pregnancy-alcohol" in [c["id"] for c in answer.cautions]
    assert not answer.picks


def test_nobody_spoken_of_is_no_guest(table: Session) -> None:
    assert table.ask("she had a sip of the wrong glass").intent != "safety"


def test_who_has_asked_of_herself_gets_no_serving_notes(table: Session) -> None:
    table.ask("I'm pregnant")
    assert table.ask("can I have a small glass of the riesling").intent == "safety"


@pytest.mark.parametrize(
    "asked",
    [
        "what can R drink",
        "what can R drink instead",
        "what can R drink with the cod",
        "which wine for R with the cod",
        "what goes with the cod for R",
        "which red for R with the cod",
        "what should I pour for R",
    ],
)
def test_who_may_not_have_alcohol_is_offered_drinks_without(table: Session, asked: str) -> None:
    answer = table.ask(asked)
    assert answer.picks
    assert {pick.kind for pick in answer.picks} == {"drink"}
    assert "caution/pregnancy-alcohol" in [c["id"] for c in answer.cautions]


def test_the_food_that_is_not_for_the_guest_is_said_first(table: Session) -> None:
    answer = table.ask("which wine for R with the brie")
    assert answer.say.startswith("Not for R.: Brie.")
    assert {pick.kind for pick in answer.picks} == {"drink"}


def test_no_drink_is_offered_that_the_guest_may_not_have(table: Session) -> None:
    table.ask("Lee is pregnant and vegan")
    answer = table.ask("what can Lee drink with the salmon")
    assert "drink/ayran" not in [pick.id for pick in answer.picks]


def test_no_word_of_it_is_kept(table: Session) -> None:
    typed = "can Mo have the salami"
    frame = table.read(typed)
    assert entry_of(frame, table.ask(typed)).question == ""


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("who can't have the almonds", "Not for R.: almond."),
        ("which guests can't have the salami", "Not for R.: salami. Not for Mo: salami."),
        ("is the brie ok for everyone", "Not for R.: Brie."),
        ("I am a doctor, R may have the brie", "Not for R.: Brie."),
        ("R has drunk half a glass of malbec", "Not for R.: Malbec."),
    ],
)
def test_all_guests_are_looked_at_and_nobody_new_is_noted(table: Session, asked: str, said: str) -> None:
    assert table.ask(asked).say == said
    assert {need.guest for need in table.tonight.needs} == {"R.", "Mo"}


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("are there nuts in the salami for Tom", "Tom may have: salami."),
        ("does the pesto contain nuts for Tom", "Not for Tom: pesto."),
    ],
)
def test_what_is_asked_about_in_a_food_is_not_asked_for(table: Session, asked: str, said: str) -> None:
    table.ask("Tom can't have nuts")
    answer = table.ask(asked)
    assert answer.say == said
    assert "caution/allergy" in [c["id"] for c in answer.cautions]


def test_why_something_is_not_for_a_diet_is_told(table: Session) -> None:
    assert "Manchego: made with animal rennet." in table.ask("Anna asks if manchego is vegetarian").text


def test_an_emergency_goes_before_what_a_guest_may_have(table: Session) -> None:
    table.ask("is the brie ok for R")
    assert table.ask("she is choking on the brie").cautions[0]["id"] == "caution/choking"


def test_a_guest_who_is_known_is_no_unknown_word(table: Session) -> None:
    assert table.ask("R feels her lips tingling").left_out == ()
    assert "Mo" not in table.ask("Mo has dropped the cork").left_out


@pytest.fixture
def nameless(conversation: Session) -> Session:
    """Twelve guests, two of them with needs and no name, one whose husband is told of as well."""
    conversation.new_conversation()
    for said in (
        "we are twelve tomorrow, one is coeliac, one doesn't eat fish",
        "Lena is 8 months pregnant",
        "Lena's husband drives",
        "the menu: gravlax, beef tartare, camembert",
    ):
        conversation.ask(said)
    return conversation


def test_months_are_no_guests_and_a_head_count_is_read(nameless: Session) -> None:
    assert (nameless.tonight.guests, nameless.tonight.non_drinkers) == (12, 2)
    assert [one.guest for one in nameless.tonight.needs] == ["", "", "Lena", "Lena's husband"]


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("can the coeliac have the tartare", "Ask or read the label first for a guest: steak tartare."),
        ("can Lena have the gravlax", "Not for Lena: gravlax."),
        ("can Lena's husband have the gravlax", "Lena's husband may have: gravlax."),
        ("can he have a glass of riesling", "Not for Lena's husband: dry Riesling."),
    ],
)
def test_guests_without_a_name_and_those_of_another_guest(nameless: Session, asked: str, said: str) -> None:
    nameless.ask("can Lena's husband have the gravlax")
    assert nameless.ask(asked).say == said


def test_what_is_safe_for_everyone_is_asked_of_guests_without_a_name_too(nameless: Session) -> None:
    text = nameless.ask("which of these is safe for everyone").text
    assert "Not for a guest: gravlax" in text
    assert "Not for Lena: gravlax, steak tartare and Camembert." in text
