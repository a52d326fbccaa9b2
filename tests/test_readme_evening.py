"""The demo evening of the README goes as it is written there."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import pytest

from assistant.evening.plan import plan
from assistant.evening.read import read_evening
from assistant.evening.table import set_table
from assistant.evening.text import text
from assistant.session import Session
from assistant.tonight import Tonight

ROOT = Path(__file__).parents[1]
DEMO = ROOT / "corpus" / "evenings" / "quay-house.toml"
NOW = datetime(2027, 1, 20, 12).astimezone()
ASKED = "you › "


def _blocks() -> list[str]:
    section = (ROOT / "README.md").read_text("utf-8").split("### The demo evening", 1)[1]
    return re.findall(r"```text\n(.*?)```", section.split("\n## ", 1)[0], re.DOTALL)


@pytest.fixture
def table(session: Session) -> Iterator[Session]:
    """The demo evening on the table."""
    set_table(session, DEMO)
    session.new_conversation()
    yield session
    session.lay(Tonight())
    session.new_conversation()


def test_the_plan_begins_as_shown(session: Session) -> None:
    evening = read_evening(DEMO, session, NOW)
    assert text(evening, plan(evening, session)).startswith(_blocks()[0].rstrip("\n"))


def test_the_talk_goes_as_shown(table: Session) -> None:
    turns = _blocks()[1].split(ASKED)[1:]
    assert len(turns) == 3
    for turn in turns:
        question, _, answer = turn.partition("\n")
        assert table.ask(question).text == answer.rstrip("\n")
