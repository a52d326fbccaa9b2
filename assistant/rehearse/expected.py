"""A question to be expected, with what to answer in a breath and what of it is contested."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from assistant.answers.context import Context
from assistant.answers.wording import capital
from assistant.evening.facts import fact
from assistant.rehearse.words import rehearse_words


@dataclass(frozen=True, slots=True)
class Expected:
    """`kind` as in [most] of the words, the line to say aloud, and what is contested in whole sentences."""

    kind: str
    question: str
    line: str
    flags: tuple[str, ...] = ()

    def as_json(self) -> dict[str, Any]:
        """The record, ready for JSON; `words` is how many the line has."""
        told = {"kind": self.kind, "question": self.question, "line": self.line}
        return {**told, "words": len(self.line.split()), "contested": list(self.flags)}


def say(context: Context, name: str, **fields: object) -> str:
    """A sentence of the rehearsal, with a full stop where its last words bring none."""
    text = capital(context.wording("rehearse", name, **fields))
    return text if text.endswith((".", "?", "!")) else f"{text}."


def spoken(sentences: Iterable[str]) -> str:
    """As many of the sentences, in their order, as are said in some twenty seconds; the first in any case."""
    most, told = fact("rehearse", "rehearsal", "words").high, list[str]()
    for sentence in (s.strip() for s in sentences if s.strip()):
        if not told or len(" ".join([*told, sentence]).split()) <= most:
            told.append(capital(sentence))
    return " ".join(told)


def dealt(expected: Sequence[Expected]) -> tuple[Expected, ...]:
    """Of each sort as many as it may have, and no more in all than can be gone through; their order stays."""
    most = rehearse_words().most
    found = [one for kind, count in most.items() for one in [e for e in expected if e.kind == kind][:count]]
    kept = found[: int(fact("rehearse", "rehearsal", "questions").high)]
    return tuple(one for one in expected if one in kept)
