"""Which popular claim or trouble is meant is told by what people say."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from assistant.answers.wording import MAX_SPOKEN_WORDS
from assistant.evaluate.read import read_corpus
from assistant.knowledge.store import shipped
from assistant.language.frame import Frame
from assistant.language.parse import Parser
from tests.language.conftest import Parse

KNOWLEDGE = shipped()
PARSER = Parser(KNOWLEDGE)
CLASSES = ("Myth", "Trouble", "Fault")
SUBJECTS = KNOWLEDGE.of_type(*CLASSES)
WAYS = [(s, way) for s in SUBJECTS for way in KNOWLEDGE.entry(s).get("altLabel", ())]


def leaves(check: dict[str, list[Any]]) -> Iterator[str]:
    """The faults a tree of checks ends in."""
    for target in (check["yes"][0], check["no"][0]):
        if isinstance(target, str):
            yield target
        else:
            yield from leaves(target)


def tree(trouble: str) -> list[str]:
    """The faults behind a symptom."""
    return list(leaves(KNOWLEDGE.entry(trouble)["check"][0]))


def test_there_are_many() -> None:
    assert len(KNOWLEDGE.of_type("Myth")) >= 50
    assert len(KNOWLEDGE.of_type("Fault")) >= 50
    assert len(KNOWLEDGE.of_type("Trouble")) >= 12


def read(question: str, intent: str) -> Frame:
    """The frame of a question as one of this intent."""
    return PARSER.entries.told(replace(PARSER.parse(question), intent=intent))


def intent_of(subject: str) -> str:
    """The intent that asks for an entry."""
    return "myth" if subject.startswith("myth/") else "trouble"


@pytest.mark.parametrize(("subject", "way"), WAYS, ids=[way[:50] for _, way in WAYS])
def test_a_way_of_saying_it_reaches_its_entry_and_no_other(subject: str, way: str) -> None:
    assert read(way, intent_of(subject)).entries == (subject,)


@pytest.mark.parametrize("subject", KNOWLEDGE.of_type("Myth"))
def test_a_saying_is_found_by_its_own_name(subject: str) -> None:
    assert read(KNOWLEDGE.label(subject), "myth").entries[:1] == (subject,)


def test_most_of_the_corpus_reaches_an_entry() -> None:
    asked = [q for q in read_corpus().questions if q.intent in ("myth", "trouble")]
    lost = [q.ask for q in asked if not read(q.ask, q.intent).entries]
    assert len(lost) < 0.1 * len(asked), lost


@pytest.mark.parametrize("subject", SUBJECTS)
def test_every_entry_can_be_reached(subject: str) -> None:
    """By a way of saying it, or, for a fault, as the end of a tree of checks."""
    ends = {end for trouble in KNOWLEDGE.of_type("Trouble") for end in tree(trouble)}
    assert KNOWLEDGE.entry(subject).get("altLabel") or subject in ends


def test_language_files_and_knowledge_name_the_same_entries() -> None:
    assert set(PARSER.entries.by_id) <= {*SUBJECTS, *KNOWLEDGE.of_type("Explanation")}
    assert {subject for subject, _ in WAYS} <= set(PARSER.entries.by_id)
    assert set(KNOWLEDGE.of_type("Myth", "Trouble", "Explanation")) <= set(PARSER.entries.by_id)


@pytest.mark.parametrize("row", PARSER.entries.by_id.values(), ids=lambda row: row.id)
def test_a_row_settles_only_topics_that_there_are(row: Any) -> None:
    assert row.settles <= set(PARSER.topics.by_id)
    entry = KNOWLEDGE.entry(row.id)
    assert "emergency" not in row.settles or "emergency number" in entry["say"][0].lower()


@pytest.mark.parametrize("subject", SUBJECTS)
def test_what_is_said_fits_into_a_breath(subject: str) -> None:
    assert len(KNOWLEDGE.entry(subject)["say"][0].split()) <= MAX_SPOKEN_WORDS


@pytest.mark.parametrize("subject", KNOWLEDGE.of_type("Myth", "Fault"))
def test_sources_exist_and_published_ones_were_read(subject: str) -> None:
    entry = KNOWLEDGE.entry(subject)
    sources = [KNOWLEDGE.entry(source) for source in entry["source"]]
    assert all("Source" in source["type"] for source in sources)
    assert entry["restsOn"] != ["published"] or all(source["read"] == [True] for source in sources)


@pytest.mark.parametrize("trouble", KNOWLEDGE.of_type("Trouble"))
def test_a_tree_of_checks_ends_in_faults_the_likeliest_among_them(trouble: str) -> None:
    ends = tree(trouble)
    assert len(set(ends)) == len(ends) > 1
    assert set(ends) <= set(KNOWLEDGE.of_type("Fault"))
    assert KNOWLEDGE.entry(trouble)["likeliest"][0] in ends


@pytest.mark.parametrize(
    "question", ["what does corked mean", "what goes with dark chocolate", "what are legs"]
)
def test_other_questions_carry_no_entries(question: str) -> None:
    frame = PARSER.parse(question)
    assert (frame.entries, frame.nearest) == ((), ())


@pytest.mark.parametrize(
    ("question", "intent", "nearest"),
    [
        ("do tears taste of salt", "myth", "myth/legs"),
        ("my corkscrew has a wobbly handle", "trouble", "fault/no-corkscrew"),
    ],
)
def test_what_is_not_known_has_near_ones(question: str, intent: str, nearest: str) -> None:
    frame = read(question, intent)
    assert frame.entries == ()
    assert nearest in frame.nearest
    assert len(frame.nearest) <= 3


def test_nothing_is_near_words_that_no_entry_has() -> None:
    assert read("is it true that cats sing", "myth").nearest == ()


def test_words_may_stand_in_any_order_and_far_apart() -> None:
    told = read("spoon, my gran always said, was what one put into the neck of a good old champagne", "myth")
    assert told.entries == ("myth/spoon",)


def test_words_of_a_saying_are_not_left_out() -> None:
    plain = PARSER.parse("deeper the punt the better the wine they told me")
    assert "punt" not in plain.text.left_out
    assert plain.entries == ("myth/punt",)


def test_a_doubted_fault_is_told_as_one() -> None:
    assert read("is it true that wet cardboard smell means corked", "myth").entries == ("fault/cork-taint",)


def test_a_settled_topic_is_gone_and_an_emergency_stays() -> None:
    settled = "does coffee sober you up"
    assert "too-much" in PARSER.topics.by_id
    assert read(settled, "myth").topics == ()
    assert "emergency" in read("the cork broke and he fainted", "trouble").topics
    assert read("the cork broke and a guest is choking", "trouble").entries[0] == "fault/choking"


def test_a_cause_says_more_than_its_symptom() -> None:
    assert read("my wine smells funny, smells of wet dog", "trouble").entries == ("fault/cork-taint",)


def test_two_troubles_in_one_breath_are_both_told() -> None:
    found = read("half the guests are late and the Brie has melted over the slate", "trouble").entries
    assert set(found) == {"fault/guest-late", "fault/cheese-warm"}


@pytest.mark.parametrize(
    ("text", "term"),
    [
        ('Somebody wrote "brut nature" on the list. What it means?', "term/brut-nature"),
        ("what is mean tannin", "term/tannin"),
        ("the bottle says reserva. what that means", "term/reserva"),
    ],
)
def test_the_meaning_of_a_word_asked_in_other_word_order(parse: Parse, text: str, term: str) -> None:
    frame = parse(text)
    assert (frame.intent, frame.terms) == ("define", (term,))


@pytest.mark.parametrize(
    "text",
    [
        "Just so you know, pachamorra is a stew with beef, corn and mint.",
        "fyi pachamorra is a stew with beef",
        "For your information, pachamorra is a stew with beef.",
    ],
)
def test_what_is_told_for_information_is_taught(parse: Parse, text: str) -> None:
    assert parse(text).intent == "teach"
