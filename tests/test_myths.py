"""Popular claims are answered: what to say, where it holds and fails, and tried on the foods of the table."""

from __future__ import annotations

import json

import pytest

from assistant.answers.notes import MOST_RULES
from assistant.answers.record import Answer
from assistant.knowledge.store import shipped
from assistant.session import Session
from tests.answer_schema import faults, sums_wrong
from tests.told import told

KNOWLEDGE = shipped()
MYTHS = KNOWLEDGE.of_type("Myth")


def first_way(subject: str) -> str:
    """The first way in which people say it."""
    return str(KNOWLEDGE.entry(subject)["altLabel"][0])


def kinds(answer: Answer) -> list[set[str]]:
    """The ids of the kinds of each wine picked."""
    return [{item.id, *KNOWLEDGE.wines[item.id].kinds} for item in answer.picks]


@pytest.mark.parametrize("subject", MYTHS)
def test_answer_says_where_it_holds_and_where_it_fails(conversation: Session, subject: str) -> None:
    entry, answer = KNOWLEDGE.entry(subject), told(conversation, "myth", first_way(subject))
    record = json.loads(json.dumps(answer.as_json()))
    assert faults(record) == [] == sums_wrong(record)
    assert (answer.intent, answer.say, answer.understood) == ("myth", entry["say"][0], True)
    assert all(entry[part][0] in answer.text for part in ("holds", "fails", "truth"))
    rules = [KNOWLEDGE.rules[name].label in answer.text for name in entry.get("spokenFor", ())]
    assert sum(rules) <= MOST_RULES if answer.picks else sum(rules) == min(MOST_RULES, len(rules))
    assert [c["id"] for c in record["cautions"]] == entry.get("caution", [])


def test_a_claim_is_tried_on_the_dish_named(conversation: Session) -> None:
    answer = conversation.ask("is it true you never drink red with grilled tuna")
    colours = {item.wine["colour"] for item in answer.picks if item.wine}
    assert colours == {"red", "white"}
    best, other = answer.picks
    assert best.score >= other.score
    assert f"{best.label}" in answer.text
    assert f"{other.label}" in answer.text


@pytest.mark.parametrize(
    ("first", "claim", "keeps", "breaks"),
    [
        (
            "what goes with ribeye steak",
            "is it true white never goes with steak",
            "kind/red-wine",
            "kind/white-wine",
        ),
        (
            "what goes with brie",
            "is it true cheese always needs red wine",
            "kind/red-wine",
            "kind/white-wine",
        ),
        ("what goes with vindaloo", "is it true that wine never goes with curry", "kind/full-red", None),
    ],
)
def test_a_claim_is_tried_on_what_stands_on_the_table(
    conversation: Session, first: str, claim: str, keeps: str, breaks: str | None
) -> None:
    conversation.ask(first)
    found = kinds(conversation.ask(claim))
    assert len(found) == 2
    assert any(keeps in of for of in found)
    assert any(breaks in of if breaks else keeps not in of for of in found)


def test_the_line_about_a_dish_agrees_with_the_scores(conversation: Session) -> None:
    """Several outcomes occur on everyday dishes, and each goes with the order of the picks."""
    noise = KNOWLEDGE.constants["noise"]
    outcomes = set()
    for dish in ("steak", "brie", "blue cheese", "parmesan", "raw oysters", "roast chicken", "cheddar"):
        for claim in ("is it true cheese always needs red wine", "is it true red never goes with fish"):
            conversation.new_conversation()
            conversation.ask(f"what goes with {dish}")
            answer = conversation.ask(claim)
            line = next((line for line in answer.text.splitlines() if line.startswith("With ")), "")
            told = [way for way in ("it fails:", "it holds:", "either will do:") if way in line]
            assert len(told) == (1 if answer.picks else 0)
            if told:
                close = answer.picks[0].score - answer.picks[1].score < noise
                assert close == (told == ["either will do:"]), line
            outcomes.update(told)
    assert len(outcomes) >= 2


def test_a_saying_beside_a_safety_topic_says_the_caution_first(conversation: Session) -> None:
    answer = told(conversation, "myth", "my pregnant sister says legs mean quality")
    assert answer.cautions[0]["id"].startswith("caution/pregnancy")
    assert answer.say in answer.cautions[0]["text"]
    assert KNOWLEDGE.entry("myth/legs")["fails"][0] in answer.text


def test_an_unknown_saying_about_safety_is_answered_as_safety(conversation: Session) -> None:
    answer = told(conversation, "myth", "is it true that one sip is fine when pregnant")
    assert answer.cautions
    assert answer.understood


def test_the_nearest_sayings_are_offered(conversation: Session) -> None:
    answer = told(conversation, "myth", "do tears taste of salt")
    assert not answer.understood
    assert f"“{KNOWLEDGE.label('myth/legs')}”" in answer.text


def test_the_rules_told_are_at_work_on_the_dish(conversation: Session) -> None:
    conversation.ask("what goes with blue cheese")
    answer = conversation.ask("is it true cheese always needs red wine")
    told_of = [
        line.split("“")[1].split("”")[0] for line in answer.text.splitlines() if line.startswith("Rule")
    ]
    assert told_of
    assert set(told_of) <= {entry.label for item in answer.picks for entry in item.path}


def test_a_claim_about_no_food_of_the_table_shows_no_wine(conversation: Session) -> None:
    conversation.ask("what goes with ribeye steak")
    assert conversation.ask("legs mean quality").picks == ()


def test_what_stood_before_stands_after_a_saying(conversation: Session) -> None:
    conversation.ask("what goes with ribeye steak")
    conversation.ask("legs mean quality")
    assert conversation.ask("what about a white").dish == conversation.ask("what goes with ribeye steak").dish


@pytest.mark.parametrize(
    ("dish", "claim"),
    [
        ("steak with chimichurri", "is it true white never goes with steak"),
        ("grilled salmon", "is it true red never goes with fish"),
        ("brie", "is it true cheese always needs red wine"),
    ],
)
def test_what_stands_is_tried_where_the_saying_names_its_kind(
    conversation: Session, dish: str, claim: str
) -> None:
    first = conversation.ask(f"what goes with {dish}")
    answer = conversation.ask(claim)
    assert answer.dish == first.dish
    assert len(answer.picks) == 2


def test_a_saying_about_another_food_is_tried_on_that(conversation: Session) -> None:
    conversation.ask("what goes with grilled salmon")
    dish = conversation.ask("is it true red never goes with cod").dish
    assert dish is not None
    assert dish["label"] == "cod"


def test_the_food_of_a_saying_stands_for_the_next_question(conversation: Session) -> None:
    conversation.ask("is it true red never goes with salmon")
    answer = conversation.ask("what about a red?")
    assert answer.intent == "wines-for-food"
    assert answer.picks[0].wine is not None
    assert answer.picks[0].wine["colour"] == "red"


def test_a_doubted_pair_without_a_known_saying_is_judged(conversation: Session) -> None:
    answer = conversation.ask("is it true that Riesling is supposed to fight with pork")
    assert answer.verdict is not None


def test_an_unknown_saying_is_owned_up_to(conversation: Session) -> None:
    answer = conversation.ask("is it true that cats sing")
    assert (answer.intent, answer.understood) == ("myth", False)
    assert answer.clarify


def test_health_sayings_send_to_a_doctor(conversation: Session) -> None:
    for subject in ("myth/sulphites-headache", "myth/red-is-medicine", "myth/white-hangover"):
        answer = told(conversation, "myth", first_way(subject))
        assert "doctor" in answer.text
        assert answer.cautions


@pytest.mark.parametrize(
    ("claim", "opens"),
    [
        ("linda says you never serve chardonnay with mac and cheese", "There is no such rule: Chardonnay"),
        ("is it true that you can't serve merlot with oysters", "There is something in it: Merlot"),
        (
            "im holding the zinfandel, linda swears its the only thing for turkey",
            "It is not the only one",
        ),
        ("my dad says port is the only thing with stilton", "It is not the only one for Stilton"),
        ("my aunt says rosé is the only wine for the holidays, who's right", "No wine is the only one"),
        ("tom reckons malbec goes with everything", "No wine goes with everything"),
        ("she says you have to let the pinot noir breathe for two hours, is she right", "No need for that"),
        ("dad says the zinfandel has to be decanted for ten minutes", "A little air helps: 30 minutes"),
    ],
)
def test_what_somebody_claims_of_a_wine_is_judged(conversation: Session, claim: str, opens: str) -> None:
    answer = conversation.ask(claim)
    assert (answer.intent, answer.understood) == ("myth", True)
    assert answer.say.startswith(opens)
    assert "Limit" not in answer.text


def test_a_claim_about_the_whole_meal_is_held_against_the_table(conversation: Session) -> None:
    conversation.ask("on the table: cava, zinfandel and chardonnay, mac and cheese and turkey")
    answer = conversation.ask("linda says zinfandel is the only wine for tonight")
    assert answer.say.startswith("It is not the only one for macaroni cheese and turkey: Zinfandel is poor")
    assert [item.label for item in answer.picks[1:]] == ["Cava", "Chardonnay"]


@pytest.mark.parametrize(
    "line",
    [
        "jen says she only drinks pinot noir",
        "my husband says red with fish is a crime. i want pinot noir with my salmon. settle this",
        "learn this: moscato with lime pickle is fantastic, dont say it clashes",
    ],
)
def test_what_a_guest_drinks_and_what_the_host_says_are_no_claims(conversation: Session, line: str) -> None:
    assert conversation.read(line).intent != "myth"


@pytest.mark.parametrize(
    ("said", "answer"),
    [
        ("con reckons prosecco is just cheap champagne made the same way", "No: Prosecco gets its bubbles"),
        ("con says shiraz comes from persia", "No: Shiraz is Syrah"),
    ],
)
def test_what_somebody_says_of_a_wine_by_name_is_a_claim(
    conversation: Session, said: str, answer: str
) -> None:
    assert conversation.ask(said).say.startswith(answer)


def test_two_wines_are_compared_where_nothing_is_claimed(conversation: Session) -> None:
    assert conversation.ask("prosecco or champagne").intent == "compare"
