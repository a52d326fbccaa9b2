"""A session that is dropped takes its reader along: nothing keeps it in memory."""

from __future__ import annotations

import weakref

from assistant.session import Session


def test_a_reader_goes_with_its_session(session: Session) -> None:
    other = Session(session.knowledge)
    other.ask("what goes with Brie")
    reader = weakref.ref(other.parser)
    del other
    assert reader() is None
