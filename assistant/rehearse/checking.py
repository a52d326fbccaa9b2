"""The conflicts of notebooks for `goeswith check`: of all together, for hosts may differ between files."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from assistant.answers.wording import Wording
from assistant.evening.facts import fact
from assistant.knowledge.store import shipped
from assistant.notebook import load, standing
from assistant.pairing.engine import Engine
from assistant.rehearse.conflict_words import told_of
from assistant.rehearse.conflicts import by_wine, conflicts
from assistant.taught.overlay import overlay_of


def at_odds(notebooks: Sequence[Path]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """A sentence for each conflict, in the order of its kind, and what was left out of the search.

    Foods are tasted as was taught.
    """
    engine, wording = Engine(shipped()), Wording()
    told = [one for file in notebooks for one in standing(load(file).statements)]
    told.sort(key=lambda one: one.when)
    engine.heed(overlay_of(told, engine.knowledge).amounts)
    found = tuple(told_of(conflict, engine.knowledge, wording) for conflict in conflicts(told, engine))
    most, wines = int(fact("rehearse", "conflict", "wines").high), len(by_wine(told, engine))
    return found, (wording("rehearse", "not-all", most=most, count=wines),) if wines > most else ()
