"""`is that ok for Omar`, `and for Lena?`: not named is what was asked before, or the pair that stands."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from assistant.session import Session
from assistant.table.tonight import Tonight

TOLD = (
    "Omar drives, Lena is pregnant, Petra is coeliac",
    "the wines are crémant, Beaujolais and late-harvest Riesling",
    "the board: smoked salmon, brie, blue cheese, ham, crackers and lemon tart",
)


@pytest.fixture
def table(session: Session) -> Iterator[Session]:
    """Three guests with needs, three wines, six foods; the other tests find nothing on the table."""
    session.lay(Tonight())
    session.new_conversation()
    for line in TOLD:
        session.ask(line)
    yield session
    session.lay(Tonight())
    session.new_conversation()


def test_all_that_stands_is_looked_at_for_everybody(table: Session) -> None:
    table.ask("what goes with what")
    answer = table.ask("is that ok for everyone")
    assert answer.intent == "safety"
    assert "Not for Lena: smoked salmon, Brie" in answer.say
    assert "Not for Omar: crémant" in answer.say
    assert "Not for Petra: plain cracker and lemon tart" in answer.say


@pytest.mark.parametrize("typed", ["is everything ok for everybody", "is it all fine for everyone"])
def test_everything_is_the_whole_table(table: Session, typed: str) -> None:
    table.ask("what goes with the brie")
    assert "lemon tart" in table.ask(typed).say


def test_the_wine_that_stands_counts_for_who_drives(table: Session) -> None:
    table.ask("which wine with the blue cheese")
    assert table.ask("is that ok for Omar").say == "Not for Omar: late-harvest Riesling."
    assert table.ask("can Lena eat it").say.startswith("Not for Lena: blue cheese")


def test_the_next_guest_is_asked_of_the_same(table: Session) -> None:
    table.ask("is the brie ok for Lena")
    assert table.ask("and for Petra?").say == "Ask or read the label first for Petra: Brie."
    assert table.ask("is it ok for Omar").say == "Omar may have: Brie."


def test_why_she_may_not_is_told_of_what_was_asked(table: Session) -> None:
    table.ask("and the salmon for Lena?")
    assert table.ask("why can't she").say == "Not for Lena: smoked salmon."


@pytest.mark.parametrize("typed", ["and Omar", "cheers, and for Omar", "what about Omar?"])
def test_the_whole_table_is_asked_of_the_next_guest(table: Session, typed: str) -> None:
    table.ask("what can Petra have")
    assert "Not for Omar: crémant, Beaujolais and late-harvest Riesling" in table.ask(typed).say


def test_a_drink_is_chosen_on_and_limits_no_other_question(table: Session) -> None:
    first = table.ask("what for Omar with the tart")
    assert first.intent == "safety"
    assert first.picks
    assert not first.picks[0].id.startswith("wine/")
    further = table.ask("and with the ham")
    assert further.picks
    assert "cooked ham" in further.text
    assert table.ask("which wine with the ham").picks[0].id.startswith("wine/")


def test_a_drink_keeps_to_the_taste_asked_for(table: Session) -> None:
    table.ask("what can Lena drink")
    sweet, dry = table.ask("what can Lena drink").picks[0], table.ask("she hates sweet").picks[0]
    assert sweet.id != dry.id


@pytest.mark.parametrize(
    ("typed", "noted"),
    [
        ("Omar wants a little glass, he drives at eleven", "Noted for Omar: drives at eleven."),
        ("Tim is coming, he's vegan", "Noted for Tim: vegan."),
        ("Tim came along, he's vegan", "Noted for Tim: vegan."),
    ],
)
def test_he_is_the_guest_named_in_the_same_breath(table: Session, typed: str, noted: str) -> None:
    assert table.ask(typed).say == noted


@pytest.mark.parametrize("typed", ["is rosé vegan", "is the rosé vegan", "is the white wine vegan"])
def test_a_kind_of_wine_is_asked_of_for_a_diet(table: Session, typed: str) -> None:
    assert "label first for a vegan guest" in table.ask(typed).say


def test_a_caution_for_one_guest_is_not_told_of_another(table: Session) -> None:
    table.ask("is the brie ok for Lena")
    assert "regnan" not in table.ask("can Petra have the ham").text


def test_what_a_wine_is_like_limits_nothing(table: Session) -> None:
    table.ask("is the Riesling sweet")
    assert "Limit" not in table.ask("what about the ham").text


def test_what_goes_with_the_blue_asks_for_a_wine(table: Session) -> None:
    assert table.ask("what goes with the blue").picks[0].id == "wine/late-harvest-riesling"


def test_who_ate_what_is_forbidden_is_watched(table: Session) -> None:
    table.ask("Mo is allergic to nuts")
    answer = table.ask("Mo just ate some walnuts by mistake")
    assert answer.say.startswith("Trouble breathing")
    assert "Not for Mo: walnut." in answer.text
    assert answer.cautions[0]["text"].startswith("Trouble breathing")
    assert not any(c["text"].startswith("Trouble") for c in table.ask("can Mo have walnuts").cautions)


@pytest.mark.parametrize("typed", ["Petra just ate some bread", "Petra has already eaten some bread"])
def test_what_a_guest_ate_is_no_note(table: Session, typed: str) -> None:
    assert table.ask(typed).say == "Not for Petra: white bread."


def test_a_guest_is_asked_of_before_anything_is_laid(conversation: Session) -> None:
    conversation.ask("Ines is vegan")
    assert "name the foods and wines" in conversation.ask("what can Ines have").say


@pytest.mark.parametrize("asked", ["why", "why that", "why not wine"])
def test_why_a_drink_keeps_to_drinks_without_alcohol(conversation: Session, asked: str) -> None:
    for line in ("Lucia is pregnant", "what can she drink with the lamb", asked):
        answer = conversation.ask(line)
    assert answer.intent == "safety"
    assert answer.say.startswith("No alcohol for Lucia: pregnant.")
    assert "bigger wine" not in answer.text
    assert "Better with it" not in answer.text
    assert answer.cautions
    assert conversation.ask("why").intent == "safety"


def test_in_the_place_of_a_drink_without_alcohol_stands_no_wine(conversation: Session) -> None:
    better = conversation.ask("virgin mary with the lamb").text.partition("Better with it: ")[2]
    drinks = [w.label for w in conversation.knowledge.wines.values() if w.type == "Drink"]
    assert any(better.startswith(label) for label in drinks)
