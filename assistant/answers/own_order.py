"""A host's own order: `the port first, that's how I do it`, `I poured the Rioja already, what's next`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.evening.flight_reasons import cost_by_mechanism
from assistant.evening.flight_reasons import reason as step_reason
from assistant.language.follow_lines import says
from assistant.language.follow_words import follow_words
from assistant.pairing.flight import carry_over, order_cost
from assistant.pairing.glass import Glass

WHY, ENDS = "why", (("at-start", 1), ("at-end", -1))
NAMED_PLACES = 5


@dataclass(frozen=True, slots=True)
class Wish:
    """A wine, the place of it in the best order, and the one the host gives it, both from 1."""

    wine: str
    place: int
    wanted: int


def own_order(context: Context, ordered: Sequence[Glass]) -> Answer | None:
    """What of the host's order is taken, or what comes after what is poured; None where neither is told."""
    if len(ordered) < 2 or WHY in context.frame.text.cues:
        return None
    poured = (
        [g for g in ordered if g.wine in _named(context)] if says(context.frame, "poured-already") else []
    )
    if poured:
        return _after(context, ordered, poured[-1])
    wish = next(_wishes(context, ordered), None)
    return _placed(context, ordered, wish) if wish else None


def _named(context: Context) -> set[str]:
    return {reading.id for reading in context.frame.text.readings}


def _wishes(context: Context, ordered: Sequence[Glass]) -> Iterator[Wish]:
    """The places that the host gives to wines: a place behind the name, or one wine at the start or end."""
    wines, stems = [glass.wine for glass in ordered], (*context.frame.text.stems, "")
    named = [reading for reading in context.frame.text.readings if reading.id in wines]
    told = [(r.id, follow_words().places.get(stems[r.end], 0)) for r in named]
    told += [(r.id, at) for r in named for line, at in ENDS if says(context.frame, line) and len(named) == 1]
    for wine, wanted in told:
        if wanted and wanted <= len(wines):
            yield Wish(wine, wines.index(wine) + 1, wanted if wanted > 0 else len(wines))


def _placed(context: Context, ordered: Sequence[Glass], wish: Wish) -> Answer:
    """Whether the book has the wine there too, what it costs, and the whole order with it there."""
    constants, rest = context.knowledge.constants, [g for g in ordered if g.wine != wish.wine]
    own = [*rest[: wish.wanted - 1], ordered[wish.place - 1], *rest[wish.wanted - 1 :]]
    lost = order_cost(own, constants) - order_cost(ordered, constants)
    kind = (
        "own-same"
        if wish.place == wish.wanted
        else "own-costs"
        if lost > constants["order-noise"]
        else "own-fine"
    )
    reason = context.wording("order", step_reason(ordered, wish.place - 1, constants))
    fields = {"wine": context.knowledge.label(wish.wine), "place": _called(context, wish.wanted, ordered)}
    fields |= {"book": _called(context, wish.place, ordered), "reason": reason}
    say = capital(context.wording("order", kind, what=_broken(context, ordered, own), **fields))
    steps = listed([context.knowledge.label(glass.wine) for glass in own])
    return compose(context, say, [say, context.wording("order", "own-order", wines=steps)])


def _broken(context: Context, ordered: Sequence[Glass], own: Sequence[Glass]) -> str:
    """By what the host's order costs most."""
    before, after = (cost_by_mechanism(order, context.knowledge.constants) for order in (ordered, own))
    return context.wording("swapped", max(after, key=lambda name: after[name] - before[name]))


def _called(context: Context, place: int, ordered: Sequence[Glass]) -> str:
    if place == len(ordered):
        return context.wording("order", "place-last")
    name = f"place-{place}" if place <= NAMED_PLACES else "place-n"
    return context.wording("order", name, number=place)


def _after(context: Context, ordered: Sequence[Glass], poured: Glass) -> Answer:
    """What comes behind the wine that is poured, and what suffers there of all that came before it."""
    at, label = ordered.index(poured), context.knowledge.label
    behind, missed = ordered[at + 1 :], [g for g in ordered[:at] if g.wine not in _named(context)]
    comes = label((*behind, *missed, poured)[0].wine)
    say = context.wording(
        "order", "poured-next" if behind else "poured-last", wine=label(poured.wine), comes=comes
    )
    costs = [carry_over(poured, glass, context.knowledge.constants) for glass in missed]
    worst = {name: sum(cost[name] for cost in costs) for name in (costs[0] if costs else ())}
    lines = [say, *([_missed(context, poured, missed, worst)] if any(worst.values()) else [])]
    return compose(context, say, lines)


def _missed(context: Context, poured: Glass, missed: Sequence[Glass], worst: dict[str, float]) -> str:
    what = context.wording("swapped", max(worst, key=lambda name: worst[name]))
    wines = listed([context.knowledge.label(glass.wine) for glass in missed])
    fields = {"wine": context.knowledge.label(poured.wine), "wines": wines, "what": what}
    return context.wording("order", "poured-missed", **fields)
