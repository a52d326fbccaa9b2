"""Stores of glasses that many questions share, because putting them in costs more than asking.

What one question adds is taken out again, whatever happens; a throw-away shelf serves anything else.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from threading import Lock

import pyoxigraph as ox

from assistant.pairing.facts import glass_facts
from assistant.pairing.glass import Glass


class Shelf:
    """A store of the glasses that many questions share; what is asked stays for its run only."""

    def __init__(self, facts: Iterable[ox.Quad]) -> None:
        self.store = ox.Store()
        self.store.extend(facts)
        self._lock = Lock()

    @contextmanager
    def with_facts(self, facts: Sequence[ox.Quad]) -> Iterator[ox.Store]:
        """The store with these facts in it, one question at a time."""
        with self._lock:
            self.store.extend(facts)
            try:
                yield self.store
            finally:
                for quad in facts:
                    self.store.remove(quad)


def glass_quads(glasses: Iterable[Glass]) -> list[ox.Quad]:
    """All facts of these glasses."""
    return [quad for glass in glasses for quad in glass_facts(glass)]
