"""The order of pouring: the one with the least carried over from glass to glass."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from itertools import pairwise

from assistant.pairing.glass import Glass

CARRIED = ("sweetness", "body", "tannin", "aroma", "alcohol")
NOT_FELT_BY_SWEET: tuple[str, ...] = ("body", "tannin")
NOT_LEFT_BY_BUBBLES: tuple[str, ...] = ("body", "tannin", "aroma", "alcohol", "oak")
MOST_EXACT = 10
RED = "colour/red"
Constants = Mapping[str, float]


def carry_over(before: Glass, after: Glass, c: Constants) -> dict[str, float]:
    """What pouring `after` behind `before` costs, by mechanism: more before less, by constant `carry-`.

    Sugar too little to be tasted carries nothing over, and dry bubbles carry nothing but sugar. A wine for
    dessert before a dry one costs more than its sugar; behind one, sugar covers grip. `maturity`: a fragile
    old wine behind a young one of its colour; `bubbles`: what custom opens with, behind a still wine.
    """
    floors = {"sweetness": c["carry-sweetness-from"]}
    less = {n: max(after.points[n], floors.get(n, 0.0)) for n in CARRIED}
    costs = {n: c[f"carry-{n}"] * max(0.0, before.points[n] - less[n]) for n in CARRIED}
    oaky = before.points["oak"] >= c["heavy-oak"] and after.points["oak"] < c["bare-oak"]
    costs |= {
        "oak": c["carry-oak"] if oaky else 0.0,
        "maturity": c["carry-maturity"] * _older(before, after, c),
    }
    if after.colour == RED and not _dessert(before, c):
        costs["sweetness"] *= c["carry-to-red"]  # the off-dry white stands between dry whites and reds
    if _dessert(before, c) and after.points["sweetness"] < floors["sweetness"]:
        costs["sweetness"] += c["carry-dessert"]
    sweet = NOT_FELT_BY_SWEET if _dessert(after, c) else ()
    spared = NOT_LEFT_BY_BUBBLES if restarts(before, c) else sweet
    return {name: 0.0 if name in spared else cost for name, cost in costs.items()} | {
        "bubbles": c["carry-bubbles"] if opens(after, c) and not opens(before, c) else 0.0
    }


def opens(glass: Glass, c: Constants) -> bool:
    """Whether custom opens an evening with it: bubbles that are neither for dessert nor red."""
    bubbles = glass.points.get("bubbles", 0.0) >= c["bubbles-restart"]
    return bubbles and glass.points["sweetness"] < c["dessert-sweet"] and glass.colour != RED


def _dessert(glass: Glass, c: Constants) -> bool:
    return glass.points["sweetness"] >= c["dessert-sweet"]


def restarts(glass: Glass, c: Constants) -> bool:
    """Whether it leaves the palate fresh: dry bubbles."""
    return glass.points.get("bubbles", 0.0) >= c["bubbles-restart"] and (
        glass.points["sweetness"] < c["carry-sweetness-from"]
    )


def _older(before: Glass, after: Glass, c: Constants) -> float:
    """By how many points an old wine that a young one would drown is the older; 0 for other pairs."""
    fragile = after.alcohol_percent < c["fragile-under"] and before.colour == after.colour
    years = after.points.get("maturity", 0.0) - before.points.get("maturity", 0.0)
    return max(0.0, years) if fragile and after.points.get("maturity", 0.0) >= c["fragile-from"] else 0.0


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
