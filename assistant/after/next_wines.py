"""The wines of the next evening, by the exact chooser: new ones, of one country or within limits if asked."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from math import ceil

from assistant.answers.choose import IN_A_SHOP
from assistant.answers.context import Context
from assistant.evening.choose_make import Chosen, best_choice, scores_of, shortlist, usual_task
from assistant.evening.choose_task import value
from assistant.evening.facts import fact
from assistant.evening.main_bites import wanting_wine
from assistant.evening.records import FoodLine
from assistant.knowledge.store import Knowledge
from assistant.pairing.choose import COMMONEST
from assistant.pairing.dish import Dish, table_of
from assistant.pairing.flight import pour_order
from assistant.pairing.likeness import unlike


@dataclass(frozen=True, slots=True)
class NextWines:
    """The choice with its wines in pouring order; `country` and of how many where one was to be found."""

    chosen: Chosen
    ordered: tuple[str, ...]
    country: str | None = None
    countries: int = 0


def in_shops(knowledge: Knowledge) -> list[str]:
    """Every wine that a good shop has."""
    return [w.id for w in knowledge.wines.values() if w.type == "Wine" and w.availability >= IN_A_SHOP]


def new_wines(poured: Collection[str], context: Context) -> list[str]:
    """Wines in the shops that keep to the limits said, none poured before, nor much like one that was."""
    allowed = context.engine.within(in_shops(context.knowledge), context.frame.preferences)
    return [wine for wine in allowed if not any(_repeats(wine, old, context) for old in poured)]


def chosen_wines(
    foods: Sequence[FoodLine], wines: Sequence[str], count: int, must: Collection[str], context: Context
) -> NextWines | None:
    """The best so many of these wines with these foods, those that must be poured among them."""
    dishes = [dish for line in foods for dish in line.dishes]
    tasted = [dishes[i] for i in wanting_wine([[dish] for dish in dishes], context.engine)]
    among = list(dict.fromkeys((*must, *_easiest(wines, count, context))))
    if not tasted or len(among) < 1:
        return None
    chosen = _best(tasted, among, count, must, context)
    return NextWines(chosen, _ordered(chosen.wines, context)) if chosen else None


def of_one_country(
    foods: Sequence[FoodLine], wines: Sequence[str], count: int, context: Context
) -> NextWines | None:
    """The wines of the country that does best with these foods."""
    wanted = ceil(count * fact("after", "next", "themed").typical)
    by_country: dict[str, list[str]] = {}
    for wine in wines:
        for country in context.knowledge.countries(context.knowledge.wines[wine].homes):
            by_country.setdefault(country, []).append(wine)
    found: list[tuple[float, NextWines, str]] = []
    for country, members in sorted(by_country.items()):
        choice = chosen_wines(foods, members, count, (), context) if len(members) >= wanted else None
        if choice and len(choice.ordered) == count:
            found.append((value(choice.chosen.task, choice.chosen.wines), choice, country))
    if not found:
        return None
    _, best, country = max(found, key=lambda one: (one[0], one[2]))
    return NextWines(best.chosen, best.ordered, country, len(found))


def _best(
    dishes: Sequence[Dish], wines: Sequence[str], count: int, must: Collection[str], context: Context
) -> Chosen | None:
    table = table_of(list(dishes))
    names = [context.one_dish(dish) for dish in dishes]
    most = int(context.knowledge.constants["choice-candidates"])
    scores = shortlist(scores_of(table, names, wines, context.engine), most, must)
    return best_choice(usual_task(table, scores, context.engine, count, must=must))


def _easiest(wines: Sequence[str], count: int, context: Context) -> Sequence[str]:
    """The wines sold everywhere, where there are enough to choose from."""
    easy = [wine for wine in wines if context.knowledge.wines[wine].availability >= COMMONEST]
    return easy if len(easy) >= 2 * count else wines


def _repeats(wine: str, old: str, context: Context) -> bool:
    """Whether a wine does the job of one that was poured: the same, a kind of it, or much like it."""
    glasses, c = context.engine.glasses, context.knowledge.constants
    kin = wine in glasses[old].kinds or old in glasses[wine].kinds
    return wine == old or kin or unlike(glasses[wine], glasses[old], context.knowledge) < c["choice-alike"]


def _ordered(wines: Iterable[str], context: Context) -> tuple[str, ...]:
    glasses = [context.engine.glasses[wine] for wine in wines]
    return tuple(glass.wine for glass in pour_order(glasses, context.knowledge.constants))
