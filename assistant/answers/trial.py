"""A popular claim tried on a dish: the best wine that keeps to it against the best that does not."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from assistant.answers.context import Context
from assistant.knowledge import names
from assistant.knowledge.concepts import Entry, first
from assistant.knowledge.store import Knowledge
from assistant.language.frame import Preference
from assistant.pairing import choose
from assistant.pairing.dish import Dish, table_of
from assistant.pairing.match import Match

MOST_DISHES = 3


@dataclass(frozen=True, slots=True)
class Trial:
    """One dish with the best wine that keeps to a claim and the best that breaks it."""

    dish: Dish
    keeps: Match
    breaks: Match

    @property
    def lead(self) -> float:
        """By how much the wine that breaks the claim does better, in score."""
        return self.breaks.score - self.keeps.score


def trials(context: Context, claim: str) -> list[Trial]:
    """The claim tried on each of the first dishes of the frame that it is about."""
    ways = context.knowledge.entry(claim).get("shownBy", [])
    found = [_trial(context, dish, ways) for dish in context.frame.dishes[:MOST_DISHES]]
    return [trial for trial in found if trial]


def _trial(context: Context, dish: Dish, ways: Iterable[Entry]) -> Trial | None:
    way = next((w for w in ways if _concerns(w, dish, context.knowledge)), None)
    if way is None:
        return None
    keeps, breaks = _best(context, dish, way["keepsTo"][0]), _best(context, dish, way["breaks"][0])
    return Trial(dish, keeps, breaks) if keeps and breaks else None


def _concerns(way: Entry, dish: Dish, knowledge: Knowledge) -> bool:
    """Whether a trial is about a dish: a kind or trait of any of its parts, or any food at all."""
    about = set(way.get("about", ()))
    foods = [knowledge.food(part.food) for part in dish.parts]
    return not about or any(about & {food.id, *food.kinds, *food.traits} for food in foods)


def _best(context: Context, dish: Dish, chosen: Entry) -> Match | None:
    """The best of the chosen wines with the dish, one that is easy to find where it is nearly as good."""
    engine, knowledge = context.engine, context.knowledge
    cellar = [w.id for w in knowledge.wines.values() if w.type == "Wine"]
    wines = engine.within(cellar, list(_limits(chosen)))
    ranked = engine.rank(table_of([dish]), wines) if wines else []
    return next(iter(choose.picks(ranked, 1, knowledge)), None)


def _limits(chosen: Entry) -> Iterator[Preference]:
    """The choice of wines as limits, which the graph query for limits understands."""
    for kind in chosen.get("wineKind", ()):
        yield Preference(kind, "kind", wanted=kind)
    for kind in chosen.get("notKind", ()):
        yield Preference(kind, "kind", wanted=kind, banned=True)
    for limit in chosen.get("limit", ()):
        points = names.local(limit["onPoints"][0])
        yield Preference(points, points, low=first(limit, "from"), high=first(limit, "upTo"))
