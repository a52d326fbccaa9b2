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
