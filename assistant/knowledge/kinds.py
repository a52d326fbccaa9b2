"""A whole kind as one food: what "blue cheese" or "fish" is like, worked out from its members."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import replace
from statistics import median

from assistant.knowledge.concepts import Amount, Food

SHARED_BY = 0.5


def kind_as_food(kind: Food, members: Sequence[Food]) -> Food:
    """A food with the median amounts of the members and the traits half of them share.

    A kind without members keeps its own (empty) amounts.
    """
    simple = [m for m in members if m.amounts and not m.parts]
    if not simple:
        return kind
    names = {name for m in simple for name in m.amounts}
    amounts = {name: _median(m.amounts[name] for m in simple if name in m.amounts) for name in names}
    traits = Counter(trait for m in simple for trait in m.traits)
    shared = {trait for trait, n in traits.items() if n >= SHARED_BY * len(simple)}
    shift = median(m.weight_shift for m in simple)
    after = sum(m.shift_after for m in simple) * 2 > len(simple)
    return replace(
        kind,
        amounts=amounts,
        traits=kind.traits | shared,
        weight_shift=shift,
        shift_after=after,
        lean=kind.lean if kind.lean is not None else _lean(simple),
        care=frozenset().union(*(m.care for m in simple)),
    )


def _median(amounts: Iterable[Amount]) -> Amount:
    values = list(amounts)
    low, typical, high = (median(getattr(v, side) for v in values) for side in ("low", "typical", "high"))
    return Amount(low, typical, high, "computed", "source/computed")


def _lean(members: Sequence[Food]) -> float | None:
    leans = [m.lean for m in members if m.lean is not None]
    return median(leans) if leans else None
