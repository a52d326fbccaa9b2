"""`Is Rioja oaky`, `is Prosecco dry`: yes or no, with the figure it is held against."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.answers.context import Context
from assistant.answers.wording import listed
from assistant.knowledge.concepts import Wine
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Preference
from assistant.pairing.sweetness import sweetness_word

SUGAR, BODY, STRENGTH, OAK = "sugar", "body", "alcoholPercent", "oak"


def asked_taste(wine: Wine, context: Context) -> str | None:
    """A sentence on the first taste that is asked of a wine; None where none is."""
    asked = next((p for p in context.frame.preferences if p.wanted is None), None)
    if asked is None or not (opens(context.frame, "taste-asked") or oak_asked(context)):
        return None
    kept = "yes" if _is_so(wine, asked, context) else "no"
    figure = context.wording("tasted-figure", asked.property, value=_value(wine, asked, context))
    return context.wording("tasted", kept, wine=wine.label, taste=asked.label, figure=figure)


def oak_asked(context: Context) -> bool:
    """Whether it is asked how much oak a wine has."""
    return says(context.frame, "oak-asked")


def oak_told(wine: Wine, context: Context) -> list[str]:
    """How much oak a wine has as a rule, and what those labelled otherwise have; empty unless asked."""
    if not oak_asked(context) or OAK not in wine.amounts:
        return []
    amount, wines, glasses = wine.amounts[OAK], context.knowledge.wines, context.engine.glasses
    rule = context.wording("line", "oak-range", low=f"{amount.low:g}", high=f"{amount.high:g}")
    kin = [other for other in wines.values() if wine.id in other.kinds or other.id == wine.id]
    kin.sort(key=lambda other: glasses[other.id].points[OAK])
    told = [f"{other.label} {glasses[other.id].points[OAK]:.1f}" for other in kin]
    return [rule, *([context.wording("line", "oak-labels", wines=listed(told))] if told[1:] else [])]


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
