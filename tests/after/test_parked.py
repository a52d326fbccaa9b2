"""Questions put aside are listed and answered in turn, with what stood then."""

from __future__ import annotations

import copy

from assistant.session import Session


def test_that_question_is_the_one_asked_last(evening: Session) -> None:
    evening.ask("does malbec go with brie")
    assert evening.ask("park that question").say == "Noted."
    (kept,) = evening.taught.told()
    assert (kept.kind, kept.value["question"]) == ("parked", "does malbec go with brie")
    assert set(kept.about) == {"wine/malbec", "food/brie"}


def test_a_question_with_its_guest(evening: Session) -> None:
    evening.ask("park Mo's question: is the brie made from raw milk")
    evening.ask("jen asked about the riesling with almonds - park it")
    first, second = (one.value for one in evening.taught.told())
    assert (first["guest"], first["question"]) == ("Mo", "is the brie made from raw milk")
    assert (second["guest"], second["question"]) == ("Jen", "the riesling with almonds")


def test_a_question_is_parked_by_what_it_is_about(evening: Session) -> None:
    asked = "why does the malbec taste metallic with the brie"
    evening.ask(asked)
    for said in ("park that q about metallic malbec", "park that question about the brie"):
        evening.ask(said)
    evening.ask("park that question about pinot noir")
    evening.ask("park Mo's question about why port is sweet")
    kept = [one.value["question"] for one in evening.taught.told()]
    assert kept == [asked, asked, "what about pinot noir", "why port is sweet"]
    first = evening.ask("answer the parked ones").text
    assert "I cannot answer that" not in first.splitlines()[0]


def test_they_are_listed_and_answered_in_turn(evening: Session) -> None:
    said = evening.ask("does malbec go with brie").say
    evening.ask("park that question")
    evening.ask("park this: does pinot noir go with salami")
    listed = evening.ask("what did we park")
    assert listed.say == "2 questions are parked, the first: does malbec go with brie?"
    assert "does pinot noir go with salami" in listed.text
    answer = evening.ask("answer the parked ones")
    assert answer.say == f"Does malbec go with brie? {said}"
    assert [record["intent"] for record in answer.also] == ["judge-pair", "judge-pair"]


def test_a_follow_up_is_answered_with_what_stood_then(evening: Session) -> None:
    evening.ask("what goes with brie")
    then = evening.ask("what about a red?").say
    evening.ask("park that question")
    evening.ask("what goes with oysters")
    answer = evening.ask("answer the parked ones")
    assert answer.say == f"What about a red? {then}"
    assert evening.ask("and a white?").picks  # what stood before stands still


def test_answering_keeps_nothing_new(evening: Session) -> None:
    evening.ask("jot down table two asked about decaf")
    before = evening.taught.told()
    evening.ask("answer the parked ones")
    assert evening.taught.told() == before


def test_nothing_is_parked(evening: Session) -> None:
    assert evening.ask("what did we park").say.startswith("Nothing is parked")


def test_one_question_is_answered_once(evening: Session) -> None:
    evening.ask("park that, someone asked why crémant isn't champagne")
    answer = evening.ask("answer the parked one")
    assert answer.text.count("comes above all from Alsace") == 1


def test_whose_needs_were_spoken_of_stays_while_parked_questions_are_answered(bare: Session) -> None:
    bare.ask("is the brie safe when pregnant?")
    bare.ask("park that question")
    for typed in ("Jo is allergic to nuts", "the board is brie and almonds", "what can she have"):
        bare.ask(typed)
    bare.ask("answer the parked ones")
    assert bare.ask("and the almonds?").say.startswith("Not for Jo")


def test_a_table_is_taken_back_after_parked_questions_are_answered(bare: Session) -> None:
    bare.ask("what goes with brie")
    bare.ask("park that question")
    bare.ask("got a Syrah and a Riesling")
    bare.ask("answer the parked ones")
    bare.ask("undo")
    assert bare.tonight.wines == ()


def test_a_text_with_the_answer_to_a_parked_question_forgets_nothing_of_the_talk(evening: Session) -> None:
    evening.ask("park Mo's question: does malbec go with brie")
    evening.ask("got a Syrah and a Riesling")
    before, spoken = evening.tonight, copy.deepcopy(evening.spoken)
    evening.ask("write mo's message, he liked the malbec, make it warm")
    assert (evening.tonight, evening.spoken) == (before, spoken)
    evening.ask("undo")
    assert evening.tonight != before


def test_a_stop_before_the_question_is_no_part_of_it(evening: Session) -> None:
    evening.ask("park that question, why is port sweet")
    assert evening.taught.told()[-1].value["question"] == "why is port sweet"
