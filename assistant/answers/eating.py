"""What somebody does not eat, kept to in an answer: foods left off a list, dishes that do not fit."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.context import Context
from assistant.answers.wording import listed
from assistant.knowledge.diets import Fit, against, fit, marks_called, suits
from assistant.knowledge.kinds_meant import kinds_meant


def eaten(foods: Sequence[str], context: Context) -> list[str]:
    """Those of the foods that hold nothing barred and fit the diets; what may not fit counts as unfit."""
    diets = context.frame.diets
    barred = marks_called(context.frame.barred, context.knowledge)
    return (
        [f for f in foods if suits(f, barred, diets, context.knowledge)] if barred or diets else list(foods)
    )


def kept_to(context: Context) -> list[str]:
    """Which diets and foods not eaten a list keeps to, and that labels have the last word."""
    label, foods = context.knowledge.label, context.frame.barred
    twice = {kind for food in foods for kind in kinds_meant(food, context.knowledge) if kind != food}
    barred = dict.fromkeys(label(food) for food in foods if food not in twice)
    kept = [*map(label, context.frame.diets), *(context.wording("line", "no-food", food=f) for f in barred)]
    return [context.wording("line", "kept-to", kept=listed(list(dict.fromkeys(kept))))] if kept else []


def fits(context: Context) -> list[str]:
    """A line for each diet that tells what on the plate is known not to fit it, or may not."""
    parts = dict.fromkeys(part.food for dish in context.frame.dishes for part in dish.parts)
    return [_fit_line(list(parts), diet, context) for diet in context.frame.diets if parts]


def _fit_line(parts: Sequence[str], diet: str, context: Context) -> str:
    known = context.knowledge
    found = {food: fit(food, diet, known) for food in parts}
    worst = next((f for f in (Fit.NO, Fit.UNKNOWN) if f in found.values()), Fit.YES)
    meant = [food for food, how in found.items() if how is worst]
    why = dict.fromkeys(what for food in meant for what in against(food, diet, known))
    foods, diet = listed([known.label(food) for food in meant]), known.label(diet)
    return context.wording("fits", worst.value, foods=foods, diet=diet, why=listed(list(why)))
