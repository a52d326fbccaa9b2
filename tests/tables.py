"""What lies on the table of a session, and a table for one test that is cleared behind it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from assistant.session import Session
from assistant.table.tonight import Tonight


def mains(session: Session) -> list[str]:
    """The food of each dish on the table, in its order."""
    return [dish.main.food for dish in session.tonight.dishes]


@contextmanager
def poured(session: Session, *wines: str) -> Iterator[Session]:
    """The session with these wines on the table, nothing to eat and nothing said before."""
    session.lay(Tonight(wines))
    session.new_conversation()
    yield session
    session.lay(Tonight())
    session.new_conversation()
