"""Votes told in talk, held against what the book said."""

from __future__ import annotations

from dataclasses import replace

import pytest

from assistant.session import Session


def cast(session: Session) -> list[tuple[str, tuple[str, ...], str]]:
    """Guest, things and band of every vote kept."""
    votes = [one for one in session.taught.told() if one.kind == "vote"]
    return [(str(v.value.get("guest", "")), v.about, str(v.value["verdict"])) for v in votes]


@pytest.mark.parametrize(
    ("said", "votes"),
    [
        (
            "jen loved 2, hated 4",
            [("Jen", ("wine/off-dry-riesling",), "band/good"), ("Jen", ("wine/malbec",), "band/poor")],
        ),
        (
            "tom and priya really liked the malbec",
            [("Tom", ("wine/malbec",), "band/good"), ("Priya", ("wine/malbec",), "band/good")],
        ),
        ("mo gave the pinot noir 2 out of 5", [("Mo", ("wine/pinot-noir",), "band/poor")]),
        ("Ewa has loved the second", [("Ewa", ("wine/off-dry-riesling",), "band/good")]),
        ("Bo rated the malbec 4", [("Bo", ("wine/malbec",), "band/good")]),
        (
            "Bo rated the riesling 2, malbec 3",
            [("Bo", ("wine/off-dry-riesling",), "band/poor"), ("Bo", ("wine/malbec",), "band/neutral")],
        ),
        ("bo rated the malbec 2", [("Bo", ("wine/malbec",), "band/poor")]),
        ("Bo scored the riesling 5", [("Bo", ("wine/off-dry-riesling",), "band/strong")]),
        ("Priya: malbec 5/5", [("Priya", ("wine/malbec",), "band/strong")]),
        ("aoife's favourite was the riesling", [("Aoife", ("wine/off-dry-riesling",), "band/good")]),
        ("jen liked the off-dry", [("Jen", ("wine/off-dry-riesling",), "band/good")]),
        ("Mo didn't like the malbec", [("Mo", ("wine/malbec",), "band/poor")]),
        ("everyone loved the brie with the malbec", [("", ("food/brie", "wine/malbec"), "band/good")]),
    ],
)
def test_who_thought_what(evening: Session, said: str, votes: list[tuple[str, tuple[str, ...], str]]) -> None:
    assert evening.ask(said).say == "Noted."
    assert cast(evening) == votes


def test_hits_and_misses(evening: Session) -> None:
    evening.ask("jen loved 2, hated 4")
    evening.ask("tom loved 2")
    answer = evening.ask("did they agree with us")
    assert answer.say == "1 of 2 went as we said."
    assert "Hit: off-dry Riesling, we said fair; mean 4.0 of 5 from 2 votes, ± 1.4." in answer.text
    assert "Miss: Malbec, we said fair; 2 of 5 from one vote" in answer.text
    assert "off-dry Riesling: the book at 3.5 and 2 votes at 4.0 make 3.5" in answer.text.replace(
        "Off", "off"
    )
    assert "2 votes are too few to change a rule." in answer.text
    assert "half the guests in one order" in answer.text


def test_who_votes_again_changes_the_vote(evening: Session) -> None:
    evening.ask("jen hated the malbec")
    evening.ask("jen loved the malbec")
    text = evening.ask("did they agree with us").text
    assert "Malbec, we said fair; 4 of 5 from one vote" in text


def test_another_evening_has_votes_of_its_own(evening: Session) -> None:
    evening.ask("jen loved 2")
    evening.tonight = replace(evening.tonight, title="Another one")
    assert "no votes" in evening.ask("did they agree with us").say


@pytest.mark.parametrize(
    ("said", "starts"),
    [
        ("is n=9 enough to change the rule", "No: 9 votes pin the mean down to ± 0.7 only."),
        ("is one vote enough to change the rule", "No: one vote is an anecdote."),
        ("are 40 votes enough to change the rule", "Enough to lean on: 40 votes pin the mean down to ± 0.3."),
        ("how many votes do we need to change a rule", "16 votes for ± 0.5 on five points"),
    ],
)
def test_whether_so_many_are_enough(bare: Session, said: str, starts: str) -> None:
    answer = bare.ask(said)
    assert answer.say.startswith(starts)
    assert answer.intent == "note"


def test_nine_votes_weigh_a_quarter_beside_the_book(bare: Session) -> None:
    assert f"they have {100 * 9 / 34:.0f} % of the say" in bare.ask("is n=9 enough to change the rule").text


def test_a_pair_again_is_answered_with_its_votes(evening: Session) -> None:
    plain = evening.ask("brie + malbec again??")
    assert plain.verdict  # nobody voted: the book alone
    evening.ask("everyone loved the brie with the malbec")
    answer = evening.ask("brie + malbec again??")
    assert answer.say == f"Yes, again: we say {plain.verdict}, and 12 of 12 liked it."


def test_without_votes_or_notebook_it_is_said(evening: Session, session: Session) -> None:
    assert not evening.ask("did they agree with us").understood
    session.new_conversation()
    assert "no notebook" in session.ask("did they agree with us").say


def test_who_liked_what_is_told_and_not_noted(evening: Session) -> None:
    assert "has no votes yet" in evening.ask("who liked the malbec").say
    assert evening.taught.told() == ()
    evening.ask("Kim loved the malbec")
    evening.ask("Bo hated the malbec")
    kept = evening.taught.told()
    answer = evening.ask("who liked the malbec")
    assert answer.say == "Malbec was liked by Kim."
    assert "Malbec was not liked by Bo." in answer.text
    assert evening.taught.told() == kept


@pytest.mark.parametrize(
    "asked", ["she asks about the salami too", "Kim wants to know about the malbec", "why was Bo unhappy?"]
)
def test_a_text_that_asks_is_not_noted(evening: Session, asked: str) -> None:
    assert evening.ask(asked).intent != "note"
    assert evening.taught.told() == ()


def test_what_was_noted_is_shown(evening: Session) -> None:
    evening.ask("note: buy more bread next time")
    assert "buy more bread next time" in evening.ask("show me my notes").text


def test_a_wine_that_is_not_poured_is_none_of_another_colour(evening: Session) -> None:
    evening.ask("skip the pinot")
    evening.ask("Jen loved the pinot")
    assert [about for _, about, _ in cast(evening)] == [("wine/pinot-noir",)]


def test_everybody_counts_as_all_guests(evening: Session) -> None:
    answer = evening.ask("everybody loved the malbec best")
    assert "Everybody liked Malbec." in answer.text
    vote = next(one for one in evening.taught.told() if one.kind == "vote")
    assert (vote.value["votes"], vote.value.get("guest")) == (12, None)


@pytest.mark.parametrize("said", ["tom says 4 out of 5 for the malbec", "tom said malbec 4 out of 5"])
def test_who_says_the_points_is_named(evening: Session, said: str) -> None:
    evening.ask(said)
    assert cast(evening) == [("Tom", ("wine/malbec",), "band/good")]


def test_everything_is_every_wine_of_the_table(evening: Session) -> None:
    evening.ask("linda hated everything")
    assert cast(evening) == [("Linda", evening.tonight.wines, "band/poor")]
    evening.ask("jen loved everything but the malbec")
    assert len(cast(evening)) == 1
