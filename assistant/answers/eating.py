"""What somebody does not eat, kept to in an answer: foods left off a list, dishes that do not fit."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.context import Context
from assistant.answers.wording import listed
from assistant.knowledge.diets import Fit, fit, marks_called, suits


def eaten(foods: Sequence[str], context: Context) -> list[str]:
    """Those of the foods that hold nothing barred and fit the diets; what may not fit counts as unfit."""
    diets = context.frame.diets
    barred = marks_called(context.frame.barred, context.knowledge)
    return (
        [f for f in foods if suits(f, barred, diets, context.knowledge)] if barred or diets else list(foods)
    )


def kept_to(context: Context) -> list[str]:
    """Which diets and foods not eaten a list keeps to, and that labels have the last word."""
    label = context.knowledge.label
    barred = dict.fromkeys(label(food) for food in context.frame.barred)
    kept = [*map(label, context.frame.diets), *(context.wording("line", "no-food", food=f) for f in barred)]
    return [context.wording("line", "kept-to", kept=listed(list(dict.fromkeys(kept))))] if kept else []


def misfits(context: Context) -> list[str]:
    """A line for each diet that something on the plate is known not to fit."""
    known = context.knowledge
    parts = dict.fromkeys(part.food for dish in context.frame.dishes for part in dish.parts)
    lines = []
    for diet in context.frame.diets:
        unfit = [known.label(food) for food in parts if fit(food, diet, known) is Fit.NO]
        if unfit:
            lines.append(context.wording("line", "misfit", foods=listed(unfit), diet=known.label(diet)))
    return lines
