"""A bare why after something was explained goes on from there; nothing of the pair that stands is told."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.fixture
def tasting(session: Session) -> Session:
    session.new_conversation()
    session.ask("the wines are Sancerre, Marlborough Sauvignon Blanc, red Burgundy and Oregon Pinot Noir")
    session.ask("on the table: goat cheese and mushroom tart")
    session.ask("does the sancerre go with the goat cheese")
    return session


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        ("Jeanette's asking why does the second one smell like grass and the first one doesn't", "leafy"),
        ("Jeanette says why is the oregon one darker than the burgundy", "darker red"),
        ("ok and why does pinot from two places taste different anyway", "More sun"),
    ],
)
@pytest.mark.parametrize("on", ["why", "but why though", "how come?"])
def test_the_why_behind_it_is_told(tasting: Session, asked: str, says: str, on: str) -> None:
    first = tasting.ask(asked)
    assert says in first.say
    deeper = tasting.ask(on)
    assert deeper.say == first.text.splitlines()[1]
    assert "Sancerre:" not in deeper.text


def test_a_pair_is_still_asked_deeper(tasting: Session) -> None:
    assert tasting.ask("why").verdict
    assert "For:" in tasting.ask("why").text
