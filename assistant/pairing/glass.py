"""A wine as drunk, in points: what the rules see of the wine."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from assistant.knowledge.concepts import Wine
from assistant.knowledge.store import Knowledge

SWEETNESS_HIDING_FROM = 3.0
BODY_PARTS = ("alcohol", "tannin", "texture", "sweetness")


@dataclass(frozen=True, slots=True)
class Glass:
    """A wine in points 0-5 by glass property; `sweetness` is as perceived, after acidity."""

    wine: str
    points: Mapping[str, float]
    sugar_points: float
    alcohol_percent: float
    colour: str
    smells: frozenset[str]
    kinds: tuple[str, ...]
    homes: frozenset[str]
    countries: frozenset[str]


def glass_of(wine: Wine, knowledge: Knowledge) -> Glass:
    """The wine in points, with perceived sweetness and body worked out."""
    points: dict[str, float] = {}
    for name, amount in wine.amounts.items():
        scale = knowledge.scales.get(name)
        if scale is not None:
            points[scale.shows] = scale.points(amount.typical)
    points["acid"] = min(5.0, points["acid"] + wine.reads_sharper)
    sugar = points["sweetness"]
    c = knowledge.constants
    points["body"] = min(5.0, sum(c[f"body-{n}"] * points[n] for n in BODY_PARTS))
    hidden = c["sweetness-hidden-by-acid"] * max(0.0, points["acid"] - SWEETNESS_HIDING_FROM)
    points["sweetness"] = max(0.0, sugar - hidden - wine.reads_drier)
    kinds = (wine.id, *wine.kinds, *wine.grapes)
    strength = wine.amounts["alcohol"].typical
    return Glass(
        wine.id,
        points,
        sugar,
        strength,
        wine.colour,
        wine.smells,
        kinds,
        wine.homes,
        knowledge.countries(wine.homes),
    )
