"""Conversations with a notebook and its log of answers in a folder of the test's own."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.notebook import load
from assistant.opening import noting
from assistant.session import Session
from tests.taught.told import Talk


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A notebook that does not exist yet."""
    return tmp_path / "notebook.ttl"


@pytest.fixture
def log(file: Path) -> Path:
    """Where the answers of a conversation with that notebook are noted."""
    return file.with_name("notebook-answers.jsonl")


@pytest.fixture
def talk(file: Path, session: Session) -> Talk:
    """Opens a conversation with the notebook as it is in the file; its answers are noted."""
    return lambda: noting(Session(session.knowledge, notebook=load(file)), file)
