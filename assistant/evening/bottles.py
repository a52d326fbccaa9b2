"""Bottles for each wine: a pure function of guests, pour and what is owned."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor

from assistant.evening.facts import HAIR, fact
from assistant.evening.records import Evening, WineLine
from assistant.knowledge.store import Knowledge


@dataclass(frozen=True, slots=True)
class Bottles:
    """Bottles of one wine. `cliff_ml` is the pour nearest to the one planned at which the count changes:

    at it or below the smaller count does. `saves_at_ml`: pour this and one bottle fewer does; `holds_to_ml`:
    the largest pour the bottles needed allow. None where nobody drinks.
    """

    wine: str
    needed: int
    to_buy: int
    cliff_ml: float | None
    saves_at_ml: float | None
    holds_to_ml: float | None


def bottles(evening: Evening, knowledge: Knowledge) -> list[Bottles]:
    """The bottles of every wine in the evening's order."""
    return [_bottles(line, evening, drinkers_of(line, evening, knowledge)) for line in evening.wines]


def drinkers_of(line: WineLine, evening: Evening, knowledge: Knowledge) -> int:
    """How many drink it: a drink without alcohol is for everybody."""
    return evening.drinkers if knowledge.wines[line.wine].type == "Wine" else evening.guests


def usable_ml(bottle_ml: float | None) -> float:
    """Millilitres of one bottle that reach a glass; of the usual bottle where no size is told."""
    size = bottle_ml or fact("amounts", "bottle", "typical_ml").typical
    return size * (1 - fact("amounts", "bottle", "lost_share").typical)


def needed(drinkers: int, pour_ml: float, usable: float) -> int:
    """Whole bottles for one pour each."""
    return ceil(drinkers * pour_ml / usable - HAIR)


def cliffs(drinkers: int, count: int, usable: float) -> tuple[float | None, float | None]:
    """The pours in ml, rounded down, up to which one bottle fewer does and up to which this count does."""
    if not drinkers or not count:
        return None, None
    saves = _down((count - 1) * usable / drinkers) if count > 1 else None
    return saves, _down(count * usable / drinkers)


def smaller_pours(evening: Evening, knowledge: Knowledge) -> list[int]:
    """Whole millilitres, the largest first, at which fewer bottles of some wine do; none below a taste."""
    least = fact("amounts", "bottle", "pour_ml").low
    saving = {floor(b.saves_at_ml) for b in bottles(evening, knowledge) if b.saves_at_ml}
    return sorted((ml for ml in saving if ml >= least), reverse=True)


def _bottles(line: WineLine, evening: Evening, drinkers: int) -> Bottles:
    usable = usable_ml(line.bottle_ml)
    count = needed(drinkers, evening.pour_ml, usable)
    saves, holds = cliffs(drinkers, count, usable)
    near = [c for c in (saves, holds) if c is not None]
    cliff = min(near, key=lambda c: abs(c - evening.pour_ml)) if near else None
    return Bottles(line.label, count, max(0, count - line.owned), cliff, saves, holds)


def refill(evening: Evening, knowledge: Knowledge) -> tuple[float, int]:
    """Millilitres of one refill of the favourite, and the bottles it takes beside what is left of one pour.

    Any wine may be the favourite: the one with least left is counted.
    """
    ml = fact("amounts", "refill", evening.meal).typical
    more = [
        needed(drinkers_of(line, evening, knowledge), evening.pour_ml + ml, usable_ml(line.bottle_ml))
        - b.needed
        for line, b in zip(evening.wines, bottles(evening, knowledge), strict=True)
    ]
    return ml, max(more, default=0)


def _down(ml: float) -> float:
    return floor(ml * 10 + HAIR) / 10
