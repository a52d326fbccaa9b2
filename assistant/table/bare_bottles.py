"""For which style a bottle is taken that is called by its kind, alone or with a word for its taste."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

from assistant.knowledge.files import corpus_dir
from assistant.knowledge.store import Knowledge
from assistant.language.data import read_data
from assistant.language.fold import fold, stem

MIDDLE = 0.5


@lru_cache(maxsize=1)
def _taken_as() -> Mapping[str, str]:
    """The shipped table, as ids. Raises KnowledgeError for a broken file."""
    return read_data(
        corpus_dir() / "planning" / "bare-bottles.toml",
        lambda tables: {f"kind/{kind}": f"wine/{style}" for kind, style in tables["taken_as"].items()},
    )


@lru_cache(maxsize=1)
def _told_with() -> Mapping[tuple[str, str], str]:
    """By kind and word for a taste the style meant. Raises KnowledgeError for a broken file."""
    return read_data(
        corpus_dir() / "planning" / "bare-bottles.toml",
        lambda tables: {
            (f"kind/{kind}", stem(fold(word))): f"wine/{style}"
            for kind, styles in tables["told_with"].items()
            for style, words in styles.items()
            for word in words
        },
    )


@lru_cache(maxsize=1)
def tastes_told() -> frozenset[str]:
    """The folded words for a taste that tell which bottle of a kind is meant."""
    return frozenset(word for _, word in _told_with())


def style_told(kind: str, words: Sequence[str]) -> str | None:
    """The style of a kind that folded words beside it tell (`an oaky white`), the last word first."""
    return next(filter(None, (_told_with().get((kind, word)) for word in reversed(words))), None)


def style_of_kind(kind: str, knowledge: Knowledge) -> str:
    """The style of the file, else the middle one of the kind among those that are easiest to buy.

    By each amount the styles are ranked; the one counts whose ranks are nearest to the middle.
    Raises ValueError where no style answers to it.
    """
    every = knowledge.styles_of(kind)
    if _taken_as().get(kind) in every:
        return _taken_as()[kind]
    easiest = max(knowledge.wines[one].availability for one in every)
    common = [one for one in every if knowledge.wines[one].availability == easiest]
    typical = {one: {name: a.typical for name, a in knowledge.wines[one].amounts.items()} for one in common}
    return min(common, key=lambda one: _apart(typical[one], list(typical.values())))


def _apart(own: Mapping[str, float], every: Sequence[Mapping[str, float]]) -> float:
    return sum(
        _from_middle(value, [row[name] for row in every if name in row]) for name, value in own.items()
    )


def _from_middle(value: float, values: Sequence[float]) -> float:
    """How far a value ranks from the middle of several, 0 to 0.5."""
    below, same = sum(other < value for other in values), sum(other == value for other in values)
    return abs((below + same / 2) / len(values) - MIDDLE)
