"""A food that is not on the table and fights a wine: what a guest may try at home."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from assistant.evening.choose_make import matches_of
from assistant.evening.records import WineLine
from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.pairing.dish import single, table_of
from assistant.pairing.engine import Engine
from assistant.pairing.match import Match
from assistant.pairing.score import DISLIKED


@lru_cache(maxsize=1)
def usual_foes() -> tuple[str, ...]:
    """The foods of corpus/planning/foes.toml. Raises KnowledgeError where it cannot be read."""
    return tuple(read_data(corpus_dir() / "planning" / "foes.toml", lambda tables: list(tables["foods"])))


def foes(lines: Sequence[WineLine], engine: Engine) -> dict[str, tuple[str, Match]]:
    """By label of a wine the food that hurts it most, another one for each wine where there are enough.

    A wine that none of them hurts is left out.
    """
    wines = list(dict.fromkeys(line.wine for line in lines))
    rows = matches_of([table_of([single(food)]) for food in usual_foes()], wines, engine)
    tasted = dict(zip(usual_foes(), rows, strict=True))
    found: dict[str, tuple[str, Match]] = {}
    for line in lines:
        bad = {food: row[line.wine] for food, row in tasted.items() if row[line.wine].verdict in DISLIKED}
        named = {food for food, _ in found.values()}
        food = min(bad, key=lambda food: (food in named, bad[food].score), default=None)
        found |= {line.label: (food, bad[food])} if food is not None else {}
    return found
