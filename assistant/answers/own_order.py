"""A host's own order: `the port first, that's how I do it`, `I poured the Rioja already, what's next`."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.evening.flight_reasons import cost_by_mechanism
from assistant.evening.flight_reasons import reason as step_reason
from assistant.language.follow_lines import says
from assistant.language.pour_places import places_swapped, places_told
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
    wishes = _wishes(context, ordered)
    return _placed(context, ordered, wishes) if wishes else None


def _named(context: Context) -> set[str]:
    return {reading.id for reading in context.frame.text.readings}


def _wishes(context: Context, ordered: Sequence[Glass]) -> list[Wish]:
    """The places that the host gives to wines: each behind its name, or one wine at the start or end."""
    wines = [glass.wine for glass in ordered]
    named = [reading.id for reading in context.frame.text.readings if reading.id in wines]
    told = [(wine, place) for wine, place in places_told(context.frame.text) if wine in wines]
    if len(named) == 1:
        told += [(named[0], at) for line, at in ENDS if says(context.frame, line)]
    if swapped := places_swapped(context.frame, wines):
        told = [(swapped[0], wines.index(swapped[1]) + 1), (swapped[1], wines.index(swapped[0]) + 1)]
    once = {wine: place for wine, place in reversed(told) if place <= len(wines)}
    wishes = (Wish(w, wines.index(w) + 1, p if p > 0 else len(wines)) for w, p in once.items())
    return sorted(wishes, key=lambda wish: wish.wanted)


def _placed(context: Context, ordered: Sequence[Glass], wishes: Sequence[Wish]) -> Answer:
    """Whether the book has the wines there too, what it costs, and the whole order with them there."""
    constants, own = context.knowledge.constants, _as_wished(ordered, wishes)
    lost = order_cost(own, constants) - order_cost(ordered, constants)
    taken = all(wish.place == wish.wanted for wish in wishes)
    kind = "same" if taken else "costs" if lost > constants["order-noise"] else "fine"
    wish, book = wishes[0], listed([context.knowledge.label(glass.wine) for glass in ordered])
    reason = context.wording("order", step_reason(ordered, wish.place - 1, constants))
    fields = {"wine": context.knowledge.label(wish.wine), "place": _called(context, wish.wanted, ordered)}
    fields |= {"reason": reason, "what": _broken(context, ordered, own)}
    fields |= {"book": _called(context, wish.place, ordered) if len(wishes) == 1 else book}
    name = f"own-{kind}" if len(wishes) == 1 else f"own-all-{kind}"
    say = capital(context.wording("order", name, **fields))
    steps = listed([context.knowledge.label(glass.wine) for glass in own])
    return compose(context, say, [say, context.wording("order", "own-order", wines=steps)])


def _as_wished(ordered: Sequence[Glass], wishes: Sequence[Wish]) -> list[Glass]:
    """The best order with each wine at the place the host gives it; `wishes` from the first place on."""
    moved = {wish.wine for wish in wishes}
    own = [glass for glass in ordered if glass.wine not in moved]
    for wish in wishes:
        own.insert(wish.wanted - 1, ordered[wish.place - 1])
    return own


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
