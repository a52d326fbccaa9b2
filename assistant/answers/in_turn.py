"""The answers to several questions of one line, put together."""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import replace

from assistant.answers.record import Answer
from assistant.answers.wording import Wording, listed

SETS, SAFETY = "set-table", "safety"
MINORS = "caution/minors"


def turn(urgent: Set[str], answer: Answer) -> tuple[bool, bool, bool]:
    """The place of an answer: when to call for help first (`urgent` cautions), then what may hurt.

    That there is no wine for who is under age comes before that this was noted.
    """
    told = {caution["id"] for caution in answer.cautions} if answer.intent == SAFETY else set()
    return urgent.isdisjoint(told), answer.intent not in (SAFETY, SETS), MINORS not in told


def in_turn(typed: str, answers: Sequence[Answer], left: Sequence[str], wording: Wording) -> Answer:
    """The first answer with the others in `also`; the questions left are named in `left_for_next`."""
    first, *others = answers
    texts = [first.text]
    for other in others:
        new = _not_told(other.text, texts)
        name = "also-said" if other.intent == SETS else "also-asked"
        texts.append(f"{wording('line', name, question=other.question)}\n{new}")
    if left:
        texts.append(wording("line", "left-for-next", questions=listed([f"“{text}”" for text in left])))
    return replace(
        first,
        question=typed,
        text="\n\n".join(texts),
        cautions=tuple(caution for answer in answers for caution in answer.cautions),
        also=tuple(other.as_json() for other in others),
        left_for_next=tuple(left),
        private=any(answer.private for answer in answers),
    )


def _not_told(text: str, told: Sequence[str]) -> str:
    """The lines of a text that no text before has: no caution is read twice. All where none is new."""
    before = {line for one in told for line in one.splitlines()}
    return "\n".join(line for line in text.splitlines() if line not in before) or text
