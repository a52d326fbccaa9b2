"""The evening planned from what was said: guests, wines and foods put on the table by talk."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime
from typing import Any

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.taken_down import expected, of_need, to_spend, when
from assistant.answers.wording import listed
from assistant.evening.facts import fact, wording
from assistant.evening.needs import with_sober
from assistant.evening.plan import plan
from assistant.evening.records import Evening, FoodLine, GuestNeeds, WineLine
from assistant.evening.table_text import on_the_table
from assistant.evening.text import text
from assistant.language.follow_lines import says
from assistant.language.guest_named import has_name
from assistant.language.guests import Asked
from assistant.language.starting import starts_at
from assistant.pairing.dish import Dish
from assistant.session import Session
from assistant.table.headcount import only_counts
from assistant.table.laying import with_standing
from assistant.table.served import time_served
from assistant.table.time_and_money import budget_said, of_all

_DUE = re.compile(r"(?m)^  (\d{4}-\d\d-\d\d \d\d:\d\d)")
SHOWN = ("bottles", "shopping", "clock", "needs")


def plan_by_talk(context: Context, session: Session) -> Answer:
    """The plan of tonight's table in short, or what is still to be said for one."""
    context = _with_what_stands(context, session)
    evening = evening_of(context)
    missing = [name for name in ("guests", "wines", "foods") if not getattr(evening, name)]
    if missing:
        return _asked_back(context, evening, missing)
    if told := _only_told(context, session):
        return told
    record = plan(evening, session)
    if only_counts(context.frame):
        return _counted_anew(evening, record, context)
    if not record["pour_order"]:
        return _nothing_poured(evening, record, context)
    say = context.wording("plan", "say", **_spoken(record, context))
    lines = [
        say,
        *on_the_table(record)["wines"],
        *_sections(evening, record),
        *expected(context.tonight.late, context),
    ]
    return compose(context, say, [*lines, context.wording("plan", "whole")])


def _nothing_poured(evening: Evening, record: Mapping[str, Any], context: Context) -> Answer:
    """Why no wine is poured: nobody drinks any, or no choice keeps to what was told."""
    dry = context.wording("plan", "nobody-drinks", guests=f"{evening.guests:g}")
    lines = [dry] if not evening.drinkers else record["problems"]
    return replace(compose(context, lines[0], lines), dish=None)


def _only_told(context: Context, session: Session) -> Answer | None:
    """What is noted of the time and the money of a whole table; None where the plan itself is asked for."""
    frame, table = context.frame, context.tonight
    said = starts_at(of_all(frame), datetime.now(), table.day)
    noted = [when(table.start, context)] if table.start and said == table.start else []
    if budget_said(frame, table) is not None:
        noted += to_spend(table, context.stock.currency.strip(), context)
    named = any(reading.type in ("Wine", "Drink", "Food") for reading in frame.text.readings)
    if not noted or named or any(says(frame, line) for line in ("plan-it", "plans")):
        return None
    say = context.wording("plan", "noted", noted=listed(noted))
    answer = compose(context.of_evening(), say, [say, context.wording("plan", "then")])
    return replace(answer, dish=None)


def _counted_anew(evening: Evening, record: Mapping[str, Any], context: Context) -> Answer:
    """The guests as they are now and the bottles for them: who counts again wants no whole plan."""
    bottles = _spoken(record, context)["bottles"]
    say = context.wording("plan", "counted-anew", guests=f"{evening.guests:g}", bottles=bottles)
    found = _blocks(text(evening, record), ["bottles"])
    return replace(compose(context, say, [say, *found, context.wording("plan", "counted-more")]), dish=None)


def section_by_talk(name: str) -> Callable[[Context, Session], Answer]:
    """One part of the plan of tonight's table, by the name of its heading; `handout` only says how."""
    return lambda context, session: _section(name, context, session)


def _with_what_stands(context: Context, session: Session) -> Context:
    """What was talked of comes to the table where nothing is on it: who plans means that."""
    session.tonight = with_sober(with_standing(session.tonight, context.frame, session.talk), session)
    return replace(context, tonight=session.tonight).of_evening()


def _section(name: str, context: Context, session: Session) -> Answer:
    if name == "handout":
        say = context.wording("plan", "handout")
        return replace(compose(context, say, [say]), intent="plan")
    context = _with_what_stands(context, session)
    evening = evening_of(context)
    missing = [part for part in ("guests", "wines", "foods") if not getattr(evening, part)]
    if missing:
        return _asked_back(context, evening, missing)
    record = plan(evening, session)
    priced = name != "cost" or bool(record["cost"]["total"])
    found = _blocks(text(evening, record), [name]) if priced else []
    found = [f"{found[0]}\n  {_brought(context)}"] if found and _is_brought(name, context) else found
    say = found[0] if found else context.wording("plan", "no-part")
    heading, *rows = say.split("\n")
    spoken = rows[0].strip() if len(rows) == 1 else heading
    return replace(compose(context.of_evening(), spoken, [say]), dish=None, intent="plan")


def _is_brought(name: str, context: Context) -> bool:
    """Whether the list of what to buy leaves the food to the guests."""
    return name == "shopping" and context.tonight.food_brought


def _brought(context: Context) -> str:
    return context.wording("plan", "food-brought")


def evening_of(context: Context) -> Evening:
    """The table as an evening; nobody counted where no guests were named.

    What an evening file says of money, pour, wines and foods stands, where they are still on it.
    """
    table, file = _of_table(context), context.tonight.evening
    if file is None:
        return table
    wines = {line.wine: line for line in file.wines}
    return replace(
        table,
        title=file.title,
        zone=file.zone,
        meal=context.tonight.meal or file.meal,
        pour_ml=file.pour_ml,
        budget=file.budget if table.budget is None else table.budget,
        currency=file.currency or table.currency,
        room_celsius=table.room_celsius if context.tonight.heat else file.room_celsius,
        wines=tuple(wines.get(line.wine, line) for line in table.wines),
        foods=tuple(
            replace(next((of for of in file.foods if of.dishes == line.dishes), line), served=line.served)
            for line in table.foods
        ),
    )


def _of_table(context: Context) -> Evening:
    """What was said, without what only a file says."""
    tonight, heat = context.tonight, context.tonight.heat
    return Evening(
        title="",
        start=tonight.start,
        zone=None,
        guests=round(tonight.guests or 0),
        non_drinkers=round(tonight.non_drinkers),
        meal=tonight.meal or "tasting",
        pour_ml=fact("amounts", "bottle", "pour_ml").typical,
        budget=tonight.budget,
        currency=context.stock.currency.strip() or None,
        choose=None,
        room_celsius=heat.celsius if heat else fact("cooling", "limits", "room_celsius").typical,
        needs=each_guest(tonight.needs, context),
        wines=tuple(_wine(wine, context) for wine in tonight.wines),
        foods=tuple(_food(dish, context) for dish in tonight.dishes),
    )


def _food(dish: Dish, context: Context) -> FoodLine:
    """A food of the table; of a hot one, when it is told to be eaten."""
    then = time_served(dish, context.tonight, context.knowledge)
    return FoodLine(context.one_dish(dish), (dish,), brought=context.tonight.food_brought, served=then)


def each_guest(asked: Sequence[Asked], context: Context) -> tuple[GuestNeeds, ...]:
    """All that one guest asks for stands together; who has no name may be somebody else each time."""
    found: dict[object, list[Asked]] = {}
    for at, one in enumerate(asked):
        found.setdefault(one.guest if has_name(one.guest) else at, []).append(one)
    nobody = context.wording("plan", "guest")
    return tuple(GuestNeeds(row[0].guest or nobody, tuple(n.need for n in row)) for row in found.values())


def _wine(wine: str, context: Context) -> WineLine:
    """A wine of the table, with the cheapest bottle of it that is left in the host's list."""
    label, price = context.knowledge.label(wine), dict(context.tonight.prices).get(wine)
    bottle, owned = next(iter(context.stock.fitting(wine)), None), dict(context.tonight.owned).get(wine, 0)
    if bottle is None:
        return WineLine(label, wine, price=price, owned=owned)
    price = bottle.price if price is None else price
    return WineLine(label, wine, bottle.name, price, bottle.left or owned, alcohol_percent=bottle.alcohol)


def _asked_back(context: Context, evening: Evening, missing: list[str]) -> Answer:
    wanted = listed([context.wording("plan", name) for name in missing])
    noted = [line.label for line in evening.wines] + [line.label for line in evening.foods]
    if evening.guests:
        counts = {"guests": evening.guests, "without": evening.non_drinkers}
        noted.insert(
            0, context.wording("plan", "counted-some" if evening.non_drinkers else "counted", **counts)
        )
    noted += [of_need(asked.guest, asked.need, context) for asked in context.tonight.needs]
    noted += to_spend(replace(context.tonight, budget=evening.budget), evening.currency or "", context)
    if context.tonight.start:
        noted.insert(bool(evening.guests), when(context.tonight.start, context))
    say = context.wording("plan", "noted" if noted else "nothing", noted=listed(noted))
    ask = context.wording("plan", "missing", wanted=wanted)
    return replace(compose(context, say, [say, ask]), clarify=ask, understood=False)


def _spoken(record: Mapping[str, Any], context: Context) -> dict[str, str]:
    order = [row["wine"] for row in record["pour_order"]]
    count = sum(row["needed"] for row in record["bottles"])
    name = "bottles-in-all-one" if count == 1 else "bottles-in-all"
    bottles = context.wording("plan", name, count=f"{count:g}")
    return {"first": order[0], "last": order[-1], "bottles": bottles}


def _sections(evening: Evening, record: Mapping[str, Any]) -> list[str]:
    """The sections of the sheet that a host asks for first."""
    return _blocks(text(evening, record), SHOWN)


def _blocks(sheet: str, names: Sequence[str]) -> list[str]:
    wanted = [wording()("heading", name) for name in names]
    return [_from_today(block) for block in sheet.split("\n\n") if block.split("\n")[0] in wanted]


def _from_today(block: str) -> str:
    """What was due on a day that is over is due at once."""
    today, at_once = f"{date.today():%Y-%m-%d}", wording()("note", "at-once")
    over = (found for found in _DUE.findall(block) if found.split()[0] < today)
    for due in over:
        block = block.replace(due, at_once.ljust(len(due)), 1)
    return block
