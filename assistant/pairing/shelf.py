"""Stores of glasses or plates that many questions share, because putting them in costs a third of a run.

What one question adds is taken out again, whatever happens; a throw-away shelf serves anything else.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from threading import Lock

import pyoxigraph as ox

from assistant.pairing.facts import glass_facts, plate_facts
from assistant.pairing.glass import Glass
from assistant.pairing.plate import Plate


class Shelf:
    """A store of the glasses or plates that many questions share; what is asked stays for its run only."""

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


def plate_quads(plates: Mapping[str, Plate]) -> list[ox.Quad]:
    """All facts of these plates."""
    return [quad for key, plate in plates.items() for quad in plate_facts(key, plate)]
