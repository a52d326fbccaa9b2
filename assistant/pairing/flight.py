"""The order of pouring: the one with the least carried over from glass to glass."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from itertools import pairwise

from assistant.pairing.glass import Glass

# What each unit of "more before less" costs; common practice, judged.
CARRY = {"sweetness": 3.0, "body": 2.0, "tannin": 2.0, "aroma": 1.0, "alcohol": 1.0}
OAK_BEFORE_BARE = 1.0
HEAVY_OAK, BARE = 3.0, 1.0
MOST_EXACT = 10


def carry_over(before: Glass, after: Glass) -> dict[str, float]:
    """What pouring `after` behind `before` costs, by mechanism."""
    costs = {n: w * max(0.0, before.points[n] - after.points[n]) for n, w in CARRY.items()}
    oaky = before.points["oak"] >= HEAVY_OAK and after.points["oak"] < BARE
    return costs | {"oak": OAK_BEFORE_BARE if oaky else 0.0}


def order_cost(order: Sequence[Glass]) -> float:
    """The cost of a whole order."""
    return sum(sum(carry_over(a, b).values()) for a, b in pairwise(order))


def pour_order(glasses: Sequence[Glass]) -> list[Glass]:
    """The cheapest order: over all orders to ten wines, by cheapest insertion beyond.

    Ties go to the lighter wine first.
    """
    start = sorted(glasses, key=lambda g: (g.points["sweetness"], g.points["body"], g.wine))
    return _exact(start) if len(start) <= MOST_EXACT else _inserted(start)


def _inserted(glasses: Sequence[Glass]) -> list[Glass]:
    """Each wine, the lightest first, put where it costs least: good, though not always the best."""
    ordered: list[Glass] = []
    for glass in glasses:
        places = [[*ordered[:i], glass, *ordered[i:]] for i in range(len(ordered), -1, -1)]
        ordered = min(places, key=order_cost)
    return ordered


def _exact(start: Sequence[Glass]) -> list[Glass]:
    """By dynamic programming over subsets; time grows with 2^n n^2."""
    cost = [[sum(carry_over(a, b).values()) for b in start] for a in start]

    @cache
    def best(left: frozenset[int], last: int) -> tuple[float, tuple[int, ...]]:
        if not left:
            return 0.0, ()
        options = []
        for i in sorted(left):
            rest, tail = best(left - {i}, i)
            options.append((rest + (cost[last][i] if last >= 0 else 0.0), (i, *tail)))
        return min(options)

    return [start[i] for i in best(frozenset(range(len(start))), -1)[1]]
