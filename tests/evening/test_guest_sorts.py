"""Whether something is asked for a guest, whatever a line is taken for."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.mark.parametrize(
    "asked",
    ["can Tom have the zinfandel", "could Tom try the port first", "the port is open, can Tom taste it"],
)
def test_what_somebody_may_have_is_no_pour_order(conversation: Session, asked: str) -> None:
    for line in ("wines: zinfandel, port. foods: brie", "Tom is driving"):
        conversation.ask(line)
    answer = conversation.ask(asked)
    assert answer.intent == "safety"
    assert answer.say.startswith("Not for Tom: ")
