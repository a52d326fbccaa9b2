"""What was to come off a dish that does not have it, or that has it in itself."""

from __future__ import annotations

from assistant.answers.context import Context
from assistant.answers.wording import listed
from assistant.language.fold import key
from assistant.language.frame import Reading
from assistant.language.sorting import EDIBLE


def not_on(context: Context) -> list[str]:
    """A sentence for each food that was to come off and is not there to be taken off."""
    frame = context.frame
    on = {part.food for dish in frame.dishes for part in dish.parts}
    named = {r.id: r for r in frame.text.readings if r.kind in EDIBLE and r.text in frame.text.left_out}
    return [_told(context, r) for r in named.values() if frame.dishes and r.id not in on]


def _told(context: Context, gone: Reading) -> str:
    whole = [dish.main.food for dish in context.frame.dishes]
    inside = next((food for food in whole if set(key(gone.text)) < set(_words(context, food))), None)
    if inside is None:
        return context.wording(
            "line", "not-on", part=gone.label, dish=listed([context.knowledge.label(food) for food in whole])
        )
    fields = {"part": gone.text, "dish": context.knowledge.label(inside)}
    plain = _plainer(context, inside, gone)
    return context.wording("line", "inside-of" if plain else "inside", plain=plain, **fields)


def _plainer(context: Context, food: str, gone: Reading) -> str:
    """What a food without that part is called (`cheddar` of `garlic cheddar`); empty where none is known."""
    left = set(_words(context, food)) - set(key(gone.text))
    foods = context.knowledge.of_type("Food")
    return next((context.knowledge.label(one) for one in foods if set(_words(context, one)) == left), "")


def _words(context: Context, food: str) -> tuple[str, ...]:
    return tuple(key(context.knowledge.label(food)))
