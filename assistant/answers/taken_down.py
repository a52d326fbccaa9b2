"""What a question told of the party in passing is said to be taken down: nothing is kept in silence."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, time

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.language.arriving import without_arrivals
from assistant.language.guests import guest_words
from assistant.language.party import opening_total, party_of
from assistant.table.headcount import only_counts, only_heads, supposes
from assistant.table.spoilt import gone
from assistant.table.tonight import Tonight

SETS = "set-table"
EMPTY = ("unclear", SETS)
TROUBLE = "trouble"
TELLS = ("note", SETS, TROUBLE)  # with nothing but a number of guests, nothing else is told
TELLS_ITSELF = "plan"  # a plan, or what it still lacks, names all of it


def taken_down(answer: Answer, before: Tonight, context: Context) -> Answer:
    """The answer with what is new of guests, needs, money and late arrivals in lines of their own."""
    answer = _party_told(answer, before, context)
    lines = expected([one for one in context.tonight.late if one not in before.late], context)
    alone = not (context.frame.after or re.search(r"\w", without_arrivals(context.frame.text.typed)))
    if lines and alone:  # nothing else is told
        return replace(compose(context.of_evening().all_used(), lines[0], lines), dish=None, intent=SETS)
    return replace(answer, text="\n".join([answer.text, *(x for x in lines if x not in answer.text)]))


def expected(late: Sequence[tuple[str, time | None]], context: Context) -> list[str]:
    """What to keep for each guest who comes late, and until when."""
    return [
        context.wording("plan", "late-at", guest=guest, at=f"{at:%H:%M}")
        if at
        else context.wording("plan", "late-some-time", guest=guest)
        for guest, at in late
    ]


def _party_told(answer: Answer, before: Tonight, context: Context) -> Answer:
    if answer.intent == TROUBLE:
        return _without_spoilt(answer, before, context)
    unread = answer.intent == "smalltalk" or (answer.intent in EMPTY and not answer.understood)
    unread = unread or (answer.intent in TELLS and only_counts(context.frame)) or _came(before, context)
    prepared = context.frame.intent == SETS or bool(
        before.dishes or before.wines or before.guests or before.needs
    )
    opened = opening_total(context.frame.text.stems) is not None
    counts = only_heads(context.frame) or (prepared and only_counts(context.frame))
    new = news(before, context, (unread and prepared) or opened or counts)
    if not new or answer.intent == TELLS_ITSELF:
        return answer
    if _told(answer, context):
        return _with_heads(answer, before, context)
    line = context.wording("plan", "noted", noted=listed(new))
    if unread:
        return replace(compose(context.of_evening(), line, [line]), dish=None, intent=SETS)
    if _only_tells(context):
        return replace(answer, say=line, text=f"{line}\n{answer.text}")
    said = f"{answer.say} {line}" if answer.say and not answer.picks else answer.say
    return replace(answer, say=said, text=f"{answer.text}\n{line}")


def _came(before: Tonight, context: Context) -> bool:
    """Whether guests came or left, and nothing is named (`Jo rolled in, so we're nine now`)."""
    named = context.frame.text.readings or context.frame.topics or "?" in context.frame.text.typed
    return context.frame.intent == SETS and not named and before.guests not in (None, context.tonight.guests)


def _without_spoilt(answer: Answer, before: Tonight, context: Context) -> Answer:
    """The answer to trouble with the bottles that came off the table."""
    spoilt = listed([context.knowledge.label(wine) for wine in gone(before, context.tonight)])
    line = context.wording("plan", "bottle-spoilt", wine=spoilt)
    return replace(answer, text=f"{answer.text}\n{line}") if spoilt else answer


def _with_heads(answer: Answer, before: Tonight, context: Context) -> Answer:
    """The answer that tells of needs, with the guests in all where they were counted beside them."""
    now = context.tonight
    if now.guests in (None, before.guests):
        return answer
    line = context.wording("plan", "noted", noted=heads(now, before, context))
    return replace(answer, text=f"{answer.text}\n{line}")


def _only_tells(context: Context) -> bool:
    """Whether a party is told of and nothing is asked, so that what is noted comes before the cautions."""
    frame = context.frame
    asks = guest_words().asks.intersection(frame.text.typed.lower().split())
    urgent = any(context.topics[name].urgent for name in frame.topics)
    told = bool(frame.topics) and bool(party_of(frame.text))
    return told and not (asks or urgent or frame.dishes or frame.wines or "?" in frame.text.typed)


def news(before: Tonight, context: Context, alone: bool) -> list[str]:
    """What the table holds of the party that it did not hold before, in words.

    The number of guests is told with the rest, or where nothing else is understood (`alone`).
    """
    now = context.tonight
    found = [of_need(asked.guest, asked.need, context) for asked in now.needs if asked not in before.needs]
    if (now.budget, now.per_head) != (before.budget, before.per_head):
        found += to_spend(now, "", context)
    supposed = before.guests is not None and supposes(context.frame)
    counted = not supposed and (now.guests, now.non_drinkers) != (before.guests, before.non_drinkers)
    if counted and now.guests is not None and (found or alone):
        found.insert(0, heads(now, before, context))
    return found


def heads(now: Tonight, before: Tonight, context: Context) -> str:
    """`12 guests`, with those who drink no wine where their number is new."""
    name = "counted" if now.non_drinkers == before.non_drinkers else "counted-some"
    name = "counted-one" if now.guests == 1 and name == "counted" else name
    return context.wording("plan", name, guests=f"{now.guests or 0:g}", without=f"{now.non_drinkers:g}")


def of_need(guest: str, need: str, context: Context) -> str:
    """`two guests vegetarian`."""
    return context.wording("plan", "needed", guest=guest or context.wording("plan", "guest"), need=need)


def to_spend(tonight: Tonight, currency: str, context: Context) -> list[str]:
    """What there is to spend, in all and a head, as far as it was told."""
    amounts = {"to-spend-each": tonight.per_head, "to-spend": tonight.budget}
    return [
        " ".join(context.wording("plan", name, money=f"{amount:g}", currency=currency).split())
        for name, amount in amounts.items()
        if amount is not None
    ]


def budget_told(context: Context) -> Answer:
    """What there is to spend, or that nobody told yet."""
    found = to_spend(context.tonight, context.stock.currency.strip(), context)
    say = context.wording("plan", "noted", noted=listed(found)) if found else None
    say = say or context.wording("plan", "budget-none")
    return replace(compose(context.of_evening(), say, [say]), dish=None, intent=TELLS_ITSELF)


def when(start: datetime, context: Context) -> str:
    """`Saturday 5 December at 19:00`."""
    return context.wording("plan", "start", day=f"{start:%A} {start.day} {start:%B}", time=f"{start:%H:%M}")


def heads_told(context: Context) -> Answer:
    """How many guests there are, or that nobody told yet."""
    guests = context.tonight.guests
    say = context.wording("plan", "heads-told" if guests else "heads-none", guests=f"{guests or 0:g}")
    return replace(compose(context.of_evening(), say, [say]), dish=None, intent=TELLS_ITSELF)


def _told(answer: Answer, context: Context) -> bool:
    """Whether an answer already tells of the needs (`Noted for R.: vegetarian`)."""
    nobody = context.wording("plan", "guest")
    needs = context.tonight.needs
    said = (context.wording("plan", "need", guest=n.guest or nobody, need=n.need) for n in needs)
    return any(need in answer.text for need in said)
