"""What a safety question is answered with: the cautions its foods call for, every one of them.

The sources of the cautions stand in ontology/cautions.ttl; that hard cheese need not be avoided in
pregnancy is the UK Food Standards Agency's word, that soft mould-ripened cheese should be is the NHS's.
"""

from __future__ import annotations

import pytest

from assistant.answers.record import Answer
from assistant.answers.safety import spoken
from assistant.knowledge.diets import allergens
from assistant.session import Session

LONGEST_SENTENCE = 31  # words; the longest single sentence of ontology/cautions.ttl


def asked(session: Session, question: str) -> Answer:
    """The answer, as the first of a conversation."""
    session.new_conversation()
    answer = session.ask(question)
    assert answer.intent == "safety"
    return answer


@pytest.mark.parametrize(
    ("food", "says"),
    [
        ("cheddar", "hard cheese"),
        ("brie", "white mould rind"),
        ("stilton", "blue"),
        ("salami", "cold cured meat"),
        ("smoked salmon", "smoked fish"),
    ],
)
def test_pregnancy_goes_by_the_kind_of_food(session: Session, food: str, says: str) -> None:
    answer = asked(session, f"I'm pregnant, is the {food} safe?")
    assert says in answer.text.lower()


def test_every_food_named_brings_its_caution(session: Session) -> None:
    """Five cautions and more are all said; the allergy is not dropped at the end."""
    answer = asked(session, "pregnant and allergic to nuts, can she have the brie, the salami and the pesto?")
    for needed in ("white mould rind", "cold cured meat", "alcohol is known to be safe", "keep away"):
        assert needed in answer.text
    assert len(answer.cautions) >= 5


@pytest.mark.parametrize("dish", ["pad thai", "caesar salad", "lasagne", "moussaka"])
def test_the_allergens_of_all_parts_are_told(session: Session, dish: str) -> None:
    answer = asked(session, f"she has a milk allergy, what about the {dish}?")
    (food,) = {p.main.food for p in session.parser.parse(dish).dishes}
    held, may = allergens(food, session.knowledge)
    assert held
    (line,) = [
        row
        for row in answer.text.splitlines()
        if row.lower().startswith(session.knowledge.label(food).lower())
    ]
    assert all(name in line for name in (*held, *may))


@pytest.mark.parametrize(
    "question",
    [
        "can my 15 year old have a sip",
        "is honey ok for a 6 month old baby",
        "my dad picked some mushrooms in the woods, are they ok",
        "how many units of alcohol is too many",
    ],
)
def test_who_and_what_is_at_risk_is_heard(session: Session, question: str) -> None:
    assert asked(session, question).cautions


@pytest.mark.parametrize("question", ["what goes with 10 year old cheddar", "10 year old tawny with stilton"])
def test_an_old_cheese_is_no_child(session: Session, question: str) -> None:
    session.new_conversation()
    assert session.ask(question).intent != "safety"


def test_the_line_to_say_aloud_is_short_and_nothing_of_the_caution_is_lost(session: Session) -> None:
    """Every caution: its first sentences in one breath, in front; its last word still in the text."""
    names = session.knowledge.of_type("Caution")
    assert len(names) > 40
    for name in names:
        whole = str(session.knowledge.entry(name)["say"][0])
        aloud, below = spoken(whole)
        assert len(aloud.split()) <= LONGEST_SENTENCE, name
        assert " ".join(filter(None, (aloud, below))) == whole


def test_the_spoken_line_stands_first_and_the_rest_right_below(session: Session) -> None:
    answer = asked(session, "I'm pregnant, is the brie safe?")
    first, second = answer.text.splitlines()[:2]
    assert first == answer.say
    assert f"{first} {second}" == answer.cautions[0]["text"]


@pytest.mark.parametrize(
    "said",
    ["Piet feels his lips tingling", "my mouth is itchy", "her tongue is tingling", "prickling in my throat"],
)
def test_signs_of_an_allergic_reaction_are_an_emergency(session: Session, said: str) -> None:
    assert asked(session, said).cautions[0]["id"] == "caution/allergy-emergency"


def test_no_wine_is_poured_for_a_child(session: Session) -> None:
    answer = asked(session, "can I give wine to my daughter of 15")
    assert "caution/minors" in [caution["id"] for caution in answer.cautions]


@pytest.mark.parametrize(
    "typed",
    [
        "why do my cheeks go red from wine",
        "why does wine make my face red",
        "red cheeks after one glass",
    ],
)
def test_a_flush_is_answered_before_sulphites(session: Session, typed: str) -> None:
    answer = session.ask(typed)
    assert answer.intent == "safety"
    assert answer.say.startswith("Nobody here can say what causes a headache or a flush")


@pytest.mark.parametrize(
    "said",
    [
        "my uncle feels shaky and sweaty",
        "uncle ray feels shaky",
        "she's shaking",
        "he looks pale and clammy",
        "my diabetic uncle is acting drunk but had none",
        "bob is having a hypo",
    ],
)
def test_who_is_suddenly_shaky_gets_help_and_no_wine(session: Session, said: str) -> None:
    answer = asked(session, said)
    assert answer.cautions[0]["id"] == "caution/low-sugar"
    assert not answer.picks


@pytest.mark.parametrize("said", ["the brie is sweaty", "why is the table shaky", "my brie got all sweaty"])
def test_a_sweaty_cheese_is_nobody_shaky(session: Session, said: str) -> None:
    session.new_conversation()
    assert "caution/low-sugar" not in [caution["id"] for caution in session.ask(said).cautions]
