"""Why each wine is poured where it is, and what breaks where two neighbours change places."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from assistant.pairing.flight import carry_over, pour_order
from assistant.pairing.glass import Glass

ALONE, ALIKE, LAST = "alone", "alike", "last-"
OPENS, RESTARTS, CLOSES = "opens", "restarts", "closes"
Constants = Mapping[str, float]


@dataclass(frozen=True, slots=True)
class Step:
    """One pour. `reason` names a mechanism of the carry-over: what this wine has less of than the next.

    For the last wine it is `last-` and what it has more of than the one before; `alike` where an exchange
    would cost nothing, `alone` for a single wine. `place` tells where dry bubbles or a sweet wine sit:
    `opens`, `restarts`, `closes` or nothing.
    """

    wine: str
    reason: str
    place: str


@dataclass(frozen=True, slots=True)
class Broken:
    """What pouring two neighbours the other way round would cost, and by which mechanism most."""

    first: str
    second: str
    mechanism: str
    cost: float


def steps(wines: Sequence[Glass], c: Constants) -> list[Step]:
    """The wines in pouring order, each with its reason."""
    ordered = pour_order(wines, c)
    return [Step(g.wine, reason(ordered, i, c), _place(ordered, i, c)) for i, g in enumerate(ordered)]


def reason(ordered: Sequence[Glass], at: int, c: Constants) -> str:
    """What swapping the wine with the next one would cost most by; for the last, with the one before."""
    if len(ordered) == 1:
        return ALONE
    last = at == len(ordered) - 1
    before, after = (at - 1, at) if last else (at, at + 1)
    costs = carry_over(ordered[after], ordered[before], c)
    name = max(costs, key=lambda n: costs[n]) if any(costs.values()) else ALIKE
    return LAST + name if last else name


def _place(ordered: Sequence[Glass], at: int, c: Constants) -> str:
    """Dry bubbles open a flight or restart the palate; a sweet wine closes."""
    points = ordered[at].points
    if points["sweetness"] >= c["dessert-sweet"]:
        return CLOSES if at == len(ordered) - 1 else ""
    if points["bubbles"] < c["bubbles-restart"]:
        return ""
    return OPENS if at == 0 else RESTARTS


def swapped(ordered: Sequence[Glass], c: Constants) -> list[Broken]:
    """For each pair of neighbours what exchanging them costs over the whole flight (0 or more)."""
    return [_broken(ordered, i, c) for i in range(len(ordered) - 1)]


def _broken(ordered: Sequence[Glass], at: int, c: Constants) -> Broken:
    other = [*ordered[:at], ordered[at + 1], ordered[at], *ordered[at + 2 :]]
    before, after = cost_by_mechanism(ordered, c), cost_by_mechanism(other, c)
    worse = {name: after[name] - before[name] for name in after}
    cost = sum(worse.values())
    mechanism = max(worse, key=lambda n: worse[n]) if any(worse.values()) else ALIKE
    return Broken(ordered[at].wine, ordered[at + 1].wine, mechanism, round(cost, 6) + 0.0)


def cost_by_mechanism(order: Sequence[Glass], c: Constants) -> dict[str, float]:
    """What an order of two or more wines costs, by mechanism."""
    costs = [carry_over(a, b, c) for a, b in pairwise(order)]
    return {name: sum(cost[name] for cost in costs) for name in costs[0]}
