"""`we had 300 g cheddar left`, `half the Malbec left`: how much of what, as told."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from assistant.after.phrases import phrases
from assistant.language.frame import Frame, Reading, Text
from assistant.language.quantities import numbers
from assistant.language.small_words import small_words

GRAMS, BOTTLES = "g", "bottle"


@dataclass(frozen=True, slots=True)
class Amount:
    """An amount left in grams or bottles, and what there was at first, where it is said."""

    left: float
    unit: str
    had: float | None = None


def amount_said(frame: Frame) -> Amount | None:
    """The amount of what was left; two of them are what was left and what there was, the larger."""
    return amount_in(frame.text.stems)


def amounts_of_each(text: Text, things: Sequence[Reading]) -> list[Amount | None]:
    """The amount right before or behind each of these things, in order; empty where not two have one."""
    starts, ends = [one.start for one in things], [one.end for one in things]
    before = zip([0, *ends], starts, strict=False)
    behind = zip(ends, [*starts[1:], len(text.stems)], strict=True)
    found = [[amount_in(text.stems[start:end]) for start, end in spans] for spans in (before, behind)]
    most = max(found, key=lambda amounts: len(list(filter(None, amounts))))
    return most if len(list(filter(None, most))) > 1 else []


def amount_in(stems: tuple[str, ...]) -> Amount | None:
    """The amount that these words tell."""
    found = _counted(stems)
    if not found:
        return _part(stems)
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
    return found or list(_lone(stems))


def _lone(stems: tuple[str, ...]) -> Iterator[tuple[float, str]]:
    """`a pound of`: a unit with no number, right behind an article."""
    for article, stem in pairwise(stems):
        weight = phrases().weights.get(stem)
        if weight is not None and article in small_words()["articles"]:
            yield weight, GRAMS


def _part(stems: tuple[str, ...]) -> Amount | None:
    """A part of a bottle by itself: `half the Malbec`."""
    shares = phrases().shares
    at = next((at for at, word in enumerate(stems) if word in shares), None)
    return None if at is None else Amount(shares[stems[at]] * _times(stems, at), BOTTLES)


def _times(stems: tuple[str, ...], at: int) -> float:
    """How many of a part: `two thirds`, `three quarters`; no more than make a whole."""
    times = next((value for _, end, value in numbers(stems) if end == at), 1.0)
    return times if 0 < times * phrases().shares[stems[at]] <= 1.0 else 1.0
