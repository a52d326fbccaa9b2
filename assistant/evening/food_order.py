"""The order of eating: mild to strong, hot and smoky late, sweet last."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from assistant.pairing.plate import Plate

LINGERING = ("sugar", "heat", "aroma", "weight", "salt", "umami", "smoke")
ALIKE = "alike"
MOST_EXACT = 10
Constants = Mapping[str, float]
Costs = Sequence[Sequence[float]]


@dataclass(frozen=True, slots=True)
class FoodStep:
    """A food by its place in the list given, and what it has less of than the next (`alike`: nothing).

    Of the last food it is what it has more of than the one before.
    """

    food: int
    reason: str


def lingers(before: Plate, after: Plate, c: Constants) -> dict[str, float]:
    """What eating `after` some time behind `before` costs, by plate property: more before less.

    A milk's own sugar is no sweetness that lingers.
    """
    floors = {"sugar": c["linger-sugar-from"]}
    less = {n: max(after.points[n], floors.get(n, 0.0)) for n in LINGERING}
    return {n: c[f"linger-{n}"] * max(0.0, before.points[n] - less[n]) for n in LINGERING}


def eating_order(plates: Sequence[Plate], c: Constants) -> list[FoodStep]:
    """The order in which least lingers from any bite to any later one; of equals the quieter first."""
    start = sorted(range(len(plates)), key=lambda i: (plates[i].points["aroma"], i))
    cost = [[sum(lingers(plates[a], plates[b], c).values()) for b in start] for a in start]
    ordered = [start[i] for i in least_lingering(cost)]
    return [FoodStep(food, _reason(plates, ordered, i, c)) for i, food in enumerate(ordered)]


def least_lingering(cost: Costs) -> list[int]:
    """The order with the least sum of `cost[i][j]` over all i that come anywhere before j.

    Over all orders to ten things, by cheapest insertion beyond; ties keep the order given.
    """
    return _exact(cost) if len(cost) <= MOST_EXACT else _inserted(cost)


def _exact(cost: Costs) -> list[int]:
    """By dynamic programming over subsets: what comes last pays for all before it."""

    @cache
    def best(done: frozenset[int]) -> tuple[float, tuple[int, ...]]:
        if not done:
            return 0.0, ()
        options = []
        for last in done:
            before, head = best(done - {last})
            options.append((before + sum(cost[i][last] for i in done if i != last), (*head, last)))
        return min(options)

    return list(best(frozenset(range(len(cost))))[1])


def _inserted(cost: Costs) -> list[int]:
    """Each thing in the order given, put where it costs least: good, though not always the best."""
    ordered: list[int] = []
    for this in range(len(cost)):
        places = range(len(ordered), -1, -1)
        at = min(places, key=lambda i: _at(this, ordered, i, cost))
        ordered.insert(at, this)
    return ordered


def _at(this: int, ordered: Sequence[int], place: int, cost: Costs) -> float:
    """What putting a thing at a place adds."""
    before = sum(cost[other][this] for other in ordered[:place])
    return before + sum(cost[this][other] for other in ordered[place:])


def _reason(plates: Sequence[Plate], ordered: Sequence[int], at: int, c: Constants) -> str:
    """What would linger most if the food were exchanged with the next (the last: with the one before)."""
    if len(ordered) == 1:
        return ALIKE
    early = min(at, len(ordered) - 2)
    costs = lingers(plates[ordered[early + 1]], plates[ordered[early]], c)
    return max(costs, key=lambda n: costs[n]) if any(costs.values()) else ALIKE
