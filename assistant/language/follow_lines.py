"""Turns of phrase that name nothing and take up what stands, from corpus/language/follow-ups.toml."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from itertools import dropwhile

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Lines
from assistant.language.data import read_data
from assistant.language.fold import fold, key
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame

MOST_AGAIN, MOST_SENT = 5, 14
FIXED = ("safety", "myth", "trouble", "service", "define")
DOUBTS = ("doubts-told", "doubts-proof")


@lru_cache(maxsize=1)
def follow_lines() -> Mapping[str, Lines]:
    """The lines of corpus/language/follow-ups.toml by what they do. Raises KnowledgeError as `read_data`."""
    return read_data(
        corpus_dir() / "language" / "follow-ups.toml",
        lambda tables: {name: Lines(lines) for name, lines in tables["lines"].items()},
    )


def says(frame: Frame, name: str) -> bool:
    """Whether a line of this name stands in the text."""
    return follow_lines()[name].stand_in(frame.text.stems)


def ends_of(frame: Frame, name: str) -> list[int]:
    """Where lines of this name end in the text: the positions behind them."""
    return [places[-1] + 1 for places in follow_lines()[name].find(frame.text.stems)]


def wants_again(typed: str, last: str = "") -> bool:
    """Whether what was answered is to be said again: few words, and none that asks for anything else.

    So it is where an answer of fixed wording (of the intent `last`) is doubted, which no reason changes.
    """
    stems, lines = key(typed), follow_lines()
    doubted = last in FIXED and any(lines[name].stand_in(stems) for name in DOUBTS)
    alone = len(stems) == 1 and typed.rstrip().endswith("?") and lines["repeat-alone"].stand_in(stems)
    return len(stems) <= MOST_AGAIN and (doubted or alone or lines["repeat"].stand_in(stems))


def wants_shorter(typed: str) -> bool:
    """Whether what was answered is to be said in fewer words, and nothing else is asked."""
    stems = key(typed)
    few = len(stems) <= MOST_AGAIN and follow_lines()["shorter"].stand_in(stems)
    return few or (len(stems) <= MOST_SENT and follow_lines()["shorter-to-send"].stand_in(stems))


def wants_deeper(typed: str) -> bool:
    """Whether a bare `why` asks on from what was just explained."""
    return len(stems := key(typed)) <= MOST_AGAIN and _only(stems, "why-bare")


def says_only(frame: Frame, name: str) -> bool:
    """Whether a line of this name is all that is said, but for words of lead and stops."""
    return _only(frame.text.stems, name)


def _only(stems: Sequence[str], name: str) -> bool:
    said = [stem for stem in stems if stem[:1].isalnum()]
    bare = list(dropwhile(follow_words().lead.__contains__, said))
    lines = follow_lines()[name]
    return any(len(places) == len(words) for words in (said, bare) for places in lines.find(words))


def opens(frame: Frame, name: str) -> bool:
    """Whether a text starts with a line of this name, but for words of lead; `loads` is no `load`."""
    words, stems = frame.text.words, frame.text.stems
    found = next(follow_lines()[name].find(stems), None)
    if found is None or fold(words[found[0]]) != stems[found[0]]:
        return False
    return follow_words().lead.issuperset(stems[: found[0]])


def behind(frame: Frame, name: str) -> str:
    """The words behind a line of this name, without small ones at their start; empty where there are none."""
    ends = ends_of(frame, name)
    words = [word for word in frame.text.words[max(ends) :] if word[:1].isalnum()] if ends else []
    while words and fold(words[0]) in follow_words().before_name:
        words.pop(0)
    return " ".join(words)
