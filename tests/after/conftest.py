"""The demo evening on the table, with a notebook in a folder of the test's own."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.evening.table import set_table
from assistant.knowledge.files import corpus_dir
from assistant.notebook import load
from assistant.session import Session

DEMO = corpus_dir() / "evenings" / "quay-house.toml"


@pytest.fixture
def bare(session: Session, tmp_path: Path) -> Session:
    """A conversation with a notebook and nothing on the table."""
    return Session(session.knowledge, notebook=load(tmp_path / "notebook.ttl"))


@pytest.fixture
def evening(bare: Session) -> Session:
    """The same with the demo evening on the table."""
    set_table(bare, DEMO)
    return bare
