"""Fixtures of the language tests."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.language.frame import Frame
from assistant.language.parse import Parser
from assistant.session import Session

Parse = Callable[[str], Frame]


@pytest.fixture(scope="session")
def parser(session: Session) -> Parser:
    """The parser on the shipped knowledge and language files."""
    return session.parser


@pytest.fixture(scope="session")
def parse(parser: Parser) -> Parse:
    """Reads one question."""
    return parser.parse
