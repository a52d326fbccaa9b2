"""Which of the listed wines are poured: the best so many within budget, what is owned and what must be."""

from __future__ import annotations

from dataclasses import dataclass, replace

from assistant.evening.bottles import bottles, smaller_pours
from assistant.evening.choose_make import full_choice, usual_task
from assistant.evening.choose_task import CLOSE, Task
from assistant.evening.facts import wording
from assistant.evening.portions import portions
from assistant.evening.records import Evening
from assistant.evening.shopping import shopping
from assistant.evening.tasting import Tasting, glasses_of
from assistant.knowledge.problems import Problem
from assistant.knowledge.store import Knowledge
from assistant.pairing.engine import Engine
from assistant.pairing.flight import pour_order

MOST_STATES = 30_000  # some three seconds; six of forty wines need a tenth of that


@dataclass(frozen=True, slots=True)
class Selection:
    """The wines poured, by label in pouring order; `task` is what they answer (None: nothing was tasted).

    `proven`: no other choice is worth more. `problems` says which limit to loosen where no choice keeps to
    all, or that nobody drinks.
    """

    poured: tuple[str, ...]
    task: Task | None
    problems: tuple[Problem, ...] = ()
    proven: bool = True


def select(evening: Evening, tasting: Tasting | None, engine: Engine) -> Selection:
    """The wines to pour; all of them where the file names no number."""
    evening, problems = _drunk(evening, engine.knowledge)
    if tasting is None or not evening.wines:
        return Selection(in_order(evening, engine), None, problems)
    task = _task(evening, tasting, engine)
    if evening.choose is None:
        return Selection(in_order(evening, engine), replace(task, budget=None), problems)
    for must in _musts(evening):
        found = full_choice(replace(task, must=must), MOST_STATES) if len(must) <= task.count else None
        if found:
            poured = in_order(evening.pouring(found.wines), engine)
            return Selection(poured, found.task, problems, found.choice.proven)
    return Selection((), None, (*problems, _too_tight(task, evening, engine.knowledge)))


def _drunk(evening: Evening, knowledge: Knowledge) -> tuple[Evening, tuple[Problem, ...]]:
    """Where nobody drinks wine, the evening without it."""
    if evening.drinkers or not evening.guests:
        return evening, ()
    drinks = tuple(line for line in evening.wines if knowledge.wines[line.wine].type == "Drink")
    if len(drinks) == len(evening.wines):
        return evening, ()
    told = wording()("problem", "nobody-drinks", guests=evening.guests)
    problem = evening.problem("non_drinkers", told, wording()("problem", "nobody-drinks-do"))
    return replace(evening, wines=drinks), (problem,)


def _task(evening: Evening, tasting: Tasting, engine: Engine) -> Task:
    """What is asked of the choice; the budget is what the food leaves of it."""
    known, labels = engine.knowledge, [line.label for line in evening.wines]
    left = None if evening.budget is None else evening.budget - food_cost(evening, known)
    return usual_task(
        tasting.table,
        tasting.tasted.among(labels),
        engine,
        evening.choose or len(labels),
        must=[line.label for line in evening.wines if line.must],
        prices=prices_of(evening, known),
        budget=left,
        styles=tasting.styles,
    )


def prices_of(evening: Evening, knowledge: Knowledge) -> dict[str, float]:
    """What is still to be paid for each wine; one without a price cannot count."""
    prices = {line.label: line.price or 0.0 for line in evening.wines}
    return {b.wine: prices[b.wine] * b.to_buy for b in bottles(evening, knowledge)}


def food_cost(evening: Evening, knowledge: Knowledge) -> float:
    """What the food costs that is still to be bought, as far as its price is known."""
    bought = shopping(evening, (), portions(evening, knowledge), 0, knowledge)
    return sum(purchase.cost or 0.0 for purchase in bought)


def _musts(evening: Evening) -> list[frozenset[str]]:
    """What must be poured: with the bottles at hand, and, where they are too many, without them."""
    must = frozenset(line.label for line in evening.wines if line.must)
    owned = frozenset(line.label for line in evening.wines if line.owned)
    return [must | owned, must] if owned - must else [must]


def _too_tight(task: Task, evening: Evening, knowledge: Knowledge) -> Problem:
    """The one limit to loosen where no choice keeps to all of them."""
    must = len(task.must)
    if must > task.count:
        told = wording()("problem", "too-many-musts", count=must, choose=task.count)
        return evening.problem("choose", told, wording()("problem", "too-many-musts-do", count=must))
    money = {
        "least": evening.money(_least(task, evening, task.count)),
        "budget": evening.money(evening.budget),
    }
    told = wording()("problem", "over-budget", count=task.count, **money)
    name, fields = _way_out(task, evening, knowledge)
    return evening.problem("budget", told, wording()("problem", name, **money, **fields))


def _way_out(task: Task, evening: Evening, knowledge: Knowledge) -> tuple[str, dict[str, int]]:
    """What else than more money would do: smaller pours, else fewer wines, else cheaper ones."""
    budget = (evening.budget or 0.0) + CLOSE
    for ml in smaller_pours(evening, knowledge):
        prices = prices_of(replace(evening, pour_ml=ml), knowledge)
        if _least(replace(task, prices=prices), evening, task.count) <= budget:
            return "over-budget-pour-do", {"ml": ml}
    for count in range(task.count - 1, max(len(task.must), 1) - 1, -1):
        if _least(task, evening, count) <= budget:
            return "over-budget-fewer-do", {"fewer": count}
    return "over-budget-do", {}


def _least(task: Task, evening: Evening, count: int) -> float:
    """What the food and the cheapest so many wines cost, those that must be poured among them."""
    food = (evening.budget or 0.0) - (task.budget or 0.0)
    others = sorted(task.prices[wine] for wine in task.wines if wine not in task.must)
    return food + task.cost(task.must) + sum(others[: count - len(task.must)])


def in_order(evening: Evening, engine: Engine) -> tuple[str, ...]:
    """The labels of all wines in the order that carries least from glass to glass."""
    ordered = pour_order(glasses_of(evening, engine), engine.knowledge.constants)
    return tuple(glass.wine for glass in ordered)
