"""Who asks a pharmacist or doctor first, and who had what is not theirs, is told of before any pairing."""

from __future__ import annotations

import pytest

from assistant.session import Session

LAID = "on the table: banh xeo, grilled lamb, saganaki, baklava"
POURED = "wines: riesling, pinot noir, rutherglen muscat"
EATEN, EMERGENCY = "caution/allergy-eaten", "caution/allergy-emergency"


@pytest.fixture
def laid(conversation: Session) -> Session:
    conversation.ask(LAID)
    conversation.ask(POURED)
    return conversation


@pytest.mark.parametrize(
    ("asked", "thing"),
    [
        ("yiayia wants a glass of the muscat, is that ok", "Rutherglen Muscat"),
        ("yiayia wants a glass of the riesling", "dry Riesling"),
        ("which wine for yiayia with the lamb", "grilled lamb"),
        ("and spinach pie, shes on warfarin", "spanakopita"),
        ("i've got cranberry juice for yiayia, good?", "cranberry juice"),
    ],
)
def test_a_guest_on_blood_thinners_asks_before_any_glass(laid: Session, asked: str, thing: str) -> None:
    laid.ask("yiayia's on warfarin")
    answer = laid.ask(asked)
    assert answer.intent == "safety"
    assert answer.say.startswith("Ask or read the label first for Yiayia:")
    assert thing in answer.text
    assert "leafy greens" in answer.text
    assert "cranberry or grapefruit juice" in answer.text


def test_who_drank_with_medicine_is_told_what_to_do_now(laid: Session) -> None:
    laid.ask("yiayia's on warfarin")
    answer = laid.ask("yiayia already had two glasses")
    assert answer.say.startswith("No alcohol for Yiayia: on warfarin.")
    assert "pharmacist or the local medical line now" in answer.text


def test_a_pairing_for_all_stays_one(laid: Session) -> None:
    laid.ask("yiayia's on warfarin")
    assert laid.ask("what goes with the lamb").intent == "wines-for-food"


@pytest.mark.parametrize(
    ("told", "not_hers"),
    [
        ("dipped the baklava tongs in the galaktoboureko, effies had some", "mille-feuille and baklava"),
        ("used the baklava knife on the saganaki and effie's had some of it", "saganaki and baklava"),
        ("the baklava spoon went in the rice pudding and effie ate a bit", "rice pudding and baklava"),
        ("effie just had some baklava", "baklava"),
    ],
)
def test_who_had_what_is_not_theirs_is_watched_first(laid: Session, told: str, not_hers: str) -> None:
    laid.ask("effie is allergic to nuts")
    before = laid.tonight.dishes
    answer = laid.ask(told)
    assert [one["id"] for one in answer.cautions][:2] == [EMERGENCY, EATEN]
    assert "Tell that guest now" in answer.text
    assert f"Not for Effie: {not_hers}." in answer.text
    assert laid.tonight.dishes == before


def test_what_may_be_had_is_no_alarm(laid: Session) -> None:
    laid.ask("effie is allergic to nuts")
    assert not laid.ask("effie had some of the saganaki").cautions
    assert not laid.ask("can effie have some saganaki").cautions


@pytest.mark.parametrize(
    "told", ["dipped the baklava tongs in the galaktoboureko", "stuck the baklava fork in the saganaki"]
)
def test_a_tool_that_went_from_one_food_to_another_lays_no_table(laid: Session, told: str) -> None:
    before = laid.tonight.dishes
    answer = laid.ask(told)
    assert answer.cautions[0]["id"] == "caution/cross-contact"
    assert laid.tonight.dishes == before


@pytest.mark.parametrize(
    ("asked", "thing"),
    [
        ("mia shouldnt have the bean sprouts should she", "bean sprout"),
        ("can mia have the banh xeo", "bánh xèo"),
        ("is pad thai ok for mia", "pad thai"),
    ],
)
def test_raw_sprouts_are_asked_about_in_pregnancy(laid: Session, asked: str, thing: str) -> None:
    laid.ask("mia is pregnant")
    answer = laid.ask(asked)
    assert answer.say.startswith(f"Ask or read the label first for Mia: {thing}.")
    assert answer.cautions[0]["id"] == "caution/raw-sprouts"


@pytest.mark.parametrize("asked", ["can a pregnant guest have raw bean sprouts", "can kids eat bean sprouts"])
def test_raw_sprouts_are_named_where_they_are_asked_of(conversation: Session, asked: str) -> None:
    assert conversation.ask(asked).say.startswith("No raw or lightly cooked sprouts")
