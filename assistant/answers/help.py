"""What can be asked, as a whole or by topic, from corpus/language/help.toml."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold, stem

ASKED = "help"


@dataclass(frozen=True, slots=True)
class Topic:
    """A topic: the words it is asked for by (the first is its name), what is said, and questions to try."""

    words: tuple[str, ...]
    say: str
    text: tuple[str, ...]
    tries: tuple[str, ...]

    @property
    def stems(self) -> tuple[tuple[str, ...], ...]:
        """Its words as they are met in a question."""
        return tuple(tuple(stem(fold(part)) for part in word.split()) for word in self.words)


@dataclass(frozen=True, slots=True)
class Help:
    """The topics in order, the templates around them by name, and the words a topic is asked for with."""

    topics: tuple[Topic, ...]
    whole: Mapping[str, str]
    asks: frozenset[str]


@lru_cache(maxsize=1)
def help_texts() -> Help:
    """All that help.toml holds. Raises KnowledgeError as `read_data` does."""
    return read_data(corpus_dir() / "language" / "help.toml", _texts)


def topics() -> tuple[Topic, ...]:
    """The topics, in the order they are named."""
    return help_texts().topics


def help_(context: Context) -> Answer:
    """The topic asked for, or what there is to be asked at all."""
    topic = asked_for(context.frame.text.stems)
    whole = help_texts().whole
    if topic is None:
        names = ", ".join(topic.words[0] for topic in topics())
        lines = [whole["say"], whole["text"], whole["topics"].format(topics=names)]
        return compose(context.all_used(), whole["say"], lines)
    lines = [topic.say, *topic.text, whole["try"].format(tries=listed(_quoted(topic.tries), whole["or"]))]
    return compose(context.all_used(), topic.say, lines)


def asked_for(stems: Sequence[str]) -> Topic | None:
    """The topic that most of the words speak of; of several the first."""
    best = max(topics(), key=lambda topic: _spoken_of(topic, stems))
    return best if _spoken_of(best, stems) else None


def named_alone(stems: Sequence[str]) -> bool:
    """Whether nothing is said but that help is asked for, and with which topic (`help the board`)."""
    asks = help_texts().asks
    rest = tuple(word for word in stems if word not in asks and word.isalnum())
    behind = tuple(stems[1:]) if stems and stems[0] in asks else ()  # `help how many`
    return len(rest) < len(stems) and any({rest, behind} & set(topic.stems) for topic in topics())


def help_alone(stems: Sequence[str], cued: bool) -> bool:
    """Whether nothing is said but that help is asked for, with or without a topic."""
    bare = (
        bool(stems)
        and ASKED in stems
        and help_texts().asks.issuperset(word for word in stems if word.isalnum())
    )
    return bare or (cued and named_alone(stems))


def _spoken_of(topic: Topic, stems: Sequence[str]) -> int:
    """How many words of a question are among the topic's, each of its phrases counted once."""
    return sum(len(phrase) for phrase in set(topic.stems) if _stands(phrase, stems))


def _stands(phrase: Sequence[str], stems: Sequence[str]) -> bool:
    ends = range(len(stems) - len(phrase) + 1)
    return any(tuple(stems[at : at + len(phrase)]) == tuple(phrase) for at in ends)


def _quoted(questions: Sequence[str]) -> list[str]:
    return [f"“{question}”" for question in questions]


def _texts(tables: Mapping[str, Any]) -> Help:
    whole = {name: str(tables["whole"][name]) for name in ("say", "text", "topics", "try", "or")}
    asks = frozenset(stem(fold(word)) for word in tables["asks"])
    return Help(tuple(map(_topic, tables["topic"])), whole, asks)


def _topic(table: Mapping[str, Any]) -> Topic:
    return Topic(tuple(table["words"]), str(table["say"]), tuple(table["text"]), tuple(table["try"]))
