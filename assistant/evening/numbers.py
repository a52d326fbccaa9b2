"""What follows from the wines poured: what to buy, chill, pack and do when, and what each guest may have."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any

from assistant.evening.alcohol import alcohol
from assistant.evening.bottles import Bottles, bottles, refill
from assistant.evening.care import GuestCare, care, cautions
from assistant.evening.clock import FOODS, Task, clock, pours
from assistant.evening.facts import wording
from assistant.evening.kit import kit, measures
from assistant.evening.needs import understood
from assistant.evening.portions import Portion, portions
from assistant.evening.records import Evening
from assistant.evening.rescue import rescue
from assistant.evening.shopping import Purchase, bought_bread, bread_of, cost, shopping
from assistant.evening.temperatures import Temperature, temperatures
from assistant.evening.unserved import unserved_problems
from assistant.knowledge.problems import Problem
from assistant.session import Session

MORE = 3
NUTS = frozenset(("allergen/nuts", "allergen/peanuts", "kind/nut"))


def numbers(
    evening: Evening,
    session: Session,
    now: datetime | None = None,
    drinks: Sequence[str] = (),
    told: Sequence[Problem] = (),
) -> dict[str, Any]:
    """The fields `bottles` to `problems` of the contract, with `foods`, `if_more` and `rescue` beside them.

    All wines of the evening are poured, in their order. `drinks` without alcohol are offered too, `told` are
    problems found on the way. `now` gives the `rescue`; see `local`. Plain dictionaries and lists, ready for
    JSON; moments are ISO 8601 to the minute, local time.
    """
    known = session.knowledge
    wines, foods, cold = bottles(evening, known), portions(evening, known), temperatures(evening, known)
    guests, apart = _with_bread(evening, care(evening, session, drinks), session)
    allergies = sum(guest.allergy for guest in guests)
    counted = measures(evening, wines, cold, allergies, known, _nuts(evening, session))
    tasks = clock(evening, cold, counted, known)
    bought = shopping(evening, wines, foods, int(counted["ice"]), known, apart)
    flight = pours(evening, cold, known) if evening.start else []
    unserved = unserved_problems(evening, guests, session)
    problems = (*evening.problems, *told, *care_problems(evening, guests), *unserved)
    return {
        "bottles": [_bottle_row(b) for b in wines],
        "refill": dict(zip(("ml", "bottles"), refill(evening, known), strict=True)),
        "foods": [_portion_row(p) for p in foods],
        "shopping": [_purchase_row(p) for p in bought],
        "clock": [_task_row(t) for t in tasks],
        "temperatures": [_temperature_row(t) for t in cold],
        "kit": [{"item": i.item, "count": i.count, "need": i.need} for i in kit(counted)],
        "alcohol": alcohol(evening, known),
        "needs": [_care_row(g) for g in guests],
        "cost": cost(evening, bought),
        "if_more": if_more(evening, session),
        "rescue": [_task_row(t) for t in rescue(evening, cold, flight, tasks, now)] if now else [],
        "cautions": cautions(evening, guests, any(t.kind == FOODS for t in tasks), bool(drinks), session),
        "problems": [str(p) for p in problems],
    }


def _nuts(evening: Evening, session: Session) -> bool:
    """Whether nuts are bought: not where a guest must avoid them, or a need is not understood."""
    needs = [understood(said, session) for guest in evening.needs for said in guest.needs]
    return all(meant and not any(n.marks & NUTS or n.kinds & NUTS for n in meant) for meant in needs)


def _with_bread(
    evening: Evening, guests: Sequence[GuestCare], session: Session
) -> tuple[list[GuestCare], list[str]]:
    """The guests with the bread that is bought among what some are to be kept from, and who may have none."""
    bought = bought_bread(evening, session.knowledge)
    bread = bought or bread_of(evening, session.knowledge)
    found = [row.keep_away for row in care(replace(evening, foods=bread, wines=()), session)]
    apart = [g.guest for g, away in zip(guests, found, strict=True) if len(away) == len(bread)]
    rows = [replace(g, keep_away=(*g.keep_away, *away)) for g, away in zip(guests, found, strict=True)]
    return rows if bought else list(guests), apart


def if_more(evening: Evening, session: Session, guests: int = MORE) -> dict[str, Any]:
    """What so many more drinking guests change: bottles and grams that are then to buy on top."""
    fuller = evening.with_more(guests)
    wines = zip(bottles(evening, session.knowledge), bottles(fuller, session.knowledge), strict=True)
    foods = zip(portions(evening, session.knowledge), portions(fuller, session.knowledge), strict=True)
    return {
        "guests": guests,
        "bottles": [{"wine": b.wine, "more": b.to_buy - a.to_buy} for a, b in wines if b.to_buy > a.to_buy],
        "foods": [{"food": b.food, "grams": b.to_buy - a.to_buy} for a, b in foods if b.to_buy > a.to_buy],
    }


def care_problems(evening: Evening, guests: Sequence[GuestCare]) -> list[Problem]:
    """Needs nobody here understands, and more sober guests than the file counts."""
    say = wording()
    found = [
        replace(evening.problem("needs", say("problem", "need-unknown", need=need, guest=care.guest),
                say("problem", "need-unknown-do")), line=guest.line)
        for guest, care in zip(evening.needs, guests, strict=True)
        for need in care.unknown
    ]  # fmt: skip
    sober = sum(g.sober for g in guests)
    if evening.guests and sober > evening.non_drinkers:
        told = say("problem", "sober-needs", count=sober, value=evening.non_drinkers)
        do = say("problem", "sober-needs-do", count=sober)
        found.append(evening.problem("non_drinkers", told, do))
    return found


def _bottle_row(b: Bottles) -> dict[str, Any]:
    cliff = {"cliff_ml": b.cliff_ml, "saves_at_ml": b.saves_at_ml, "holds_to_ml": b.holds_to_ml}
    return {"wine": b.wine, "needed": b.needed, "to_buy": b.to_buy, **cliff}


def _portion_row(p: Portion) -> dict[str, Any]:
    grams = {"grams_per_guest": p.per_guest, "grams": p.needed, "to_buy": p.to_buy}
    return {"food": p.food, "class": p.share, **grams}


def _purchase_row(p: Purchase) -> dict[str, Any]:
    return {"item": p.item, "amount": p.amount, "unit": p.unit, "cost": p.cost}


def _task_row(task: Task) -> dict[str, str]:
    return {"at": task.at.isoformat(timespec="minutes"), "task": task.task}


def _care_row(g: GuestCare) -> dict[str, Any]:
    lists = {"may_have": g.may_have, "keep_away": g.keep_away, "check_label": g.check_label}
    return {"guest": g.guest, "needs": list(g.needs), **{name: list(found) for name, found in lists.items()}}


def _temperature_row(t: Temperature) -> dict[str, Any]:
    return {
        "wine": t.wine,
        "celsius": [t.low, t.high],
        "aim": t.aim,
        "minutes_fridge": t.minutes_fridge,
        "minutes_fridge_range": t.range_fridge and list(t.range_fridge),
        "minutes_ice": t.minutes_ice,
        "minutes_ice_range": t.range_ice and list(t.range_ice),
        "minutes_freezer": t.minutes_freezer,
        "minutes_in_glass": t.minutes_in_glass,
        "note": t.note,
    }


def local(now: datetime, evening: Evening) -> datetime:
    """A moment in the evening's local time, without its offset."""
    return now.astimezone(evening.zone).replace(tzinfo=None)
