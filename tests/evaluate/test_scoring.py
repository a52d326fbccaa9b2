"""Scoring: questions whose reading is certain, with labels that are right, wrong, short or too long."""

from __future__ import annotations

import pytest

from assistant.evaluate.corpus import Dialogue, Question, Refusal, Turn
from assistant.evaluate.figures import below, confusions, of_questions
from assistant.evaluate.naming import Namer
from assistant.evaluate.outcome import Outcome, outcome
from assistant.evaluate.slots import Score
from assistant.evaluate.talks import converse, refuse
from assistant.session import Session

RIGHT, MISSED, EXTRA = Score(1, 0, 0), Score(0, 1, 0), Score(0, 0, 1)


@pytest.fixture(scope="module")
def namer(session: Session) -> Namer:
    """Looks up the names of the labels."""
    return Namer(session.parser.lexicon, session.knowledge)


def put(session: Session, namer: Namer, ask: str, intent: str = "wines-for-food", **labels: str) -> Outcome:
    """The outcome of a question; labels are words with commas between them."""
    lists = {slot: tuple(names.split(", ")) for slot, names in labels.items()}
    return outcome(Question("q", ask, intent, "own", **lists), session, namer)


def test_two_names_of_one_food_are_the_same(session: Session, namer: Namer) -> None:
    for name in ("prawn", "shrimp", "prawns"):
        got = put(session, namer, "what wine goes with prawns", foods=name)
        assert got.slots["foods"] == RIGHT
        assert got.frame_right


def test_a_wrong_label_is_missed_and_what_was_read_is_extra(session: Session, namer: Namer) -> None:
    got = put(session, namer, "what wine goes with prawns", foods="salmon")
    assert got.slots["foods"] == MISSED + EXTRA
    assert got.intent_right
    assert not got.frame_right


def test_a_question_taken_for_another_has_no_right_frame(session: Session, namer: Namer) -> None:
    got = put(session, namer, "what wine goes with prawns", intent="plan", foods="prawn")
    assert (got.intent, got.intent_right, got.frame_right) == ("wines-for-food", False, False)
    assert confusions([got, got]) == [("plan", "wines-for-food", 2)]


def test_a_kind_beside_its_member_counts_neither_way(session: Session, namer: Namer) -> None:
    got = put(session, namer, "what wine goes with cheese: brie", foods="brie")
    assert got.slots["foods"] == RIGHT


def test_a_red_as_wine_or_as_limit_is_one_reading(session: Session, namer: Namer) -> None:
    asked = "does red go with fish"
    assert put(session, namer, asked, "judge-pair", foods="fish", wines="red wine").frame_right
    got = put(session, namer, "a red for salmon", foods="salmon", limits="red")
    assert got.slots["limits"] == RIGHT


def test_a_ban_is_not_a_wish(session: Session, namer: Namer) -> None:
    asked = "what wine for salmon, no chardonnay"
    assert put(session, namer, asked, foods="salmon", limits="no Chardonnay").slots["limits"] == RIGHT
    assert put(session, namer, asked, foods="salmon", limits="Chardonnay").slots["limits"] == MISSED + EXTRA


def test_limits_count_only_where_a_wine_is_chosen(session: Session, namer: Namer) -> None:
    assert put(session, namer, "dry wine for salmon", foods="salmon").slots["limits"] == EXTRA
    assert put(session, namer, "is fino dry", "describe", wines="fino").slots["limits"] == Score()


def test_an_unknown_name_must_be_told(session: Session, namer: Namer) -> None:
    asked = "what wine goes with salmon and qworvik"
    told = put(session, namer, asked, foods="salmon", unknown="qworvik")
    assert (told.untold, told.false_reports, told.frame_right) == ((), (), True)
    assert put(session, namer, asked, foods="salmon").false_reports == ("qworvik",)
    assert put(session, namer, asked, foods="salmon", unknown="dish").untold == ("dish",)


def test_a_mark_is_out_of_date_once_the_knowledge_has_the_name(session: Session, namer: Namer) -> None:
    got = put(session, namer, "what wine goes with salmon", foods="salmon", unknown="salmon")
    assert (got.outdated, got.untold) == (("salmon",), ())


def test_part_of_an_unknown_name_may_be_read(session: Session, namer: Namer) -> None:
    got = put(session, namer, "wine for salmon qworvik", unknown="salmon qworvik")
    assert got.slots["foods"] == Score()
    assert got.frame_right


def test_a_dropped_wish_is_seen(session: Session, namer: Namer) -> None:
    asked = "wine for salmon please hurry and qworvik"
    assert put(session, namer, asked, foods="salmon", wishes="hurry").dropped == ("hurry",)
    assert put(session, namer, asked, foods="salmon", wishes="qworvik").dropped == ()


def test_a_repair_is_false_where_another_thing_was_meant(session: Session, namer: Namer) -> None:
    asked = "what wine goes with sammon"
    assert put(session, namer, asked, foods="salmon").false_repairs == ()
    assert put(session, namer, asked, unknown="sammon").false_repairs == ("sammon > salmon",)


def test_figures_add_up(session: Session, namer: Namer) -> None:
    right = put(session, namer, "what wine goes with prawns", foods="prawn")
    wrong = put(session, namer, "what wine goes with prawns", intent="plan", foods="salmon")
    figures = of_questions([right, wrong])
    assert (figures["intent"], figures["frame"]) == (0.5, 0.5)
    assert (figures["foods_precision"], figures["foods_recall"], figures["foods_f1"]) == (0.5, 0.5, 0.5)
    assert "told" not in figures


def test_floors_tell_what_is_below_above_and_missing() -> None:
    floors = {"at-least": {"intent": 0.9, "frame": 0.1}, "at-most": {"false_reports": 0.2, "told": 1.0}}
    assert below({"intent": 0.8, "frame": 0.1, "false_reports": 0.3}, floors) == [
        "intent is 0.800, and should be 0.9 or more",
        "false_reports is 0.300, and should be 0.2 or less",
        "told is not measured, and should be 1 or less",
    ]


def test_a_conversation_is_checked_turn_by_turn(session: Session, namer: Namer) -> None:
    turns = (
        Turn("what wine goes with salmon", "wines-for-food", present=("salmon",)),
        Turn("what about a red?", "wines-for-food", present=("salmon",), limits=("red wine",)),
        Turn("anything else?", "wines-for-food", absent=("salmon",), no_limits=("red wine",), fresh=True),
        Turn("why?", "plan", also=("why",), wines=("retsina",), pick=1),
    )
    got = list(converse(Dialogue("d", "own", turns), session, namer))
    assert [t.right for t in got] == [True, True, False, False]
    assert got[2].faults == ("salmon is still there", "red wine still limits")
    assert got[3].intent_right
    assert got[3].faults == ("retsina is not the wine",)
    assert [t.id for t in got] == ["d.1", "d.2", "d.3", "d.4"]


def test_a_refusal_is_right_where_nothing_is_recommended(session: Session) -> None:
    assert refuse(Refusal("r", "what is the capital of France", "geography"), session).right
    assert not refuse(Refusal("r", "what wine goes with salmon", "wine"), session).right
