"""What was liked best, by the votes that were noted."""

from __future__ import annotations

import pytest

from assistant.session import Session

ASKED = ["which wine was the favourite", "which was the winner", "who liked what", "what did they like best"]


@pytest.mark.parametrize("asked", ASKED)
def test_the_best_liked_is_said_first_and_all_in_order(evening: Session, asked: str) -> None:
    evening.ask("jen hated the malbec")
    evening.ask("jen loved the pinot noir")
    evening.ask("tom liked the pinot noir")
    answer = evening.ask(asked)
    assert answer.say == "Pinot Noir was liked best."
    first, second = answer.text.split("\n")[1:3]
    assert first.startswith("Pinot Noir: mean 4")
    assert second.startswith("Malbec: ")


def test_without_votes_it_says_so(evening: Session) -> None:
    assert "no votes" in evening.ask("which wine was the favourite").say


@pytest.mark.parametrize("asked", ["what's the vote so far", "the winner?"])
def test_the_vote_so_far_is_told_in_few_words(bare: Session, asked: str) -> None:
    bare.ask("wines: Cava, dry Riesling and Malbec")
    bare.ask("ann and bob liked the riesling, jen liked the cava")
    assert bare.ask(asked).say == "Dry Riesling was liked best."


def test_what_people_made_of_a_wine(bare: Session) -> None:
    bare.ask("wines: Cava, dry Riesling and Malbec")
    bare.ask("ann and bob liked the riesling")
    assert bare.ask("what did people make of the riesling").say == "Dry Riesling was liked by Ann and Bob."
    assert "no votes yet" in bare.ask("what did they think of the malbec").say


@pytest.mark.parametrize(
    ("asked", "each"),
    [
        ("what did it cost per head if I spent 410 on wine n cheese for 18", "22.78"),
        ("I paid 300, 12 of us, how much each", "25.00"),
    ],
)
def test_a_sum_said_is_shared(bare: Session, asked: str, each: str) -> None:
    assert bare.ask(asked).say.startswith(f"{each} a head")


def test_what_one_vote_says_is_told_once(evening: Session) -> None:
    for told in ("jen loved the malbec", "tom liked the pinot noir", "ann hated the riesling"):
        evening.ask(told)
    text = evening.ask("who liked what").text
    assert text.count("from one vote") == 3
    assert text.count("which says nothing by itself") == 1
