"""Mixing parts in physical units, with contact weights and first contact.

Averaging points would be wrong, because points are roughly logarithmic: amounts are mixed
per 100 g and only the result is turned into points.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

FAT = "fat"
CONTACT = (FAT, "sugar", "titratableAcidity", "sodium", "glutamate", "scoville")
BULK = ("protein", "starch", "omega3")
LOUD = ("bitterness", "smoke", "aroma")
PH = "pH"
ALL = (*CONTACT, *BULK, *LOUD, PH)
NEUTRAL_PH = 6.5

Values = dict[str, float]


@dataclass(frozen=True, slots=True)
class Portion:
    """A part ready to mix: its values per 100 g, mass in g, contact weight, and whether it coats."""

    values: Mapping[str, float]
    mass: float
    contact: float
    coats: bool

    @property
    def touch(self) -> float:
        """How much of the tongue's contact is this part's."""
        return self.mass * self.contact


def touch_shares(portions: Sequence[Portion]) -> list[float]:
    """Each part's share of the contact, summing to 1."""
    total = sum(p.touch for p in portions) or 1.0
    return [p.touch / total for p in portions]


def mix(portions: Sequence[Portion], first_share: float, full_share: float) -> Values:
    """The values per 100 g of the dish as eaten.

    `first_share` is how much the loudest coating part weighs in the first contact,
    `full_share` the share from which a part is smelled at full strength, and from which a
    coating part takes its whole first share.
    """
    shares = touch_shares(portions)
    coated = sum(s for p, s in zip(portions, shares, strict=True) if p.coats)
    first_share *= min(1.0, coated / full_share) if len(portions) > 1 else 0.0
    mixed = {name: _contact(name, portions, shares, first_share) for name in CONTACT}
    mixed |= {name: _bulk(name, portions) for name in BULK}
    mixed |= {name: _loudest(name, portions, shares, full_share) for name in LOUD}
    mixed[PH] = _acidity(portions, shares, first_share)
    return mixed


def _contact(name: str, portions: Sequence[Portion], shares: Sequence[float], first_share: float) -> float:
    """Contact-weighted mean, pulled up to the loudest coating part (never down, and never for fat)."""
    blend = sum(s * p.values.get(name, 0.0) for p, s in zip(portions, shares, strict=True))
    loudest = max((p.values.get(name, 0.0) for p in portions if p.coats), default=0.0)
    if name == FAT or loudest <= blend:
        return blend
    return (1 - first_share) * blend + first_share * loudest


def _bulk(name: str, portions: Sequence[Portion]) -> float:
    mass = sum(p.mass for p in portions) or 1.0
    return sum(p.mass * p.values.get(name, 0.0) for p in portions) / mass


def _loudest(name: str, portions: Sequence[Portion], shares: Sequence[float], full_share: float) -> float:
    return max(
        p.values.get(name, 0.0) * min(1.0, math.sqrt(s / full_share))
        for p, s in zip(portions, shares, strict=True)
    )


def _acidity(portions: Sequence[Portion], shares: Sequence[float], first_share: float) -> float:
    """pH of the mixture: hydrogen ions add, logarithms do not."""
    ions = [10 ** -p.values.get(PH, NEUTRAL_PH) for p in portions]
    blend = sum(s * ion for s, ion in zip(shares, ions, strict=True))
    loudest = max((i for p, i in zip(portions, ions, strict=True) if p.coats), default=0.0)
    if loudest > blend:
        blend = (1 - first_share) * blend + first_share * loudest
    return -math.log10(blend)
