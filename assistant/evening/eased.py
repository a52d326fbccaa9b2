"""`She's fine now` after a reaction, `she had some` before one: answered before whatever else is asked."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import caution, spoken
from assistant.evening.care import GuestCare
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE
from assistant.session import Session
from assistant.spoken import REACTION

EASED, EATEN, SAFETY = "caution/allergy-eased", "caution/allergy-eaten", "safety"
COELIAC = "coeliac"
Answers = Callable[[Context, Session], Answer | None]


def says_eased(frame: Frame, session: Session) -> bool:
    """Whether somebody who reacted to a food is said to be well again, and no sign of it is told of."""
    urgent = any(session.parser.topics.by_id[name].urgent for name in frame.topics)
    well = says(frame, "feels-well") and not says(frame, "well-not")
    return session.spoken.reacted and not urgent and well


def eased_first(behind: Answers | None) -> Answers:
    """The answer that it clears nothing, and `behind` it what is asked where something is named."""

    def told(context: Context, session: Session) -> Answer:
        records = tuple(caution(context, name) for name in (EASED, REACTION))
        say, rest = spoken(records[0]["text"])
        asked = behind(context, session) if behind and context.frame.text.readings else None
        lines = [say, rest, records[1]["text"]]
        if asked is None:
            answer = replace(compose(context.all_used(), say, lines), dish=None)
        else:
            answer = replace(asked, say=say, text="\n".join([*filter(None, lines), asked.text]))
        others = () if asked is None else asked.cautions
        return replace(answer, cautions=(*records, *others), intent=SAFETY)

    return told


def eaten_first(answer: Answer, rows: Sequence[GuestCare], context: Context) -> Answer:
    """The answer behind what is done now, where somebody allergic had food that is not theirs.

    A coeliac guest is ill for days, and in no danger of the next minutes.
    """
    harmed = any(row.allergy and row.keep_away and COELIAC not in row.topics for row in rows)
    named = any(reading.kind in EDIBLE for reading in context.frame.text.readings)
    if not (harmed and named and says(context.frame, "guest-drank")):
        return answer
    records = tuple(caution(context, name) for name in (REACTION, EATEN))
    first = [one["text"] for one in records]
    lines = [line for line in answer.text.splitlines() if line not in first]
    others = tuple(one for one in answer.cautions if one["text"] not in first)
    text = "\n".join([*first, *lines])
    return replace(answer, say=spoken(first[0])[0], text=text, cautions=(*records, *others))


def urgent_first(answer: Answer, context: Context) -> Answer:
    """The answer with nothing before when to call for help, where a reaction is told of."""
    topics = (context.topics[name] for name in context.frame.text.topics)
    urgent = {one for topic in topics if topic.urgent for one in topic.base}
    first = [one["text"] for one in answer.cautions if one["id"] in urgent]
    if not first:
        return answer
    lines = [line for line in answer.text.splitlines() if line not in first]
    return replace(answer, say=spoken(first[0])[0], text="\n".join([*first, *lines]))
