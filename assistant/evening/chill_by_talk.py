"""When each bottle of the table goes into the fridge, asked of all of them at once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.evening.by_talk import evening_of
from assistant.evening.clock import pours
from assistant.evening.records import Evening
from assistant.evening.temperatures import Temperature, temperatures
from assistant.pairing.engine import Engine
from assistant.pairing.flight import pour_order
from assistant.session import Session


def chill_by_talk(context: Context, session: Session) -> Answer | None:
    """When each wine of the table goes into the fridge, or how long it lies there; None without wines."""
    evening = as_poured(evening_of(context), session.engine)
    if not evening.wines:
        return None
    rows = temperatures(evening, session.knowledge)
    flight = pours(evening, rows, session.knowledge) if evening.start else []
    into = {pour.wine: pour.chilled for pour in flight if pour.chilled}
    rows.sort(key=lambda row: into.get(row.wine, datetime.max))
    say = context.wording("plan", "chill-times" if into else "chill-minutes")
    lines = [say, *(_line(row, into, context) for row in rows), context.wording("plan", "chill-ice")]
    return replace(compose(context.of_evening(), say, lines), dish=None, intent="plan")


def as_poured(evening: Evening, engine: Engine) -> Evening:
    """The evening with its wines in the order of pouring."""
    lines = {line.wine: line for line in evening.wines}
    glasses = [engine.glasses[wine] for wine in lines if wine in engine.glasses]
    order = [step.wine for step in pour_order(glasses, engine.knowledge.constants)]
    return replace(evening, wines=tuple(lines[wine] for wine in order))


def _line(row: Temperature, into: Mapping[str, datetime | None], context: Context) -> str:
    """The moment, or the minutes, for one wine; the room is cool enough for some."""
    at = into.get(row.wine)
    kind = "chill-not" if not row.minutes_fridge else "chill-at" if at else "chill-for"
    fields = {"wine": row.wine, "low": f"{row.low:g}", "high": f"{row.high:g}"}
    fields |= {"at": f"{at:%H:%M}" if at else "", "minutes": f"{row.minutes_fridge or 0:g}"}
    return context.wording("plan", kind, ice=f"{row.minutes_ice or 0:g}", **fields)
