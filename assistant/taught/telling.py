"""What every answer about the notebook shares: a plain answer, what was not kept, a date in words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.sanitise import safe
from assistant.answers.wording import capital
from assistant.knowledge.check_report import sentence
from assistant.knowledge.problems import Problem
from assistant.language.frame import Reading
from assistant.pairing.dish import Dish
from assistant.taught.keeper import Keeper

SECTION = "taught"


@dataclass(frozen=True, slots=True)
class Hearing:
    """A text told: its words, what stood before (`dishes`, `wines`), and the conversation's notebook.

    `question`: what was asked last, as typed.
    """

    context: Context
    keeper: Keeper
    dishes: tuple[Dish, ...] = ()
    wines: tuple[str, ...] = ()
    question: str = ""

    @property
    def said(self) -> str:
        """The words as they are to be kept."""
        return safe(self.context.frame.text.typed)

    @property
    def stems(self) -> tuple[str, ...]:
        """The folded stems of the words."""
        return self.context.frame.text.stems

    @property
    def evening(self) -> str | None:
        """The title of the evening, if it has one."""
        return self.context.tonight.title[:200] or None


def words(context: Context, template: str, /, **fields: object) -> str:
    """A sentence of this part of the wording."""
    return context.wording(SECTION, template, **fields)


def plain(context: Context, say: str, lines: Sequence[str] = (), understood: bool = True) -> Answer:
    """An answer of these lines and nothing read of the question beside them."""
    return Answer(
        question=context.frame.text.typed,
        intent=context.frame.intent,
        say=say,
        text="\n".join([say, *lines]),
        read_as=context.read_as(),
        understood=understood,
    )


def not_kept(context: Context, problems: Sequence[Problem]) -> Answer:
    """Why nothing was kept: the first problem in a sentence."""
    say = words(context, "not-kept", problem=capital(sentence(problems[0])))
    return plain(context, say, understood=False)


def no_notebook(context: Context) -> Answer:
    """That there is no notebook."""
    return plain(context, words(context, "no-notebook"), understood=False)


def date(context: Context, when: datetime) -> str:
    """`29 November`."""
    return context.wording.date(when)


def wine_ids(context: Context) -> tuple[str, ...]:
    """The wines named, as they are asked about or else as they are read."""
    found = context.frame.wines or tuple(r.id for r in context.frame.text.readings if _poured(r, context))
    return tuple(dict.fromkeys(found))


def _poured(reading: Reading, context: Context) -> bool:
    return bool(context.knowledge.styles_of(reading.id))


def with_lines(answer: Answer, lines: Sequence[str]) -> Answer:
    """The answer with more lines at its end."""
    return replace(answer, text="\n".join([answer.text, *lines])) if lines else answer
