"""Lists written for a test."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.session import Session
from assistant.stock.reading import read_stock
from assistant.stock.records import Stock

Read = Callable[[str | bytes], Stock]


@pytest.fixture
def read(tmp_path: Path, session: Session) -> Read:
    """Reads a list out of these characters or bytes."""

    def of(text: str | bytes) -> Stock:
        file = tmp_path / "list.csv"
        file.write_bytes(text.encode() if isinstance(text, str) else text)
        return read_stock(file, session.knowledge, session.parser)

    return of
