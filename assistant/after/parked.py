"""`what did we park`, `answer the parked ones`: questions put aside, answered with what stood then."""

from __future__ import annotations

import copy
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.after.names import tonights
from assistant.after.phrases import said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.language.frame import Frame
from assistant.language.standing import Talk, dishes_of, wines_of
from assistant.notebook import Statement
from assistant.taught.telling import date

if TYPE_CHECKING:
    from assistant.session import Session

PARKED, NOTHING = "parked", ("teach", "note", "unclear", "undo", "smalltalk", "set-table")
MOST_ANSWERED = 5
FEW_THINGS = 4


def parked_of(session: Session) -> list[Statement]:
    """The questions that wait, of this evening or, without a title, of all, the oldest first."""
    return [one for one in tonights(session) if one.kind == PARKED]


def parked_list(context: Context, session: Session) -> Answer:
    """What waits, with who asked, when, and what stood then."""
    found = parked_of(session)
    if not found:
        return _nothing(context, session)
    kind = "one" if len(found) == 1 else "list"
    say = said("parked", kind, count=len(found), question=asked(found[0]))
    lines = [_line(number, one, context) for number, one in enumerate(found, 1)]
    return told(context, [say, *lines])


def parked_answered(context: Context, session: Session) -> Answer:
    """The answers in turn; `also` holds their records."""
    found = parked_of(session)
    if not found:
        return _nothing(context, session)
    turn = found[:MOST_ANSWERED]
    answers = [answer_to(one, session) for one in turn]
    says = [a.say if a else said("parked", "no-answer") for a in answers]
    lines = [
        said("parked", "answer", number=number, question=asked(one), say=say, **_told_of(one, context))
        for number, (one, say) in enumerate(zip(turn, says, strict=True), 1)
    ]
    more = len(found) - len(turn)
    lines += [said("parked", "more", count=more)] if more else []
    first = capital(said("parked", "say", question=asked(turn[0]), say=says[0]))
    lines = lines if lines[1:] else []  # what was one question is answered once
    also = tuple(answer.as_json() for answer in answers if answer)
    return replace(told(context, [first, *lines, said("parked", "rest")]), also=also)


def asked(one: Statement) -> str:
    """The question as it is to be asked, with its mark."""
    text = str(one.value.get("question", one.said)).rstrip(" .!")
    return text if text.endswith("?") else f"{text}?"


def answer_to(one: Statement, session: Session) -> Answer | None:
    """The answer to a question that waited, with what stood then; None where the book has none."""
    aside = copy.copy(session)
    aside.new_conversation_of(_stood(one, session), session.tonight)
    frame = aside.read(asked(one))
    if frame.intent in NOTHING:
        return None
    answer = aside.ask(asked(one))
    return answer if answer.understood else None


def _stood(one: Statement, session: Session) -> Talk | None:
    """The turn that stood when the question was put aside."""
    wines, dishes = wines_of(one.about), dishes_of(one.about)
    if not wines and not dishes:
        return None
    intent = "judge-pair" if wines and dishes else "wines-for-food" if dishes else "describe"
    empty: Frame = session.parser.parse("")
    return Talk(replace(empty, intent=intent, dishes=dishes, wines=wines), (), (), intent)


def _line(number: int, one: Statement, context: Context) -> str:
    at = {"date": date(context, one.when), "time": f"{one.when.astimezone():%H:%M}"}
    return said("parked", "line", number=number, question=asked(one), **at, **_told_of(one, context))


def _told_of(one: Statement, context: Context) -> dict[str, str]:
    """Who asked and what stood, where it is told and can be said in a breath."""
    things = [context.knowledge.label(thing) for thing in one.about]
    stood = said("parked", "stood", things=listed(things)) if 0 < len(things) < FEW_THINGS else ""
    guest = one.value.get("guest")
    return {"who": said("parked", "who", guest=guest) if guest else "", "stood": stood}


def _nothing(context: Context, session: Session) -> Answer:
    kind = "none" if session.taught.keeps else "no-notebook"
    return told(context, [said("parked", kind)], understood=bool(session.taught.keeps))
