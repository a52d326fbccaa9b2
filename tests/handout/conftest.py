"""The demo evening planned once for all tests of the sheets."""

from __future__ import annotations

import json
from typing import Any

import pytest

from assistant.evening.plan import plan
from assistant.evening.read import read_evening
from assistant.handout.page import sheets
from assistant.knowledge.files import corpus_dir
from assistant.session import Session
from tests.handout.made import NOW

Plan = dict[str, Any]


@pytest.fixture(scope="session")
def demo(session: Session) -> Plan:
    """The record of the example evening, as a program would read it."""
    evening = read_evening(corpus_dir() / "evenings" / "quay-house.toml", session, NOW)
    found: Plan = json.loads(json.dumps(plan(evening, session)))
    return found


@pytest.fixture(scope="session")
def page(demo: Plan) -> str:
    """Its sheets."""
    return sheets(demo, NOW)
