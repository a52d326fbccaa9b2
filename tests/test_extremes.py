"""Which wine on the table has most or least of something."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from assistant.answers.extremes import extremes_asked
from assistant.session import Session
from tests.tables import poured

POURED = ("wine/brut-sparkling", "wine/off-dry-riesling", "wine/oaked-chardonnay", "wine/malbec")


@pytest.fixture
def table(session: Session) -> Iterator[Session]:
    """Four wines and nothing to eat."""
    with poured(session, *POURED):
        yield session


@pytest.mark.parametrize(
    ("asked", "measure", "most"),
    [
        ("which one has the least alcohol", lambda g: g.alcohol_percent, False),
        ("which is the strongest", lambda g: g.alcohol_percent, True),
        ("which is the sweetest", lambda g: g.points["sweetness"], True),
        ("what's the lightest?", lambda g: g.points["body"], False),
        ("which is the grippiest", lambda g: g.points["tannin"], True),
        ("which has the most oak", lambda g: g.points["oak"], True),
    ],
)
def test_the_end_asked_for_is_told(table: Session, asked: str, measure: object, most: bool) -> None:
    glasses = [table.engine.glasses[wine] for wine in POURED]
    best = (max if most else min)(glasses, key=measure)  # type: ignore[call-overload]
    say = table.ask(asked).say
    assert say.split(". ")[0].endswith(table.knowledge.label(best.wine))


def test_wines_alike_are_told_together(session: Session) -> None:
    with poured(session, "wine/brut-sparkling", "wine/off-dry-riesling", "wine/malbec"):
        assert "brut sparkling and off-dry Riesling" in session.ask("which has the least tannin").say


@pytest.mark.parametrize("asked", ["which is the lightest with brie", "the lightest of them", "is it sweet"])
def test_other_questions_are_left_alone(table: Session, asked: str) -> None:
    assert not extremes_asked(table.read(asked))


def test_without_wines_poured_nothing_is_told(conversation: Session) -> None:
    assert "tonight" not in conversation.ask("which is the sweetest").say


def test_health_is_no_pairing(table: Session) -> None:
    table.ask("what goes with grouper")
    answer = table.ask("why does red wine give me a headache")
    assert answer.intent == "safety"
    assert "caution/headache" in [one["id"] for one in answer.cautions]


def test_a_name_told_as_read_is_not_told_as_unknown(table: Session) -> None:
    table.ask("what goes with brie")
    assert table.ask("swap brie for camembert?").left_out == ()


@pytest.mark.parametrize(
    ("asked", "say"),
    [
        ("which of them is oaky", "Oaky tonight: oaked Chardonnay and Malbec."),
        ("which one is sweet", "Sweet tonight: none of the wines; off-dry Riesling comes nearest."),
        ("which is the lighter white", "The least body tonight: off-dry Riesling"),
    ],
)
def test_a_taste_is_asked_among_the_wines_there(table: Session, asked: str, say: str) -> None:
    assert table.ask(asked).say.startswith(say)
    stands = table.talk.frame.preferences if table.talk else ()
    assert [limit.label for limit in stands if limit.property != "kind"] == []


def test_the_same_is_asked_of_another_wine(table: Session) -> None:
    assert "% alcohol" in table.ask("what's the alcohol in the malbec").say
    answer = table.ask("and the Chardonnay?")
    assert (answer.intent, answer.say.count("% alcohol")) == ("describe", 1)
    assert table.ask("how cold do I serve the malbec").intent == "service"
    assert table.ask("and the riesling?").say.startswith("Off-dry Riesling:")


def test_a_food_that_is_only_what_is_measured_is_no_food(table: Session) -> None:
    answer = table.ask("which has the most sugar?")
    assert (answer.intent, table.tonight.dishes) == ("compare", ())
    assert "off-dry Riesling" in answer.say


def test_both_ends_that_are_asked_for_are_told(table: Session) -> None:
    text = table.ask("which one of these has the most alcohol and which is the driest").text
    assert "The most alcohol" in text
    assert "The least sweetness" in text
