"""`we had 300 g cheddar left`, `half the Malbec left`: how much of what, as told."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.after.phrases import phrases
from assistant.language.frame import Frame
from assistant.language.quantities import numbers

GRAMS, BOTTLES = "g", "bottle"


@dataclass(frozen=True, slots=True)
class Amount:
    """An amount left in grams or bottles, and what there was at first, where it is said."""

    left: float
    unit: str
    had: float | None = None


def amount_said(frame: Frame) -> Amount | None:
    """The amount of what was left; two of them are what was left and what there was, the larger."""
    found = _counted(frame.text.stems)
    if not found:
        return _part(frame.text.stems)
    unit = found[0][1]
    same = [value for value, one in found if one == unit]
    left = min(same) if len(same) > 1 else same[0]
    return Amount(left, unit, max(same) if len(same) > 1 else None)


def _counted(stems: tuple[str, ...]) -> list[tuple[float, str]]:
    """Every number with a unit right behind it, in grams or bottles."""
    found = []
    for _, end, value in numbers(stems):
        weight = phrases().weights.get(stems[end]) if end < len(stems) else None
        if weight is not None:
            found.append((value * weight, GRAMS))
        elif end < len(stems) and stems[end] in phrases().sets["bottles"]:
            found.append((value, BOTTLES))
    return found


def _part(stems: tuple[str, ...]) -> Amount | None:
    """A part of a bottle by itself: `half the Malbec`."""
    shares = phrases().shares
    part = next((shares[word] for word in stems if word in shares), None)
    return None if part is None else Amount(part, BOTTLES)
