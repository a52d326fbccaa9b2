"""How wines are served: the figures of the knowledge, and that they stand in the record.

Bands: how long open bottles keep is common practice (fizz a day or three, still wine three to five, fortified
wine weeks); that every style is served between 5 and 19 degrees is the span of the published tables.
"""

from __future__ import annotations

import json
import re
from math import log

import pytest

from assistant.answers.record import Answer
from assistant.knowledge.concepts import Wine
from assistant.session import Session
from tests.answer_schema import faults

FIZZ = 3.0


def asked(session: Session, question: str) -> Answer:
    """The answer, as the first of a conversation."""
    session.new_conversation()
    answer = session.ask(question)
    assert answer.intent == "service"
    assert not faults(json.loads(json.dumps(answer.as_json())))
    return answer


def _longest(wine: Wine) -> float:
    if wine.amounts["pressure"].typical >= FIZZ:
        return 3.0
    return 56.0 if "kind/fortified-wine" in wine.kinds else 5.0


def test_every_wine_says_how_it_is_served_and_kept(session: Session) -> None:
    for wine in (w for w in session.knowledge.wines.values() if w.type == "Wine"):
        keeps = session.knowledge.keeps_open(wine.id)
        assert keeps is not None, wine.id
        assert keeps.high <= _longest(wine), wine.id
        assert wine.serve is not None, wine.id
        assert 5.0 <= wine.serve.low <= wine.serve.high <= 19.0, wine.id
        assert session.wording("glass", wine.glass or "")


@pytest.mark.parametrize("question", ["how cold should chablis be", "does Barolo need decanting"])
def test_the_figures_are_those_of_the_wine(session: Session, question: str) -> None:
    answer = asked(session, question)
    wine = session.knowledge.wines[answer.picks[0].id]
    assert wine.serve is not None
    assert answer.figures["celsius"]["value"] == wine.serve.typical
    assert f"{wine.serve.low:g} to {wine.serve.high:g} °C" in answer.text


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("half a cab how long", "Cabernet Sauvignon, half left: about 4 days from opening."),
        ("how long does this malbec need", "Malbec: give it"),
        ("how cold should chablis be", "Chablis: 10 to 12 °C"),
        ("can i put prosecco in the freezer", "Prosecco: never in the freezer"),
        ("can the malbec go in the freezer", "Malbec: freezer only with an alarm at 45 minutes"),
        ("freezer ok? for how long before it pops", "Freezer only with an alarm at 45 minutes"),
        ("start at 7 when do i take cheese out", "Cheese: out of the fridge 60 minutes before"),
    ],
)
def test_what_is_asked_for_is_said_first(session: Session, question: str, said: str) -> None:
    assert asked(session, question).say.startswith(said)


def test_what_stands_out_is_told_its_limit(session: Session) -> None:
    text = asked(session, "when should the brie and the almonds come out of the fridge").text
    assert "Brie: out of the fridge 45 minutes before." in text
    assert "Almond keeps without a fridge." in text
    assert "2 hours at most, an hour above 32 °C (90 °F)" in text


def test_a_kind_has_the_range_of_its_common_styles(session: Session) -> None:
    answer = asked(session, "how cold should the white be")
    assert answer.picks == ()
    assert "°C" in answer.say


def test_without_a_wine_it_asks_which(session: Session) -> None:
    answer = asked(session, "how cold should I serve it")
    assert answer.clarify
    assert not answer.understood


def test_that_means_the_wine_that_stands(session: Session) -> None:
    session.new_conversation()
    first, served = session.ask("a red for lamb"), session.ask("how cold do I serve that?")
    assert served.intent == "service"
    assert [i.id for i in served.picks] == [first.picks[0].id]


@pytest.mark.parametrize(
    ("question", "wine"),
    [
        ("how long in the fridge for the chianti", "Chianti"),
        ("how long does riesling need in the fridge", "Dry Riesling"),
        ("how long to chill prosecco", "Prosecco"),
    ],
)
def test_how_long_a_bottle_is_chilled(session: Session, question: str, wine: str) -> None:
    """By Newton's law from 21 °C in 4 °C at 0.0075 a minute: ontology/evening/cooling.toml."""
    answer = asked(session, question)
    serve = session.knowledge.wines[answer.picks[0].id].serve
    assert serve is not None
    minutes = round(log((21 - 4) / (serve.typical - 4)) / 0.0075 / 5) * 5
    assert answer.say.startswith(f"{wine}: {minutes} minutes in the fridge from 21 °C")
    assert "(judged: " in answer.text


def test_how_long_a_kind_is_chilled_is_a_span(session: Session) -> None:
    white = asked(session, "how long in the fridge for a white")
    assert re.match(r"White wine: \d+ to \d+ minutes in the fridge", white.say)
    session.ask("how cold should riesling be")
    red = session.ask("how long should red wine be in the fridge")
    assert red.say.startswith("Red wine: ")


def test_with_no_wine_named_the_table_or_the_common_kinds_are_told(session: Session) -> None:
    usual = asked(session, "how long in the fridge")
    assert all(f"{kind}: " in usual.text for kind in ("Sparkling wine", "White wine", "Red wine"))
    session.new_conversation()
    session.ask("on the table: chianti, riesling")
    assert session.ask("how long in the fridge").say.startswith("Chianti: ")


def test_how_long_an_open_bottle_keeps_is_no_chilling(session: Session) -> None:
    session.new_conversation()
    assert "minutes in the fridge" not in session.ask("how long does an open riesling keep in the fridge").say
