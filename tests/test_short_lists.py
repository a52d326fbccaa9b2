"""A short list of wines, as a host says it aloud, names no wine that spoils the dish."""

from __future__ import annotations

import pytest

from assistant.pairing.dish import table_of
from assistant.pairing.score import DISLIKED
from assistant.session import Session
from tests.tables import poured

TABLE = ("wine/gavi", "wine/barolo", "wine/ruby-port")


@pytest.mark.parametrize("food", ["oysters", "grilled sea bass", "asparagus"])
def test_next_names_none_that_hurts(session: Session, food: str) -> None:
    with poured(session, *TABLE):
        answer = session.ask(f"what goes with {food}")
        assert session.talk is not None
        judged = {wine: session.engine.judge(table_of(session.talk.frame.dishes), wine) for wine in TABLE}
    poor = [session.knowledge.label(wine) for wine in TABLE[1:] if judged[wine].verdict in DISLIKED]
    assert poor
    following = [line for line in answer.text.splitlines() if line.startswith("Next:")]
    assert not [name for name in poor if name in "".join(following)]
