"""A wine named with the alcohol on its label: of the styles that its name stands for, the nearest."""

from __future__ import annotations

from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language.fold import fold
from assistant.language.frame import Frame, Reading
from assistant.language.quantities import quantities

STRENGTH = "alcoholPercent"


def of_that_strength(frame: Frame, knowledge: Knowledge) -> Frame:
    """`a riesling, 8.5 %` is the style of Riesling with the nearest alcohol, where several have the name.

    A percentage that sets a limit (`under 12 %`) says nothing of a bottle, nor does one where several
    wines are named.
    """
    percent = quantities(frame.text).percent if len(frame.wines) == 1 else None
    if percent is None or any(limit.property == STRENGTH for limit in frame.preferences):
        return frame
    styles = _styles(frame, knowledge)
    if len(styles) < 2:
        return frame
    style = min(styles, key=lambda style: _away(style, percent, knowledge))
    named = [_as(r, style, knowledge) if r.id == frame.wines[0] else r for r in frame.text.readings]
    return replace(frame, wines=(style,), text=replace(frame.text, readings=tuple(named)))


def _as(reading: Reading, style: str, knowledge: Knowledge) -> Reading:
    return replace(reading, id=style, label=knowledge.label(style))


def _styles(frame: Frame, knowledge: Knowledge) -> list[str]:
    """The styles a wine's name stands for; of a grape that is all that was said, all made of it alone."""
    [wine] = frame.wines
    style = knowledge.wines.get(wine)
    if style is None:
        return knowledge.styles_of(wine)
    said = next((fold(r.text) for r in frame.text.readings if r.id == wine), "")
    if len(style.grapes) != 1 or said != fold(knowledge.label(style.grapes[0])):
        return [wine]
    return [other.id for other in knowledge.wines.values() if other.grapes == style.grapes]


def _away(style: str, percent: float, knowledge: Knowledge) -> tuple[float, float, float]:
    """How far a percentage lies outside a style's range and from its middle; how hard that is to buy."""
    wine = knowledge.wines[style]
    alcohol = wine.amounts["alcohol"]
    outside = max(alcohol.low - percent, percent - alcohol.high, 0.0)
    return outside, abs(alcohol.typical - percent), -wine.availability
