"""`what will they ask`: the likely questions of tonight's table, with a line to say for each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.sanitise import safe
from assistant.notebook import Entry, read_log
from assistant.rehearse.conflict_words import told_of
from assistant.rehearse.conflicts import among_hosts
from assistant.rehearse.expected import Expected, dealt, say
from assistant.rehearse.flags import before
from assistant.rehearse.of_pairs import Ranked, best_asked, clash_asked, host_asked, ranked
from assistant.rehearse.of_table import diets_asked, myths_asked, order_asked, parked_asked, trouble_asked
from assistant.session import Session
from assistant.taught.telling import plain

PLAN = "plan"
MOST_MORE = 3


def rehearse_by_talk(context: Context, session: Session) -> Answer:
    """The rehearsal of tonight's table, or what is to be put on it first."""
    tonight = context.tonight
    if not (tonight.wines and tonight.dishes):
        ask = say(context, "nothing-laid")
        return replace(plain(context, ask, understood=False), intent=PLAN, clarify=ask)
    entries = read_log(session.log.path).entries if session.log else ()
    found = ranked(context)
    expected = rehearsed(context, session, found, entries)
    contested = sum(bool(one.flags) for one in expected)
    name = "expect-none" if not contested else "expect-one" if contested == 1 else "expect"
    lines = [line for number, one in enumerate(expected, 1) for line in _lines(context, number, one)]
    lines += _more(context, session, found, entries, expected)
    answer = plain(context, say(context, name, count=len(expected), contested=contested), lines)
    return replace(answer, intent=PLAN, expected=tuple(one.as_json() for one in expected))


def rehearsed(
    context: Context, session: Session, found: Ranked, entries: Sequence[Entry]
) -> tuple[Expected, ...]:
    """The questions to expect, sort by sort."""
    return dealt(
        [
            *host_asked(context, found, entries, session.taught),
            *clash_asked(context, found, entries),
            *myths_asked(context),
            *best_asked(context, found, entries),
            *order_asked(context),
            *diets_asked(context, session),
            *trouble_asked(context),
            *parked_asked(context, session),
        ]
    )


def _lines(context: Context, number: int, one: Expected) -> list[str]:
    flags = [f"   {say(context, 'contested', flag=flag)}" for flag in one.flags]
    return [f"{number}. {safe(one.question)}", f"   {safe(one.line)}", *flags]


def _more(
    context: Context, session: Session, found: Ranked, entries: Sequence[Entry], expected: Sequence[Expected]
) -> list[str]:
    """What was answered otherwise before and is in no question above; what hosts say against one another."""
    told = {flag for one in expected for flag in one.flags}
    others = [flag for dish, ms in found for m in ms for flag in before(context, dish, m, entries)]
    on_it = {*context.tonight.wines, *(p.food for dish in context.tonight.dishes for p in dish.parts)}
    at_odds = [c for c in among_hosts(session.taught.told()) if on_it.intersection(c.older.about)]
    lines = [flag for flag in dict.fromkeys(others) if flag not in told][:MOST_MORE]
    lines += [told_of(conflict, context.knowledge, context.wording) for conflict in at_odds[:MOST_MORE]]
    return [say(context, "also"), *(f"- {line}" for line in lines)] if lines else []
