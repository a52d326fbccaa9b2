"""Fixtures for the tests of an evening."""

from __future__ import annotations

import pytest

from assistant.pairing.engine import Engine
from assistant.session import Session


@pytest.fixture(scope="session")
def engine(session: Session) -> Engine:
    """The engine on the shipped knowledge."""
    return session.engine
