"""Each answer of a conversation noted in the log: what was asked, what was meant, what was said of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from pathlib import Path

from assistant.answers.record import Answer
from assistant.answers.wording import Wording, capital
from assistant.knowledge.check_report import sentence
from assistant.language.frame import Frame
from assistant.notebook import Entry, note_answer
from assistant.pairing.dish import Dish

PATIENCE = 0.05
"""Seconds that an answer may wait for another program to let go of the log."""
MOST_IDS = 40
LONGEST = 2000
OF_ONE_PICK = ("wines-for-food", "foods-for-wine", "one-bottle")


class AnswerLog:
    """The log of one conversation. One that cannot be written is told of once and stops no answer.

    An entry is not waited for until it is on the disk: that takes some 4 to 8 ms on a good disk and far
    more on a slow one, writing alone half of one. A program that is killed loses nothing by it; a power cut
    may take the last few answers.
    """

    def __init__(self, path: Path, wording: Wording) -> None:
        self.path = path
        self._wording, self._told = wording, False

    def noted(self, frame: Frame, answer: Answer) -> Answer:
        """The answer noted; with one line more where this could not be done for the first time."""
        if not frame.text.typed:
            return answer
        problems = note_answer(entry_of(frame, answer), self.path, PATIENCE, settled=False)
        if not problems or self._told:
            return answer
        self._told = True
        line = self._wording("rehearse", "not-noted", problem=capital(sentence(problems[0])))
        return replace(answer, text=f"{answer.text}\n{line}")


def entry_of(frame: Frame, answer: Answer, now: datetime | None = None) -> Entry:
    """What is kept of an answer; of one to do with health, or with what a guest must not have, no words."""
    private = answer.private
    first = [answer.picks[0]] if answer.picks else []
    ids = dict.fromkeys((*(item.id for item in first), *frame.wines, *_eaten(frame.dishes)))
    verdict = answer.verdict or next((i.verdict for i in first if frame.intent in OF_ONE_PICK), None)
    return Entry(
        now or datetime.now().astimezone(),
        "" if private else frame.text.typed[:LONGEST],
        answer.intent,
        tuple(ids)[:MOST_IDS],
        verdict,
        () if private else tuple(word[:200] for word in answer.left_out[:MOST_IDS]),
    )


def _eaten(dishes: tuple[Dish, ...]) -> list[str]:
    """Foods, what was done to them and what was said of their taste: alike only where all of it is."""
    found: list[str] = []
    for dish in dishes:
        found += [name for part in dish.parts for name in (part.food, *part.methods)]
        found += [f"schema#{quantity}" for quantity in sorted(dish.added)]
    return found
