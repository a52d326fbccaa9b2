"""One question put to the parser: what was read, what was missed, what was told and what was mended."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from assistant.evaluate.corpus import Question
from assistant.evaluate.naming import Meant, Namer, words_of
from assistant.evaluate.slots import Score, compare, expected, found
from assistant.language.eating import diets_in
from assistant.language.fold import key
from assistant.language.frame import Frame
from assistant.language.preferences import wishes
from assistant.session import Session


@dataclass(frozen=True, slots=True)
class Outcome:
    """A question, the intent read, and the score of each slot.

    `untold` are expected unknown names of which no word was left out, `dropped` wishes that were neither
    read nor left out, `false_reports` words left out though known, `false_repairs` words `mended` into
    something not meant, `outdated` unknown names that the knowledge has by now.
    """

    question: Question
    intent: str
    slots: Mapping[str, Score]
    untold: tuple[str, ...]
    dropped: tuple[str, ...]
    false_reports: tuple[str, ...]
    false_repairs: tuple[str, ...]
    outdated: tuple[str, ...]

    @property
    def intent_right(self) -> bool:
        """Whether the question was taken for what it is."""
        return self.intent == self.question.intent

    @property
    def frame_right(self) -> bool:
        """Whether the intent and every slot are right and nothing was dropped."""
        exact = all(score.exact for score in self.slots.values())
        return self.intent_right and exact and not (self.untold or self.dropped)

    def as_json(self) -> dict[str, Any]:
        """The outcome as one JSON object."""
        slots = {n: [s.right, s.missed, s.extra] for n, s in self.slots.items() if s != Score()}
        return {
            "row": "question",
            "id": self.question.id,
            "pass": self.question.author,
            "ask": self.question.ask,
            "expected": self.question.intent,
            "intent": self.intent,
            "frame_right": self.frame_right,
            "slots": slots,
            **{name: list(getattr(self, name)) for name in _TELLING},
        }


_TELLING = ("untold", "dropped", "false_reports", "false_repairs", "outdated")


def outcome(question: Question, session: Session, namer: Namer) -> Outcome:
    """Puts a question, with nothing said before it, to the parser."""
    session.new_conversation()
    frame = session.read(question.ask)
    wanted = expected(question, namer)
    left = words_of(frame.text.left_out)
    outdated = tuple(name for name in question.unknown if namer.known(name))
    return Outcome(
        question,
        frame.intent,
        compare(wanted, found(frame, question), question.intent, namer),
        tuple(n for n in question.unknown if n not in outdated and left.isdisjoint(key(n))),
        tuple(w for w in question.wishes if not _kept(w, frame, left, namer)),
        _false_reports(frame, question),
        _false_repairs(frame, wanted),
        outdated,
    )


def _kept(wish: str, frame: Frame, left: frozenset[str], namer: Namer) -> bool:
    """Whether a wish stands among the limits, the diets, what is not eaten or what was left out."""
    limits = words_of(p.label for p in frame.preferences)
    spared = not set(frame.barred).isdisjoint(namer.name(wish).ids)
    diet = {frame.text.stems[i] for places in diets_in(frame.text.stems).values() for i in places}
    return spared or not (left | limits | diet).isdisjoint(key(wish))


def _false_reports(frame: Frame, question: Question) -> tuple[str, ...]:
    """Words left out though known; a price or a diet that no wine can be chosen by is told on purpose."""
    told = words_of((*question.unknown, *question.wishes, *wishes(frame.text)))
    return tuple(word for word in frame.text.left_out if not told.intersection(key(word)))


def _false_repairs(frame: Frame, wanted: Mapping[str, list[Meant]]) -> tuple[str, ...]:
    """Words mended into something that is in no slot of what was meant; a term beside it harms nobody."""
    meant = {i for things in wanted.values() for thing in things for i in thing.ids}
    return tuple(
        f"{reading.corrected_from} > {reading.label}"
        for reading in frame.text.readings
        if reading.corrected_from
        and (reading.type != "Term" or wanted["terms"])
        and meant.isdisjoint((reading.id, *reading.others))
    )
