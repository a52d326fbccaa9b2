"""Conversations and refusals: each turn asked in its place, and what stands after it checked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from assistant.answers.record import Answer
from assistant.evaluate.corpus import Dialogue, Refusal, Turn
from assistant.evaluate.naming import Meant, Namer, limit_read
from assistant.language.frame import Frame
from assistant.session import Session


@dataclass(frozen=True, slots=True)
class TurnOutcome:
    """A turn, the intent read and everything that is not as it should be."""

    dialogue: Dialogue
    number: int
    turn: Turn
    intent: str
    faults: tuple[str, ...]

    @property
    def id(self) -> str:
        """The conversation and the turn, counted from 1."""
        return f"{self.dialogue.id}.{self.number}"

    @property
    def intent_right(self) -> bool:
        """Whether the turn was taken for what it is."""
        return self.intent in (self.turn.intent, *self.turn.also)

    @property
    def right(self) -> bool:
        """Whether the intent and all that should stand are right."""
        return self.intent_right and not self.faults

    def as_json(self) -> dict[str, Any]:
        """The turn as one JSON object."""
        return {
            "row": "turn",
            "id": self.id,
            "pass": self.dialogue.author,
            "ask": self.turn.ask,
            "expected": self.turn.intent,
            "intent": self.intent,
            "faults": list(self.faults),
        }


@dataclass(frozen=True, slots=True)
class RefusalOutcome:
    """Something outside the job and whether it was turned down: not understood, and nothing recommended."""

    refusal: Refusal
    intent: str
    right: bool

    def as_json(self) -> dict[str, Any]:
        """The refusal as one JSON object."""
        row = {"row": "refusal", "id": self.refusal.id, "ask": self.refusal.ask}
        return {**row, "intent": self.intent, "right": self.right}


def refuse(refusal: Refusal, session: Session) -> RefusalOutcome:
    """Asks for something outside the job, with nothing said before."""
    session.new_conversation()
    answer = session.ask(refusal.ask)
    right = not (answer.understood or answer.picks or answer.verdict)
    return RefusalOutcome(refusal, answer.intent, right)


def converse(dialogue: Dialogue, session: Session, namer: Namer) -> Iterator[TurnOutcome]:
    """Holds a conversation, turn by turn."""
    session.new_conversation()
    answers: list[Answer] = []
    for number, turn in enumerate(dialogue.turns, 1):
        frame = session.read(turn.ask)
        answer = session.ask(turn.ask)
        faults = tuple(_faults(turn, frame, answer, answers, namer))
        yield TurnOutcome(dialogue, number, turn, frame.intent, faults)
        answers.append(answer)


def _faults(
    turn: Turn, frame: Frame, answer: Answer, before: Sequence[Answer], namer: Namer
) -> Iterator[str]:
    eaten, wines = _eaten(frame, namer), frozenset(frame.wines)
    limits = [limit_read(p) for p in frame.preferences]
    yield from (f"{n} is missing" for n in turn.present if eaten.isdisjoint(namer.name(n).ids))
    yield from (f"{n} is still there" for n in turn.absent if not eaten.isdisjoint(namer.name(n).ids))
    yield from (f"{n} is not the wine" for n in turn.wines if not _poured(namer.name(n), wines, limits))
    yield from (f"{n} is no limit" for n in turn.limits if not _limited(namer.limit(n), limits, wines))
    yield from (f"{n} still limits" for n in turn.no_limits if _limited(namer.limit(n), limits, frozenset()))
    if turn.pick is not None and wines.isdisjoint(_picked(turn.pick, before)):
        yield f"the wine is not number {turn.pick} of the last list"
    if turn.fresh and not _fresh(answer, before):
        yield "names again what was named before, or nothing"


def _eaten(frame: Frame, namer: Namer) -> frozenset[str]:
    """Ids of all foods of the dishes, what they are made of, their kinds, and what was done to them."""
    parts = [part for dish in frame.dishes for part in dish.parts]
    foods = [food for part in parts for food in (part.food, *namer.parts(part.food))]
    kinds = [kind for food in foods for kind in namer.kinds(food)]
    return frozenset((*foods, *kinds, *(method for part in parts for method in part.methods)))


def _poured(wanted: Meant, wines: frozenset[str], limits: Sequence[Meant]) -> bool:
    return not wanted.ids.isdisjoint(wines) or any(wanted.same(limit) for limit in limits)


def _limited(wanted: Meant, limits: Sequence[Meant], wines: frozenset[str]) -> bool:
    as_wine = not wanted.banned and not wanted.ids.isdisjoint(wines)
    return as_wine or any(wanted.same(limit) for limit in limits)


def _lists(before: Sequence[Answer]) -> list[Answer]:
    return [answer for answer in before if len(answer.picks) > 1]


def _picked(place: int, before: Sequence[Answer]) -> frozenset[str]:
    """The id at this place of the last list, as a set."""
    last = _lists(before)[-1:]
    return frozenset(item.id for answer in last for item in answer.picks[place - 1 : place])


def _fresh(answer: Answer, before: Sequence[Answer]) -> bool:
    named = {item.id for earlier in before for item in earlier.picks}
    now = {item.id for item in answer.picks}
    return bool(now) and named.isdisjoint(now)
