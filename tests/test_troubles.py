"""Trouble at the table is answered: what to do now, the cause, the checks, and whether to pour."""

from __future__ import annotations

import json

import pytest

from assistant.knowledge.store import shipped
from assistant.session import Session
from tests.answer_schema import faults
from tests.told import told

KNOWLEDGE = shipped()
FAULTS = [s for s in KNOWLEDGE.of_type("Fault") if KNOWLEDGE.entry(s).get("altLabel")]
SYMPTOMS = KNOWLEDGE.of_type("Trouble")


def way(subject: str) -> str:
    """The first way in which people say it."""
    return str(KNOWLEDGE.entry(subject)["altLabel"][0])


UNKNOWN = "fault/odd-smell"


@pytest.mark.parametrize("subject", FAULTS)
def test_a_named_fault_goes_straight_to_its_remedy(conversation: Session, subject: str) -> None:
    entry, answer = KNOWLEDGE.entry(subject), told(conversation, "trouble", way(subject))
    assert faults(json.loads(json.dumps(answer.as_json()))) == []
    assert (answer.intent, answer.say, answer.understood) == ("trouble", entry["say"][0], True)
    assert all(entry[part][0] in answer.text for part in ("sign", "remedy"))
    assert ("Pour it?" in answer.text) == ("pour" in entry)
    assert [c["id"] for c in answer.cautions] == entry.get("caution", [])
    assert "To tell the causes apart" not in answer.text


@pytest.mark.parametrize("subject", SYMPTOMS)
def test_a_symptom_gets_its_likeliest_cause_and_every_check(conversation: Session, subject: str) -> None:
    entry, answer = KNOWLEDGE.entry(subject), told(conversation, "trouble", way(subject))
    assert faults(json.loads(json.dumps(answer.as_json()))) == []
    assert (answer.intent, answer.say) == ("trouble", entry["say"][0])
    if entry["likeliest"] != [UNKNOWN]:  # where nothing is known yet the checks alone tell
        assert KNOWLEDGE.entry(entry["likeliest"][0])["remedy"][0] in answer.text
    check, questions = entry["check"][0], 0
    while not isinstance(check, str):
        assert f"{check['asks'][0]} Then {KNOWLEDGE.label(check['yes'][0])}" in answer.text
        check, questions = check["no"][0], questions + 1
    assert questions >= 1
    assert f"None of these: {KNOWLEDGE.label(check)}" in answer.text


def test_minutes_are_figures_with_range_and_source(conversation: Session) -> None:
    figures = conversation.ask("we've run out of ice").figures
    assert figures["minutes"]["unit"] == "min"
    assert figures["minutes"]["low"] <= figures["minutes"]["value"] <= figures["minutes"]["high"] <= 45.0
    assert figures["minutes"]["source"]


def test_degrees_and_days_are_figures(conversation: Session) -> None:
    assert 6 <= conversation.ask("the bubbly gushed everywhere").figures["celsius"]["value"] <= 9
    assert conversation.ask("fizz gone flat any use").figures["days"]["high"] == 3.0


def test_broken_glass_is_never_poured(conversation: Session) -> None:
    answer = conversation.ask("the decanter has a crack in it")
    assert "Pour it? no." in answer.text
    assert [c["id"] for c in answer.cautions] == ["caution/broken-glass"]


@pytest.mark.parametrize(
    ("cry", "caution"),
    [
        ("the cork broke and a guest is choking", "caution/choking"),
        ("a guest is choking on the cheese", "caution/choking"),
        ("her lips are swelling after the nuts", "caution/allergy-emergency"),
        ("someone cut themselves on the decanter, ambulance", "caution/allergy-emergency"),
    ],
)
@pytest.mark.parametrize("whatever", [False, True])
def test_an_emergency_comes_before_any_trouble(
    conversation: Session, cry: str, caution: str, whatever: bool
) -> None:
    """Asked as it is read, and as trouble."""
    answer = told(conversation, "trouble", cry) if whatever else conversation.ask(cry)
    assert caution in [c["id"] for c in answer.cautions]
    assert "emergency number" in answer.say or "emergency" in answer.cautions[0]["text"].split(".")[0]


def test_what_stood_before_stands_after_trouble(conversation: Session) -> None:
    dish = conversation.ask("what goes with ribeye steak").dish
    conversation.ask("the cork broke")
    assert conversation.ask("what about a white").dish == dish


def test_two_troubles_are_both_answered(conversation: Session) -> None:
    answer = conversation.ask("half the guests are late and the Brie has melted over the slate")
    for fault in ("fault/guest-late", "fault/cheese-warm"):
        assert KNOWLEDGE.entry(fault)["remedy"][0] in answer.text
    assert {c["id"] for c in answer.cautions} == {"caution/left-out"}


def test_trouble_of_an_unknown_sort_is_asked_about(conversation: Session) -> None:
    answer = told(conversation, "trouble", "my corkscrew has a wobbly handle")
    assert (answer.intent, answer.understood) == ("trouble", False)
    assert answer.clarify
    assert f"“{KNOWLEDGE.label('fault/no-corkscrew')}”" in answer.text


@pytest.mark.parametrize(
    ("said", "entry"),
    [
        ("the malbec is too warm", "trouble/too-warm"),
        ("bits in the malbec", "trouble/bits-in-wine"),
        ("the brut sparkling has gone flat", "trouble/flat"),
        ("the off-dry riesling is cloudy", "trouble/cloudy"),
        ("the freezer made the riesling solid", "trouble/frozen"),
        ("my wine is frozen", "trouble/frozen"),
        ("I forgot to chill the bubbly, guests in twenty minutes", "trouble/too-warm"),
    ],
)
def test_a_wine_that_is_named_is_a_wine_in_trouble(conversation: Session, said: str, entry: str) -> None:
    conversation.new_conversation()
    answer = conversation.ask(said)
    assert (answer.intent, answer.say) == ("trouble", KNOWLEDGE.entry(entry)["say"][0])


def test_what_is_warm_goes_into_ice_water_and_salt_for_so_long(conversation: Session) -> None:
    answer = conversation.ask("I forgot to chill the bubbly, guests in twenty minutes")
    assert all(word in answer.say.lower() for word in ("ice", "water", "salt", "30 minutes"))
    assert answer.figures["minutes"]["high"] == 30.0


@pytest.mark.parametrize(
    "asked", ["why's the riesling smell like kero", "my riesling whiffs of diesel", "it smells like petrol"]
)
def test_kerosene_is_petrol_and_normal_in_riesling(conversation: Session, asked: str) -> None:
    assert conversation.ask(asked).say.startswith("That is normal in Riesling")


def test_a_wine_that_smells_of_petrol_may_be_wished_for(conversation: Session) -> None:
    assert conversation.ask("which wine smells of petrol").intent == "wines-for-food"
