"""A wine named with its alcohol or its sweetness: of the styles that its name stands for, the one meant."""

from __future__ import annotations

from dataclasses import replace
from math import inf

from assistant.knowledge.store import Knowledge
from assistant.language.fold import fold
from assistant.language.follow_lines import says
from assistant.language.frame import Frame, Preference, Reading
from assistant.language.quantities import quantities
from assistant.pairing.glass import glass_of

STRENGTH, SUGAR = "alcoholPercent", "sugar"


def as_labelled(frame: Frame, knowledge: Knowledge) -> Frame:
    """The frame with the style that the alcohol or the sweetness said of its wine tells."""
    return of_that_sweetness(of_that_strength(frame, knowledge), knowledge)


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
    return _meaning(frame, min(styles, key=lambda style: _away(style, percent, knowledge)), knowledge)


def of_that_sweetness(frame: Frame, knowledge: Knowledge) -> Frame:
    """`riesling, the off-dry one` is the style of Riesling that is off-dry, the easiest of them to buy."""
    said = [limit for limit in frame.preferences if limit.property == SUGAR and not limit.banned]
    if len(said) != 1 or len(frame.wines) != 1 or not says(frame, "of-sweetness"):
        return frame
    fitting = [style for style in _styles(frame, knowledge) if _is_within(style, said[0], knowledge)]
    if not fitting:
        return frame
    rest = tuple(limit for limit in frame.preferences if limit is not said[0])
    if frame.wines[0] in fitting:
        return replace(frame, preferences=rest)
    best = max(fitting, key=lambda style: knowledge.wines[style].availability)
    return _meaning(replace(frame, preferences=rest), best, knowledge)


def _is_within(style: str, limit: Preference, knowledge: Knowledge) -> bool:
    """Whether the sugar of a wine, in points, lies within a limit; no drink without alcohol is meant."""
    wine = knowledge.wines[style]
    points = glass_of(wine, knowledge).sugar_points
    within = (limit.low or 0.0) <= points <= (inf if limit.high is None else limit.high)
    return wine.type == "Wine" and within


def _meaning(frame: Frame, style: str, knowledge: Knowledge) -> Frame:
    """The frame with this style in place of the wine named."""
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
    if len(style.grapes) != 1 or said not in _names(style.grapes[0], knowledge):
        return [wine]
    return [other.id for other in knowledge.wines.values() if other.grapes == style.grapes]


def _names(grape: str, knowledge: Knowledge) -> set[str]:
    entry = knowledge.entry(grape)
    return {fold(name) for key in ("prefLabel", "altLabel") for name in entry.get(key, ())}


def _away(style: str, percent: float, knowledge: Knowledge) -> tuple[float, float, float]:
    """How far a percentage lies outside a style's range and from its middle; how hard that is to buy."""
    wine = knowledge.wines[style]
    alcohol = wine.amounts["alcohol"]
    outside = max(alcohol.low - percent, percent - alcohol.high, 0.0)
    return outside, abs(alcohol.typical - percent), -wine.availability
