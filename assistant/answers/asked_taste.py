"""`Is Rioja oaky`, `is Prosecco dry`: yes or no, with the figure it is held against."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.answers.context import Context
from assistant.knowledge.concepts import Wine
from assistant.language.follow_lines import opens
from assistant.language.frame import Preference
from assistant.pairing.sweetness import sweetness_word

SUGAR, BODY, STRENGTH = "sugar", "body", "alcoholPercent"


def asked_taste(wine: Wine, context: Context) -> str | None:
    """A sentence on the first taste that is asked of a wine; None where none is."""
    asked = next((p for p in context.frame.preferences if p.wanted is None), None)
    if asked is None or not opens(context.frame, "taste-asked"):
        return None
    kept = "yes" if _is_so(wine, asked, context) else "no"
    figure = context.wording("tasted-figure", asked.property, value=_value(wine, asked, context))
    return context.wording("tasted", kept, wine=wine.label, taste=asked.label, figure=figure)


def _is_so(wine: Wine, asked: Preference, context: Context) -> bool:
    """Sweetness and body go by the words a wine is described in, the rest by the bounds of the word said."""
    points, c = context.engine.glasses[wine.id].points, context.knowledge.constants
    if asked.property == SUGAR:
        return asked.label in sweetness_word(wine, points["sweetness"], c).split()
    if asked.property == BODY:
        return asked.label.startswith(body_word(points["body"], c))
    return wine.id in context.engine.within([wine.id], [asked])


def body_word(points: float, c: Mapping[str, float]) -> str:
    """light, medium or full, by the body in points."""
    return "light" if points < c["medium-body"] else "medium" if points < c["full-body"] else "full"


def _value(wine: Wine, asked: Preference, context: Context) -> str:
    """Grams of sugar a litre, alcohol in percent by volume, or points from 0 to 5."""
    if asked.property == SUGAR:
        return f"{wine.amounts['residualSugar'].typical:g}"
    glass = context.engine.glasses[wine.id]
    return f"{glass.alcohol_percent if asked.property == STRENGTH else glass.points[asked.property]:.1f}"
