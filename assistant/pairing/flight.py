"""The order of pouring: the one with the least carried over from glass to glass."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from itertools import pairwise

from assistant.pairing.glass import Glass

CARRIED = ("sweetness", "body", "tannin", "aroma", "alcohol")
MOST_EXACT = 10
Constants = Mapping[str, float]


def carry_over(before: Glass, after: Glass, c: Constants) -> dict[str, float]:
    """What pouring `after` behind `before` costs, by mechanism: more before less, by constant `carry-`.

    Sugar too little to be tasted carries nothing over.
    """
    floors = {"sweetness": c["carry-sweetness-from"]}
    less = {n: max(after.points[n], floors.get(n, 0.0)) for n in CARRIED}
    costs = {n: c[f"carry-{n}"] * max(0.0, before.points[n] - less[n]) for n in CARRIED}
    oaky = before.points["oak"] >= c["heavy-oak"] and after.points["oak"] < c["bare-oak"]
    return costs | {"oak": c["carry-oak"] if oaky else 0.0}


def order_cost(order: Sequence[Glass], c: Constants) -> float:
    """The cost of a whole order."""
    return sum(sum(carry_over(a, b, c).values()) for a, b in pairwise(order))


def pour_order(glasses: Sequence[Glass], c: Constants) -> list[Glass]:
    """The cheapest order: over all orders to ten wines, by cheapest insertion beyond.

    Ties go to the lighter wine first.
    """
    start = sorted(glasses, key=lambda g: (g.points["sweetness"], g.points["body"], g.wine))
    return _exact(start, c) if len(start) <= MOST_EXACT else _inserted(start, c)


def _inserted(glasses: Sequence[Glass], c: Constants) -> list[Glass]:
    """Each wine, the lightest first, put where it costs least: good, though not always the best."""
    ordered: list[Glass] = []
    for glass in glasses:
        places = [[*ordered[:i], glass, *ordered[i:]] for i in range(len(ordered), -1, -1)]
        ordered = min(places, key=lambda order: order_cost(order, c))
    return ordered


def _exact(start: Sequence[Glass], c: Constants) -> list[Glass]:
    """By dynamic programming over subsets; time grows with 2^n n^2."""
    cost = [[sum(carry_over(a, b, c).values()) for b in start] for a in start]

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
