"""What guests wonder about is explained; a pair, a claim or a danger keeps its own answer."""

from __future__ import annotations

import json

import pytest

from assistant.answers.notes import MOST_RULES
from assistant.knowledge.store import shipped
from assistant.language.entries import is_explained
from assistant.session import Session
from tests.answer_schema import faults

KNOWLEDGE = shipped()
EXPLAINED = KNOWLEDGE.of_type("Explanation")
MOST_WORDS = 20
OWN_ANSWERS = (
    ("why does port go with stilton", "why"),
    ("why not red wine with fish", "why-not"),
    ("is it true that a screw cap means cheap wine", "myth"),
    ("what are legs", "define"),
    ("what is tannin", "define"),
    ("how many spit cups do we need for ten people", "quantity"),
    ("champagne is too dear, what does the same job for less", "substitute"),
    ("A kedgeree lunch with hard-boiled eggs, what white?", "wines-for-food"),
    ("why does red wine give me a headache", "safety"),
    ("I'm pregnant, why can't I have brie", "safety"),
    ("should I decant the Barolo", "service"),
)


@pytest.mark.parametrize("subject", EXPLAINED)
def test_it_is_explained_as_people_ask(conversation: Session, subject: str) -> None:
    entry = KNOWLEDGE.entry(subject)
    for way in entry["altLabel"]:
        conversation.new_conversation()
        answer = conversation.ask(str(way))
        assert answer.understood, way
        assert answer.say == entry["say"][0], way
        assert entry["behind"][0] in answer.text
        assert faults(json.loads(json.dumps(answer.as_json()))) == []


@pytest.mark.parametrize("subject", EXPLAINED)
def test_what_is_said_aloud_is_short_and_its_rules_are_told(conversation: Session, subject: str) -> None:
    entry = KNOWLEDGE.entry(subject)
    assert len(str(entry["say"][0]).split()) <= MOST_WORDS
    text = conversation.ask(str(entry["altLabel"][0])).text
    rules = [KNOWLEDGE.rules[name].label in text for name in entry.get("spokenFor", ())]
    assert sum(rules) == min(MOST_RULES, len(rules))


@pytest.mark.parametrize(("question", "intent"), OWN_ANSWERS)
def test_what_has_an_answer_of_its_own_keeps_it(conversation: Session, question: str, intent: str) -> None:
    assert not is_explained(conversation.read(question))
    assert conversation.ask(question).intent == intent


def test_what_stood_stands_on_after_an_explanation(conversation: Session) -> None:
    conversation.ask("what goes with garlic cheddar")
    assert conversation.ask("why do people swirl the glass").intent == "why"
    assert "garlic cheddar" in conversation.ask("something red instead").text


@pytest.mark.parametrize(
    ("question", "subject"),
    [
        ("guest asks why the malbec tastes metallic with the comte", "explained/metallic"),
        ("why does the chianti taste of metal with the eggs", "explained/metallic"),
        ("my cheddar tastes bitter with the malbec", "explained/bitter"),
        ("why did the rioja turn bitter with the stilton", "explained/bitter"),
    ],
)
def test_what_a_tongue_finds_is_explained_and_not_argued_with(
    conversation: Session, question: str, subject: str
) -> None:
    answer = conversation.ask(question)
    assert answer.say == KNOWLEDGE.entry(subject)["say"][0]
    assert "a tongue need not agree" in answer.text


@pytest.mark.parametrize("question", ["what wine goes with a bitter salad", "what goes with radicchio"])
def test_a_taste_on_a_plate_is_no_complaint(conversation: Session, question: str) -> None:
    assert not is_explained(conversation.read(question))


def test_why_one_of_the_wines_is_fizzy_is_explained_without_figures(conversation: Session) -> None:
    conversation.ask("wines: Cava, Albariño and Malbec")
    for question in ("why is that one fizzy", "why is the cava fizzy", "what makes it fizzy"):
        answer = conversation.ask(question)
        assert answer.say == KNOWLEDGE.entry("explained/bubbles-from")["say"][0], question
        assert "mg/l" not in answer.text


def test_a_wine_that_tastes_sour_after_a_sweet_dish_is_explained_with_the_pair() -> None:
    session = Session()
    session.ask("on the table: cava, an off-dry riesling, a pinot noir, turkey and pecan pie")
    answer = session.ask("why does the riesling taste sour after the pie")
    assert answer.intent == "why"
    assert answer.say.startswith("After sugar the tongue expects more of it")
    assert "Against: the food is sweeter than the wine" in answer.text


@pytest.mark.parametrize(
    "line", ["then what about dessert wine, is it worth buying one", "is a sweet wine worth getting"]
)
def test_whether_another_wine_is_worth_buying_is_asked_of_the_shop(line: str) -> None:
    session = Session()
    session.ask("on the table: cava, an off-dry riesling, a pinot noir, turkey and pecan pie")
    session.ask("and the pecan pie?")
    answer = session.ask(line)
    assert answer.intent == "wines-for-food"
    assert answer.picks[0].label == "Bual Madeira"
    assert "Worth buying one: Bual Madeira is strong, the best of the table, off-dry Riesling, fair." in (
        answer.text
    )


def test_the_cheapest_without_prices_names_what_to_look_for() -> None:
    session = Session()
    session.ask("on the table: cava, an off-dry riesling, a pinot noir, turkey and pecan pie")
    answer = session.ask("cheapest thing for pecan pie under 15 dollars")
    assert "I know no shop prices: take the cheapest of these" in answer.text
    assert answer.picks[0].id not in session.tonight.wines
