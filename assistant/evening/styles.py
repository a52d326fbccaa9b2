"""A wine's style in three words: how sweet, what stands out, which colour."""

from __future__ import annotations

from functools import lru_cache

from assistant.evening.facts import Row
from assistant.knowledge.files import corpus_dir
from assistant.knowledge.store import Knowledge
from assistant.language.data import read_data
from assistant.language.frame import Preference
from assistant.language.preferences import read_preference_words
from assistant.pairing.glass import Glass
from assistant.pairing.sweetness import colour_word, sweetness_word


def style_words(wine: str, glass: Glass, knowledge: Knowledge) -> str:
    """`dry crisp white`."""
    sweetness = sweetness_word(knowledge.wines[wine], glass.points["sweetness"], knowledge.constants)
    return " ".join((sweetness, _standing_out(glass), colour_word(glass.colour)))


def _standing_out(glass: Glass) -> str:
    limits = _limits()
    return next(
        str(row["say"]) for row in _rows() if not row["limit"] or _within(limits[row["limit"]], glass)
    )


def _within(limit: Preference, glass: Glass) -> bool:
    """Whether a glass keeps to a limit on one of its points."""
    value = glass.points[limit.property]
    return (limit.low is None or value >= limit.low) and (limit.high is None or value <= limit.high)


@lru_cache(maxsize=1)
def _rows() -> tuple[Row, ...]:
    return tuple(read_data(corpus_dir() / "planning" / "styles.toml", lambda tables: list(tables["style"])))


@lru_cache(maxsize=1)
def _limits() -> dict[str, Preference]:
    words = read_preference_words(corpus_dir() / "language" / "preferences.toml")
    return {word.asks.label: word.asks for word in words}
