"""A session that is dropped takes all of its reading along: nothing keeps it in memory."""

from __future__ import annotations

import weakref

from assistant.language.remembering import remembered
from assistant.session import Session


def test_what_reads_goes_with_its_session(session: Session) -> None:
    other = Session(session.knowledge)
    other.ask("what goes with Brie")
    other.ask("a nise shar donnay with garlick mushrom tart")  # heard, spelt and completed names
    kept = [weakref.ref(part) for part in (other.parser, other.parser.lexicon)]
    del other
    assert [part() for part in kept] == [None, None]


class _Counts:
    def __init__(self) -> None:
        self.asked = 0
        self.kept = remembered(self._double, 2)

    def _double(self, number: int) -> int:
        self.asked += 1
        return 2 * number


def test_what_is_remembered_is_worked_out_once_and_keeps_nobody() -> None:
    counts = _Counts()
    assert [counts.kept(n) for n in (1, 1, 2, 1)] == [2, 2, 4, 2]
    assert counts.asked == 2
    gone = weakref.ref(counts)
    del counts
    assert gone() is None
