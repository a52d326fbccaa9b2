"""A guest who comes late: what to pour for that one, while nobody else's wine is dropped or hurried."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.language.fold import key
from assistant.language.follow_lines import behind, says
from assistant.language.quantities import numbers
from assistant.pairing.flight import pour_order
from assistant.session import Session

PLAN = "plan"


def latecomer(context: Context, session: Session) -> Answer | None:
    """Half a measure of what was missed, or a place to join; None without wines on the table."""
    if len(context.tonight.wines) < 2:
        return None
    missed = listed([context.knowledge.label(wine) for wine in _missed(context)])
    say = context.wording("plan", "late-guest-missed" if missed else "late-guest", wines=missed)
    lines = [say, context.wording("plan", "late-guest-then")]
    return replace(compose(context.of_evening(), say, lines), intent=PLAN, dish=None)


def _missed(context: Context) -> list[str]:
    """The wines that are named, or so many from the start of the order; none where it is not told."""
    frame, poured = context.frame, context.tonight.wines
    if not says(frame, "missed"):
        return []
    named = [wine for wine in poured if wine in {reading.id for reading in frame.text.readings}]
    glasses = pour_order([context.engine.glasses[wine] for wine in poured], context.knowledge.constants)
    count = next((int(number) for _, _, number in numbers(key(behind(frame, "missed")))), 1)
    return named or [glass.wine for glass in glasses[: min(count, len(poured) - 1)]]
