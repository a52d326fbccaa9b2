"""`which has the least alcohol`: the wine on the table that has most or least of something."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.language.follow_lines import follow_lines
from assistant.language.frame import Frame
from assistant.pairing.glass import Glass

PREFIX, LEAST = "most-of-", "least-of-"
NEAR = 0.05
"""Points within which two wines are called alike: what is known of a style is no finer."""
PERCENT = "alcohol"


def extreme_asked(frame: Frame) -> tuple[str, bool] | None:
    """The property whose end is asked for, and whether the most of it; None for any other text."""
    if any(reading.type in ("Wine", "Food") for reading in frame.text.readings):
        return None
    lines, stems = follow_lines(), frame.text.stems
    asked = (name for name in lines if name.startswith((PREFIX, LEAST)) and lines[name].stand_in(stems))
    name = next(asked, None) if lines["which-one"].stand_in(stems) else None
    return None if name is None else (name.removeprefix(PREFIX).removeprefix(LEAST), name.startswith(PREFIX))


def extreme(context: Context) -> Answer | None:
    """The wine on the table at that end, with the one at the other; None where fewer than two are poured."""
    asked, wines = extreme_asked(context.frame), context.tonight.wines
    if asked is None or len(wines) < 2:
        return None
    name, most = asked
    ordered = sorted((context.engine.glasses[wine] for wine in wines), key=lambda g: _amount(g, name))
    ordered = ordered[::-1] if most else ordered
    first, last = _alike(ordered, name), _alike(ordered[::-1], name)
    if len(first) == len(ordered):
        return _told(context, "extreme-same", name, most, first, last)
    return _told(context, "extreme", name, most, first, last)


def _told(
    context: Context, template: str, name: str, most: bool, first: Sequence[Glass], last: Sequence[Glass]
) -> Answer:
    ends = (
        context.wording("extreme", f"{way}-{name}")
        for way in (("most", "least") if most else ("least", "most"))
    )
    one, other = ends
    wines, others = (listed([context.knowledge.label(g.wine) for g in row]) for row in (first, last))
    say = context.wording("say", template, wines=wines, end=one, others=others, other=other)
    return replace(compose(context.of_evening(), say, [say]), dish=None, intent="compare")


def _alike(ordered: Sequence[Glass], name: str) -> list[Glass]:
    """The first, and those so near to it that nobody should say which is more."""
    return [glass for glass in ordered if abs(_amount(glass, name) - _amount(ordered[0], name)) <= NEAR]


def _amount(glass: Glass, name: str) -> float:
    return glass.alcohol_percent if name == PERCENT else glass.points[name]
