"""From how many bottles on further ones are bought for variety and teaching, not for the food."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from assistant.evening.choose_search import choose
from assistant.evening.choose_task import Scores, Task
from assistant.evening.coverage import coverage
from assistant.evening.selecting import MOST_STATES


class Reach(NamedTuple):
    """What the best so many wines do for the food: the mean score and how many foods none is fair with."""

    bottles: int
    mean: float
    gaps: int
    proven: bool


def reaches(scores: Scores, most: int) -> list[Reach]:
    """The reach of the best one, two ... wines, by the food alone."""
    return [_reach(scores, count) for count in range(1, min(most, len(scores.of)) + 1)]


def _reach(scores: Scores, count: int) -> Reach:
    choice = choose(Task(scores, count, 0.0), MOST_STATES)
    if choice is None:
        raise ValueError(f"{count} of {len(scores.of)} wines cannot be chosen")
    return Reach(count, scores.mean(choice.wines), len(coverage(scores, choice.wines).gaps), choice.proven)


def saturates_at(found: Sequence[Reach], c: Mapping[str, float]) -> int | None:
    """The number from which every further bottle looked at adds too little and closes no gap.

    None where there is no such number, or where some choice is not proven to be the best.
    """
    if not all(reach.proven for reach in found):
        return None
    adds = [b.mean - a.mean >= c["choice-saturated"] or b.gaps < a.gaps for a, b in pairwise(found)]
    last = max((i for i, adding in enumerate(adds, 1) if adding), default=0)
    return last + 1 if last < len(adds) else None
