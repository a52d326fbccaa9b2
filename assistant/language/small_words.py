"""Small words that turn, end or link what is said, from corpus/language/small-words.toml."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import key

LISTS = (
    "turns", "turns-word", "ends", "all-but", "all-things", "none-of-all", "excepting", "minds",
    "limit-before", "kitchen", "bottle", "course-before",
    "meal", "before-a-dish", "asks-length",
    "at-most", "at-least", "at-most-behind", "at-least-behind", "cooked-in", "cooked", "asks-inside",
    "manner", "linking", "told", "money", "smelling", "asks-also", "behind-also",
    "idle-endings", "tastes", "articles", "names-things", "names-eaten", "first-person", "any-wine",
    "turns-over", "behind-wish", "short-tails", "before-a-bringer",
    "eating", "of-a-kitchen", "ruled-out-by", "spread", "occasion", "wine-behind", "felt", "borne", "joins",
    "to-be", "asks-for", "of-people", "not-of-wine", "place-before",
    "stays", "turns-to", "answers", "behind-answer", "with-wine", "event", "colours", "only-behind",
    "stands-out", "of-a-place", "made-so", "tells-what", "over-much", "others",
    "condition", "within-condition", "behind-condition",
)  # fmt: skip


@lru_cache(maxsize=1)
def small_words() -> dict[str, frozenset[str]]:
    """The lists, folded where they are single words. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "small-words.toml", _folded)


def _folded(lists: Mapping[str, Iterable[str]]) -> dict[str, frozenset[str]]:
    return {name: frozenset(" ".join(key(word)) or word for word in lists[name]) for name in LISTS}
