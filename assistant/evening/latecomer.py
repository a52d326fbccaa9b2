"""A guest who comes late: what to pour for that one, while nobody else's wine is dropped or hurried."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, time, timedelta

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.by_talk import evening_of
from assistant.evening.chill_by_talk import as_poured
from assistant.evening.clock import Pour, pours
from assistant.evening.temperatures import temperatures
from assistant.language.arriving import arrivals, who_came
from assistant.language.fold import key
from assistant.language.follow_lines import behind, says
from assistant.language.quantities import numbers
from assistant.pairing.flight import pour_order
from assistant.session import Session

PLAN = "plan"
LONGEST = timedelta(hours=6)  # of an evening, by which it is known to be over


def latecomer(context: Context, session: Session) -> Answer | None:
    """Half a measure of what was missed, or a place to join; None without wines on the table."""
    if len(context.tonight.wines) < 2:
        return None
    say = _named(context) or _of_anybody(context)
    lines = [say, context.wording("plan", "late-guest-then")]
    return replace(compose(context.of_evening(), say, lines), intent=PLAN, dish=None)


def _of_anybody(context: Context) -> str:
    """What is told where nobody is named, or how many wines were missed is told."""
    missed = listed([context.knowledge.label(wine) for wine in _missed(context)])
    return context.wording("plan", "late-guest-missed" if missed else "late-guest", wines=missed)


def _named(context: Context) -> str:
    """What the guest misses who is named or was told to come late; empty where that is nobody."""
    typed, late = context.frame.text.typed, dict(context.tonight.late)
    told = next((one.guest for one in arrivals(typed) if one.guest), "")
    guest = next((name for name in late if name.lower() == told.lower()), "") if told else who_came(typed)
    guest = guest or next(reversed(late), "")
    if not guest or _missed(context):
        return ""
    evening = as_poured(evening_of(context), context.engine)
    flight = (
        pours(evening, temperatures(evening, context.knowledge), context.knowledge) if evening.start else []
    )
    at, now = _there(late.get(guest), bool(who_came(typed)), evening.start)
    if at is None and not (who_came(typed) or says(context.frame, "missed")):
        return ""
    return _sentence(guest, at, now, flight, [line.label for line in evening.wines], context)


def _there(told: time | None, came: bool, start: datetime | None) -> tuple[datetime | None, bool]:
    """When a guest is there, and whether that is now, by the clock of the evening that goes on."""
    now = datetime.now()
    if start and came and start <= now <= start + LONGEST:
        return now, True
    return (datetime.combine(start.date(), told) if start and told else None), False


def _sentence(
    guest: str, at: datetime | None, now: bool, flight: list[Pour], order: list[str], context: Context
) -> str:
    if at is None:
        return context.wording("plan", "late-guest-order", guest=guest, wines=listed(order), first=order[0])
    missed = [pour.wine for pour in flight if pour.at < at]
    name = "late-guest-now" if now else "late-guest-at"
    name = name if missed else "late-guest-in-time"
    first = missed[0] if missed else ""
    return context.wording("plan", name, guest=guest, at=f"{at:%H:%M}", wines=listed(missed), first=first)


def _missed(context: Context) -> list[str]:
    """The wines that are named, or so many from the start of the order; none where it is not told."""
    frame, poured = context.frame, context.tonight.wines
    if not says(frame, "missed"):
        return []
    named = [wine for wine in poured if wine in {reading.id for reading in frame.text.readings}]
    glasses = pour_order([context.engine.glasses[wine] for wine in poured], context.knowledge.constants)
    found = numbers(key(behind(frame, "missed")))
    count = int(found[0][2]) if found else 1 if says(frame, "missed-one") else 0
    return named or [glass.wine for glass in glasses[: min(count, len(poured) - 1)]]
