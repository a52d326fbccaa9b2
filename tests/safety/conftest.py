"""The command line run in the process of the test."""

from __future__ import annotations

import io
import sys
from collections.abc import Callable

import pytest

from assistant import cli

Out = tuple[str, str]
Main = Callable[..., Out]


@pytest.fixture
def main(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Main:
    """Runs the command line in this process; what it printed on standard output and standard error."""

    def run(*arguments: str, typed: str = "") -> Out:
        codes: list[object] = []
        monkeypatch.setattr(sys, "stdin", io.StringIO(typed))
        try:
            cli.main(arguments)
        except SystemExit as left:
            codes.append(left.code)
        assert codes in ([], [0], [2])
        return tuple(capsys.readouterr())  # type: ignore[return-value]

    return run
