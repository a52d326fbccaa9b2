"""Saves killed at system calls: a smaller run of `python -m tests.notebook_kills`."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.notebook import disk
from tests.notebook_kills import available, kills

WHY = available()
pytestmark = pytest.mark.skipif(bool(WHY), reason=WHY)


def test_forty_kills_lose_nothing(tmp_path: Path) -> None:
    killed, where, faults = kills(40, tmp_path)
    assert faults == []
    assert killed == 40
    assert len(where) > 8


def test_kills_find_a_save_that_writes_in_place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(disk, "write_whole", lambda target, data: target.write_bytes(data))
    assert kills(40, tmp_path)[2]


def test_kills_find_a_save_that_is_told_too_early(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(disk, "write_whole", lambda target, data: None)
    assert any("lost" in fault for fault in kills(5, tmp_path)[2])
